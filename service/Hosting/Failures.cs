using Microsoft.AspNetCore.Diagnostics;
using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Hosting;

/// <summary>What nobody foresaw is logged and answered without its insides; a store that cannot be read says so.</summary>
internal sealed partial class Failures(Problems problems, ILogger<Failures> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is OperationCanceledException && httpContext.RequestAborted.IsCancellationRequested)
        {
            return true;
        }

        var store = exception is StoreException;
        LogFailed(log, exception, httpContext.Request.Method, httpContext.Features.Get<IExceptionHandlerFeature>()?.Endpoint?.DisplayName);
        var result = store
            ? problems.Result([Refusals.StoreUnavailable()])
            : problems.Result(StatusCodes.Status500InternalServerError, new("failed", "request", Statement.Of("status.failed")));
        await result.ExecuteAsync(httpContext);
        return true;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{Method} {Endpoint} failed")]
    private static partial void LogFailed(ILogger log, Exception wrong, string method, string? endpoint);
}
