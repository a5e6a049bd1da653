using WireCoach.Service.Access;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Endpoints.Calc;
using WireCoach.Service.Endpoints.Sessions;
using WireCoach.WebUi;

namespace WireCoach.Service.Hosting;

/// <summary>What a request passes, in order.</summary>
internal static class Pipeline
{
    public static void UseGuards(this WebApplication app)
    {
        app.UseProxy();
        app.UseMiddleware<SecurityHeaders>();
        app.UseExceptionHandler(new ExceptionHandlerOptions { CreateScopeForErrors = true }); // the page of an error is not the one that failed
        app.UseWhen(IsProgram, program => program.UseStatusCodePages(StatusProblems.Write));
        app.UseWhen(http => !IsProgram(http), page => page.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true));
        app.UseMiddleware<CrossSiteGuard>();
        app.UseRouting();
        app.UseRequestTimeouts();
        app.UseAccess();
        app.UseAntiforgery();
    }

    public static void MapEverything(this WebApplication app)
    {
        app.MapOpenApi();
        app.MapHealth();
        app.MapSessions();
        app.MapPhrasing();
        app.MapFigures();
        app.MapCalculators();
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>();
    }

    /// <summary>Whether a program asks, which gets problem documents, or a person, who gets pages.</summary>
    public static bool IsProgram(HttpContext http) =>
        http.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
        || http.Request.Path.StartsWithSegments("/health", StringComparison.Ordinal)
        || http.Request.Path.StartsWithSegments("/openapi", StringComparison.Ordinal);
}
