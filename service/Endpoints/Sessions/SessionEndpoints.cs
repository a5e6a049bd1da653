using Microsoft.AspNetCore.Mvc;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.Service.Json;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>The conversation over HTTP: translation only.</summary>
internal static class SessionEndpoints
{
    private const string KeyHeader = "Idempotency-Key";

    public static IEndpointRouteBuilder MapSessions(this IEndpointRouteBuilder app)
    {
        var sessions = app.MapGroup("/api/sessions").WithTags("sessions");
        sessions.MapPost("/", Open).Produces<SessionView>(StatusCodes.Status201Created).ProducesProblem(StatusCodes.Status400BadRequest);
        sessions.MapGet("/{id}", Find).Produces<SessionView>().ProducesProblem(StatusCodes.Status404NotFound);
        Turn(sessions.MapPost("/{id}/messages", Hear));
        Turn(sessions.MapPost("/{id}/answers", Respond)
            .WithSummary("Answers the question that is open")
            .WithDescription(
                "The question is 'next' of the assessment: {id, kind, text, why, how, about, task, options, unit, between, setup, expect, canBeOpen, canBeUnknown, cautions}. " +
                "'questionId' is its id, and one more member answers it by its kind: 'choice' the id of an option, 'quantity' {value, unit} in the unit of the question, " +
                "'reading' {ohms}, {open: true}, {short: true} or {kick: true}, 'confirmed' true or false, 'text' free words. " +
                "'unknown': true says \"I can't tell\" where canBeUnknown holds. Where canBeOpen holds, a quantity may be answered by 'reading' {open: true} too: the meter shows over-range."));
        Turn(sessions.MapPost("/{id}/facts", Take));
        Turn(sessions.MapDelete("/{id}/facts/{factId}", Retract));
        Turn(sessions.MapPost("/{id}/probe", Probe));
        sessions.MapPost("/{id}/review", Review).Produces<SessionView>().ProducesProblem(StatusCodes.Status404NotFound);
        sessions.MapPost("/{id}/close", Close).Produces<SessionView>().ProducesProblem(StatusCodes.Status404NotFound);
        sessions.MapRecords();
        return app;
    }

    /// <summary>The answer in the words of the session's own reader, or a problem document.</summary>
    public static IResult Result(this Problems problems, Answer<SessionView> answer, RoleJson json, int status = StatusCodes.Status200OK) => answer.IsGiven
        ? Results.Json(answer.Value, json[answer.Value.Role], statusCode: status)
        : problems.Result(answer.Problems);

    private static void Turn(RouteHandlerBuilder turn) => turn
        .Produces<Reply>()
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status403Forbidden)
        .ProducesProblem(StatusCodes.Status404NotFound)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> Open(
        NewSession body, [FromHeader(Name = KeyHeader)] string? key, ICoachDesk desk, Problems problems, RoleJson json, HttpContext http)
    {
        var opened = await desk.Open(body, key, http.RequestAborted);
        if (opened.IsGiven)
        {
            http.Response.Headers.Location = $"/api/sessions/{opened.Value.Id}";
        }

        return problems.Result(opened, json, StatusCodes.Status201Created);
    }

    private static async Task<IResult> Find(string id, ICoachDesk desk, Problems problems, RoleJson json, CancellationToken cancel) =>
        problems.Result(await desk.Find(id, cancel), json);

    private static Task<IResult> Hear(string id, MessageBody body, [FromHeader(Name = KeyHeader)] string? key, Desk at) =>
        at.Reply(desk => desk.Hear(id, body.Text ?? string.Empty, key));

    private static Task<IResult> Respond(string id, QuestionAnswer body, [FromHeader(Name = KeyHeader)] string? key, Desk at) =>
        at.Reply(desk => desk.Respond(id, body, key));

    private static Task<IResult> Take(string id, FactsBody body, [FromHeader(Name = KeyHeader)] string? key, Desk at) =>
        at.Reply(desk => desk.Take(id, [.. (body.Facts ?? []).Select(fact => fact!)], key));

    private static Task<IResult> Retract(string id, string factId, [FromHeader(Name = KeyHeader)] string? key, Desk at) =>
        at.Reply(desk => desk.Retract(id, factId, key));

    private static Task<IResult> Probe(string id, ProbeBody body, [FromHeader(Name = KeyHeader)] string? key, Desk at) =>
        at.Reply(desk => desk.Probe(id, body.From ?? string.Empty, body.To ?? string.Empty, key));

    private static async Task<IResult> Review(
        string id, NewReview body, [FromHeader(Name = KeyHeader)] string? key, ICoachDesk desk, Problems problems, RoleJson json, CancellationToken cancel) =>
        problems.Result(await desk.Review(id, body, key, cancel), json);

    private static async Task<IResult> Close(
        string id, [FromHeader(Name = KeyHeader)] string? key, ICoachDesk desk, Problems problems, RoleJson json, CancellationToken cancel) =>
        problems.Result(await desk.Close(id, key, cancel), json);

    /// <summary>What every turn's handler needs.</summary>
    private sealed record Desk(ICoachDesk Coach, Problems Problems, RoleJson Json)
    {
        public static ValueTask<Desk> BindAsync(HttpContext http) => ValueTask.FromResult(new Desk(
            http.RequestServices.GetRequiredService<ICoachDesk>(),
            http.RequestServices.GetRequiredService<Problems>(),
            http.RequestServices.GetRequiredService<RoleJson>()));

        /// <summary>A turn that is taken is finished even when the person no longer waits for it.</summary>
        public async Task<IResult> Reply(Func<ICoachDesk, Task<Answer<Reply>>> turn)
        {
            var answer = await turn(Coach);
            return answer.IsGiven ? Results.Json(answer.Value, Json[answer.Value.Role]) : Problems.Result(answer.Problems);
        }
    }
}
