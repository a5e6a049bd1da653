using System.Globalization;
using System.Security.Cryptography.X509Certificates;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Hosting;
using WireCoach.Service.Observing;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Access;

/// <summary>Who gets in: everybody on this machine, or those who sign in when the service is shared.</summary>
internal static class AccessServices
{
    private const int Burst = 120;
    private const int ASecond = 30;

    private static readonly TimeSpan LongestRequest = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan SignedIn = TimeSpan.FromHours(12);

    public static void AddAccess(this IServiceCollection services, Sharing? sharing, string folder)
    {
        services.AddRequestTimeouts(timeouts => timeouts.DefaultPolicy = new() { Timeout = LongestRequest });
        if (sharing is null)
        {
            services.AddSingleton<ICoachDesk>(provider => provider.GetRequiredService<CoachDesk>()).AddSingleton<IDoor, NoDoor>();
            return;
        }

        services.AddSingleton(sharing)
            .AddHttpContextAccessor()
            .AddSingleton(new AccessCodes(folder))
            .AddSingleton(provider => new SignInAudit(folder, provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<Meters>()))
            .AddSingleton<Attempts>()
            .AddSingleton<OwnSessions>()
            .AddSingleton<IDoor, Door>()
            .AddSingleton<ICoachDesk, GuardedDesk>();
        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(SetCookie);
        services.AddAuthorizationBuilder().SetFallbackPolicy(new(
            [new Microsoft.AspNetCore.Authorization.Infrastructure.DenyAnonymousAuthorizationRequirement()], []));
        services.AddAntiforgery(forgery =>
        {
            forgery.Cookie.Name = "__Host-wirecoach-form";
            forgery.Cookie.SecurePolicy = CookieSecurePolicy.Always;
            forgery.Cookie.SameSite = SameSiteMode.Strict;
        });
        services.AddRateLimiter(limiter =>
        {
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(http => RateLimitPartition.GetTokenBucketLimiter(
                http.Connection.RemoteIpAddress?.ToString() ?? string.Empty,
                _ => new TokenBucketRateLimiterOptions { TokenLimit = Burst, TokensPerPeriod = ASecond, ReplenishmentPeriod = TimeSpan.FromSeconds(1) }));
            limiter.OnRejected = (rejected, _) => new(TooFast(rejected.HttpContext));
        });
        services.Configure<KestrelServerOptions>(kestrel => kestrel.ConfigureHttpsDefaults(https => https.ServerCertificate = Certificate(sharing)));
        if (sharing.Proxy is { } proxy)
        {
            services.Configure<ForwardedHeadersOptions>(forwarded =>
            {
                forwarded.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
                forwarded.KnownProxies.Clear();
                forwarded.KnownIPNetworks.Clear();
                forwarded.KnownProxies.Add(proxy);
            });
        }
    }

    /// <summary>Behind a stated proxy, and only from it, the caller's address and scheme are taken from its headers.</summary>
    public static void UseProxy(this WebApplication app)
    {
        if (app.Services.GetService<Sharing>()?.Proxy is not null)
        {
            app.UseForwardedHeaders();
        }
    }

    public static void UseAccess(this WebApplication app)
    {
        if (app.Services.GetService<Sharing>() is not null)
        {
            app.Use(OnlyHttps);
            app.UseRateLimiter();
            app.UseAuthentication();
            app.UseAuthorization();
        }
    }

    /// <summary>A proxy that does not say that it was called over HTTPS is set up wrong; health stays open to a watcher on this machine.</summary>
    private static Task OnlyHttps(HttpContext http, RequestDelegate next) => http.Request.IsHttps || http.Request.Path.StartsWithSegments("/health", StringComparison.Ordinal)
        ? next(http)
        : http.RequestServices.GetRequiredService<Problems>().Result([new("gate-closed", "X-Forwarded-Proto", Statement.Of("access.no-https"))]).ExecuteAsync(http);

    private static void SetCookie(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "__Host-wirecoach";
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Strict;
        options.Cookie.SecurePolicy = CookieSecurePolicy.Always;
        options.ExpireTimeSpan = SignedIn;
        options.SlidingExpiration = false;
        options.LoginPath = "/sign-in";
        options.Events.OnRedirectToLogin = turned =>
        {
            if (Pipeline.IsProgram(turned.HttpContext))
            {
                var problems = turned.HttpContext.RequestServices.GetRequiredService<Problems>();
                return problems.Result(StatusCodes.Status401Unauthorized, new("sign-in", "cookie", Statement.Of("access.sign-in-first"))).ExecuteAsync(turned.HttpContext);
            }

            turned.Response.Redirect("/sign-in");
            return Task.CompletedTask;
        };
    }

    private static Task TooFast(HttpContext http)
    {
        http.Response.Headers.RetryAfter = 1.ToString(CultureInfo.InvariantCulture);
        return http.RequestServices.GetRequiredService<Problems>().Result([new("too-many-requests", "request", Statement.Of("access.too-fast"))]).ExecuteAsync(http);
    }

    private static X509Certificate2 Certificate(Sharing sharing)
    {
        try
        {
            return X509Certificate2.CreateFromPemFile(sharing.Certificate!, sharing.Key);
        }
        catch (System.Security.Cryptography.CryptographicException wrong)
        {
            throw new SharingException($"The certificate {sharing.Certificate} cannot be used: {wrong.Message}", wrong);
        }
    }
}
