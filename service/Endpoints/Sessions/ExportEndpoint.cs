using System.Globalization;
using System.Text;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Service.Json;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>A selection of sessions in one file: a line each as CSV, or their whole logs as JSON.</summary>
internal static partial class ExportEndpoint
{
    private const int MostLines = 20_000;
    private const int MostLogs = 200;

    public static void MapExport(this RouteGroupBuilder sessions) => sessions.MapGet("/export", Export)
        .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status413PayloadTooLarge);

    private static async Task<IResult> Export(HttpRequest request, ICoachDesk desk, TradeKnowledge knowledge, Problems problems, RoleJson json, ILoggerFactory loggers, TimeProvider clock, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query);
        var format = query.Choice("format", ["csv", "json"]) ?? "csv";
        var filter = RecordEndpoints.Filter(query, knowledge) with { Only = request.Query["id"] is { Count: > 0 } chosen ? [.. chosen.OfType<string>()] : null, After = null, Size = CoachDesk.LargestPage };
        if (query.Problems.Count > 0)
        {
            return problems.Result(query.Problems);
        }

        var most = format == "csv" ? MostLines : MostLogs;
        var found = new List<SessionSummary>();
        do
        {
            var page = await desk.List(filter, cancel);
            if (!page.IsGiven || page.Value.Total > most)
            {
                return problems.Result(page.IsGiven ? [Refusals.TooManySessions(page.Value.Total, most)] : page.Problems);
            }

            found.AddRange(page.Value.Items);
            filter = filter with { After = page.Value.Next };
        }
        while (filter.After is not null);

        var name = $"sessions-{clock.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}-{found.Count.ToString(CultureInfo.InvariantCulture)}.{format}";
        Exported(loggers.CreateLogger(typeof(ExportEndpoint)), found.Count, format);
        return format == "csv"
            ? Results.File(Encoding.UTF8.GetBytes(CsvReport.Of(found)), "text/csv; charset=utf-8", name)
            : Results.File(System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(await Logs(desk, found, cancel), json[Role.Manager]), "application/json", name);
    }

    private static async Task<IReadOnlyList<SessionLog>> Logs(ICoachDesk desk, IReadOnlyList<SessionSummary> sessions, CancellationToken cancel)
    {
        var logs = new List<SessionLog>();
        foreach (var session in sessions)
        {
            if ((await desk.Log(session.Id, cancel)).Value is { } log)
            {
                logs.Add(log);
            }
        }

        return logs;
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Exported {Sessions} sessions as {Format}")]
    private static partial void Exported(ILogger log, int sessions, string format);
}
