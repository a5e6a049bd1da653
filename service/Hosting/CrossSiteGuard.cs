using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints;

namespace WireCoach.Service.Hosting;

/// <summary>Another site's page in the same browser may not change anything here.</summary>
internal sealed class CrossSiteGuard(RequestDelegate next, Problems problems)
{
    public Task InvokeAsync(HttpContext http) => IsSafe(http.Request) || IsOwn(http.Request)
        ? next(http)
        : problems.Result([new("gate-closed", "Origin", Statement.Of("guard.cross-site"))]).ExecuteAsync(http);

    private static bool IsSafe(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method);

    /// <summary>A browser says where the page came from; a program says nothing.</summary>
    private static bool IsOwn(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        return site is "" or "same-origin" or "none"
            && (origin.Length == 0 || string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase));
    }
}
