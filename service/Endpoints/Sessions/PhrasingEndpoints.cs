using WireCoach.Service.Phrasing;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>Rewordings of what was said last, for a page that already shows the exact words; and how often they were good.</summary>
internal static class PhrasingEndpoints
{
    public static void MapPhrasing(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/sessions/{id}/rewordings", Find).WithTags("sessions").Produces<Rewordings>().ProducesProblem(StatusCodes.Status404NotFound);
        app.MapGet("/api/phrasing", (Tally tally, Typist typist) => tally.Figures(typist.IsOn)).WithTags("figures");
    }

    private static async Task<IResult> Find(string id, ICoachDesk desk, Typist typist, Problems problems, CancellationToken cancel)
    {
        var found = await desk.Find(id, cancel);
        return found.IsGiven ? Results.Ok(await typist.Of(found.Value, cancel)) : problems.Result(found.Problems);
    }
}
