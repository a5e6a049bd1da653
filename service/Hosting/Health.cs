using WireCoach.Service.Sessions;

namespace WireCoach.Service.Hosting;

/// <summary>Whether the service lives, and whether it can take sessions.</summary>
internal static class Health
{
    private const long LeastFree = 200L << 20;

    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        var health = app.MapGroup("/health").WithTags("health").AllowAnonymous();
        health.MapGet("/live", () => Results.Ok(new State("live", null)));
        health.MapGet("/ready", Ready);
    }

    private static IResult Ready(ISessionStore store, DataFolder folder) => (store.Trouble ?? folder.Trouble(LeastFree)) is { } trouble
        ? Results.Json(new State("not-ready", trouble), statusCode: StatusCodes.Status503ServiceUnavailable)
        : Results.Ok(new State("ready", null));

    /// <summary>How it stands.</summary>
    /// <param name="Status"><c>live</c>, <c>ready</c> or <c>not-ready</c>.</param>
    /// <param name="Trouble">What keeps it from being ready.</param>
    private sealed record State(string Status, string? Trouble);
}
