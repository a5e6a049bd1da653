using Microsoft.AspNetCore.Diagnostics;
using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints;

namespace WireCoach.Service.Hosting;

/// <summary>A status without a body becomes a problem document.</summary>
internal static class StatusProblems
{
    /// <summary>A request took longer than requests may.</summary>
    public static Problem Slow { get; } = new("too-slow", "request", Statement.Of("status.too-slow"));

    public static Task Write(StatusCodeContext context)
    {
        var http = context.HttpContext;
        var problems = http.RequestServices.GetRequiredService<Problems>();
        return problems.Result(http.Response.StatusCode, Problem(http)).ExecuteAsync(http);
    }

    private static Problem Problem(HttpContext http) => http.Response.StatusCode switch
    {
        StatusCodes.Status404NotFound => new("unknown-address", "path", Statement.Of("status.not-found")),
        StatusCodes.Status405MethodNotAllowed => new("wrong-method", "method", Statement.Of("status.wrong-method", ("method", http.Request.Method.Length <= 10 ? http.Request.Method : "?"))),
        StatusCodes.Status415UnsupportedMediaType => new("invalid-fact", "Content-Type", Statement.Of("body.not-json")),
        StatusCodes.Status413PayloadTooLarge => new("too-large", "body", Statement.Of("body.too-large")),
        StatusCodes.Status504GatewayTimeout => Slow,
        _ => new("invalid-fact", "request", Statement.Of("status.refused")),
    };
}
