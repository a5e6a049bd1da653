using System.Text.Json;
using Microsoft.Extensions.Options;
using WireCoach.Service.Phrasing;
using WireCoach.WebUi.Desk;
using HttpJson = Microsoft.AspNetCore.Http.Json.JsonOptions;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>Rewordings of what was said last, for a page that already shows the exact words; and how often they were good.</summary>
internal static class PhrasingEndpoints
{
    public static void MapPhrasing(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/sessions/{id}/rewordings", Find).WithTags("sessions").Produces<Rewordings>().ProducesProblem(StatusCodes.Status404NotFound);
        app.MapGet("/api/sessions/{id}/rewordings/stream", Stream).WithTags("sessions")
            .Produces(StatusCodes.Status200OK, contentType: "text/event-stream").ProducesProblem(StatusCodes.Status404NotFound);
        app.MapGet("/api/phrasing", Figures).WithTags("figures").Produces<PhrasingFigures>().ProducesProblem(StatusCodes.Status400BadRequest);
    }

    private static async Task<IResult> Find(string id, ICoachDesk desk, Typist typist, Problems problems, CancellationToken cancel)
    {
        var found = await desk.Find(id, cancel);
        return found.IsGiven ? Results.Ok(await typist.Of(found.Value, cancel)) : problems.Result(found.Problems);
    }

    /// <summary>One event <c>reworded</c> for each sentence, as soon as it was found to say the same, and an event <c>end</c>.</summary>
    private static async Task<IResult> Stream(
        string id, ICoachDesk desk, Typist typist, Problems problems, HttpResponse response, IOptions<HttpJson> json, CancellationToken cancel)
    {
        var found = await desk.Find(id, cancel);
        if (!found.IsGiven)
        {
            return problems.Result(found.Problems);
        }

        response.ContentType = "text/event-stream; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        async Task Send(string kind, object what)
        {
            await response.WriteAsync($"event: {kind}\ndata: {JsonSerializer.Serialize(what, json.Value.SerializerOptions)}\n\n", cancel);
            await response.Body.FlushAsync(cancel);
        }

        await Send("end", await typist.Each(found.Value, item => Send("reworded", item), cancel));
        return Results.Empty;
    }

    private static async Task<IResult> Figures(HttpRequest request, ICoachDesk desk, Problems problems, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query);
        var (from, to) = (query.Time("from"), query.Time("to"));
        if (query.Problems.Count > 0)
        {
            return problems.Result(query.Problems);
        }

        var figures = await desk.Figures(from, to, cancel);
        return figures.IsGiven ? Results.Ok(figures.Value.Phrasing) : problems.Result(figures.Problems);
    }
}
