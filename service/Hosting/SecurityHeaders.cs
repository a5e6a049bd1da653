using System.Security.Cryptography;
using System.Text;
using WireCoach.WebUi.Diagrams;

namespace WireCoach.Service.Hosting;

/// <summary>Tells the browser what these pages may do: nothing but what comes from here.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    private static readonly string Policy =
        $"default-src 'none'; script-src 'self'; style-src 'self' 'sha256-{Hash(DiagramStyle.Css)}'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; frame-ancestors 'none'; manifest-src 'self'";

    private static string Hash(string text) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    public Task InvokeAsync(HttpContext http)
    {
        http.Response.OnStarting(
            static state =>
            {
                var headers = ((HttpContext)state).Response.Headers;
                headers.ContentSecurityPolicy = headers.ContentSecurityPolicy.Count == 0 ? Policy : headers.ContentSecurityPolicy;
                headers.XContentTypeOptions = "nosniff";
                headers.XFrameOptions = "DENY";
                headers["Referrer-Policy"] = "same-origin"; // no-referrer would make a form post without scripts send Origin: null
                headers["Cross-Origin-Opener-Policy"] = "same-origin";
                headers["Cross-Origin-Resource-Policy"] = "same-origin";
                headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), usb=(), payment=()";
                return Task.CompletedTask;
            },
            http);
        return next(http);
    }
}
