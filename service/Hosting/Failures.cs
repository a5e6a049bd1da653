using System.Diagnostics;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Shell;

namespace WireCoach.Service.Hosting;

/// <summary>What nobody foresaw is logged and answered without its insides; a store that cannot be read says so.</summary>
internal sealed partial class Failures(Problems problems, SentenceBook sentences, ILogger<Failures> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is OperationCanceledException or TimeoutException && httpContext.RequestAborted.IsCancellationRequested)
        {
            return true;
        }

        LogFailed(log, exception, httpContext.Request.Method, httpContext.Features.Get<IExceptionHandlerFeature>()?.Endpoint?.DisplayName);
        var (status, problem) = exception switch
        {
            StoreException => (StatusCodes.Status503ServiceUnavailable, Refusals.StoreUnavailable()),
            TimeoutException => (StatusCodes.Status504GatewayTimeout, StatusProblems.Slow),
            _ => (StatusCodes.Status500InternalServerError, new Problem("failed", "request", Statement.Of("status.failed"))),
        };
        var result = Pipeline.IsProgram(httpContext) ? problems.Result(status, problem) : Page(problem, status, httpContext);
        await result.ExecuteAsync(httpContext);
        return true;
    }

    private RazorComponentResult<Failed> Page(Problem problem, int status, HttpContext http) => new(new Dictionary<string, object?>
    {
        [nameof(Failed.Text)] = sentences.Render(problem.Advice),
        [nameof(Failed.Request)] = Activity.Current?.Id ?? http.TraceIdentifier,
    })
    { StatusCode = status };

    [LoggerMessage(Level = LogLevel.Error, Message = "{Method} {Endpoint} failed")]
    private static partial void LogFailed(ILogger log, Exception wrong, string method, string? endpoint);
}
