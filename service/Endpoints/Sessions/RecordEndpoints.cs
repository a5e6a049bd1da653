using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Service.Json;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Diagrams;
using WireCoach.WebUi.Reports;
using WireCoach.WebUi.Shell;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>The records over HTTP: the list, one session's log and report, the figures.</summary>
internal static class RecordEndpoints
{
    private static readonly string[] Statuses = ["open", "ready", "verified", "referred", "closed"];
    private static readonly string[] Verdicts = ["ok", "redo", "note"];
    private static readonly string[] Roles = ["technician", "homeowner", "manager", "apprentice"];

    public static void MapRecords(this RouteGroupBuilder sessions)
    {
        sessions.MapGet("/", List).Produces<SessionPage>().ProducesProblem(StatusCodes.Status400BadRequest);
        sessions.MapExport();
        sessions.MapDelete("/{id}", Delete).Produces<IReadOnlyList<Deletion>>().ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status404NotFound);
        sessions.MapGet("/{id}/events", Events).ProducesProblem(StatusCodes.Status404NotFound);
        sessions.MapGet("/{id}/diagram.svg", Diagram).ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict);
        sessions.MapGet("/{id}/report", Report).ProducesProblem(StatusCodes.Status404NotFound);
    }

    public static IEndpointRouteBuilder MapFigures(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/deletions", Deletions).WithTags("sessions").Produces<IReadOnlyList<Deletion>>();
        app.MapGet("/api/figures", Figures).WithTags("sessions").Produces<Figures>().ProducesProblem(StatusCodes.Status400BadRequest);
        return app;
    }

    private static async Task<IResult> List(HttpRequest request, ICoachDesk desk, TradeKnowledge knowledge, Problems problems, RoleJson json, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query);
        var filter = Filter(query, knowledge);
        if (query.Problems.Count > 0)
        {
            return problems.Result(query.Problems);
        }

        var page = await desk.List(filter, cancel);
        return page.IsGiven ? Results.Json(page.Value, json[Role.Manager]) : problems.Result(page.Problems);
    }

    /// <summary>The filter that a query string asks for.</summary>
    public static SessionFilter Filter(QueryReader query, TradeKnowledge knowledge) => new()
    {
        Text = query.Text("text"),
        Who = query.Text("who"),
        MotorTag = query.Text("motorTag"),
        Role = query.Choice("role", Roles) is { } role ? (Role)Array.IndexOf(Roles, role) : null,
        Status = query.Choice("status", Statuses),
        Cause = query.Choice("cause", [.. knowledge.Causes.Keys.Order(StringComparer.Ordinal)]),
        Caution = query.Choice("caution", [.. knowledge.Cautions.Keys.Order(StringComparer.Ordinal)]),
        From = query.Time("from"),
        To = query.Time("to"),
        Verdict = query.Choice("verdict", Verdicts),
        After = query.Text("after"),
        Size = query.Number("size", CoachDesk.LargestPage),
    };

    private static async Task<IResult> Delete(string id, string? who, string? why, ICoachDesk desk, Problems problems, CancellationToken cancel) =>
        problems.Result(await desk.Delete([id], who, why, cancel));

    private static async Task<IResult> Deletions(ICoachDesk desk, Problems problems, CancellationToken cancel) => problems.Result(await desk.Deletions(cancel));

    private static async Task<IResult> Events(string id, ICoachDesk desk, Problems problems, CancellationToken cancel)
    {
        var log = await desk.Log(id, cancel);
        return log.IsGiven ? Results.Ok(log.Value.Entries.Select(entry => entry.Written)) : problems.Result(log.Problems);
    }

    private static async Task<IResult> Diagram(string id, string? of, ICoachDesk desk, Problems problems, PageWords words, HttpResponse response, CancellationToken cancel)
    {
        if (of is not (null or "plan" or "leads"))
        {
            return problems.Result([Refusals.OneOf("of", "plan, leads")]);
        }

        var found = await desk.Find(id, cancel);
        if (!found.IsGiven)
        {
            return problems.Result(found.Problems);
        }

        var assessment = found.Value.Assessment;
        if (of != "leads" && assessment.Plan is null)
        {
            return problems.Result([Refusals.NoPlan(assessment.PlanMissing)]);
        }

        response.Headers.ContentSecurityPolicy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'"; // a picture, which styles itself
        return Results.Text(
            of == "leads" || assessment.Plan is null
                ? LeadMapDrawing.Svg(found.Value.Case.Leads, assessment.Identification?.Windings ?? [], found.Value.Case.Readings, words)
                : PlanDrawing.Svg(assessment.Plan, words),
            "image/svg+xml");
    }

    private static async Task<IResult> Figures(HttpRequest request, ICoachDesk desk, Problems problems, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query);
        var (from, to) = (query.Time("from"), query.Time("to"));
        return query.Problems.Count > 0 ? problems.Result(query.Problems) : problems.Result(await desk.Figures(from, to, cancel));
    }

    private static async Task<IResult> Report(
        string id, string? format, string? paper, ICoachDesk desk, Problems problems, RoleJson json, PageWords words, TradeKnowledge knowledge, CancellationToken cancel)
    {
        if (format is not (null or "html" or "json" or "csv" or "pdf"))
        {
            return problems.Result([Refusals.OneOf("format", "html, json, csv, pdf")]);
        }

        if (paper is not null && !SessionPaper.Papers.Contains(paper, StringComparer.Ordinal))
        {
            return problems.Result([Refusals.OneOf("paper", string.Join(", ", SessionPaper.Papers))]);
        }

        var log = await desk.Log(id, cancel);
        if (!log.IsGiven)
        {
            return problems.Result(log.Problems);
        }

        return format switch
        {
            "json" => Results.Json(log.Value, json[log.Value.Session.Role]),
            "csv" => Results.File(Encoding.UTF8.GetBytes(CsvReport.Of(log.Value)), "text/csv; charset=utf-8", $"session-{id}-{Day(log.Value)}.csv"),
            "pdf" => Results.File(SessionPaper.Pdf(log.Value.Session, words, knowledge, paper), "application/pdf", $"session-{id}-{Day(log.Value)}.pdf"),
            _ => new RazorComponentResult<SessionReport>(new Dictionary<string, object?> { [nameof(SessionReport.Log)] = log.Value }),
        };
    }

    private static string Day(SessionLog log) => log.Session.CreatedAt.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
