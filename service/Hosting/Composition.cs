using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;
using WireCoach.Service.Access;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Endpoints.Calc;
using WireCoach.Service.Json;
using WireCoach.Service.Observing;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Shell;

namespace WireCoach.Service.Hosting;

/// <summary>What the service is made of.</summary>
internal static class Composition
{
    private const int LargestBody = 64 * 1024;
    private const int LargestHeaders = 16 * 1024;
    private const int MostConnections = 400;

    /// <summary>The rules, on what the trade knows; that may still be being read while the service is put together.</summary>
    public static void AddRules(this IServiceCollection services, Task<TradeKnowledge> knowledge) => services
        .AddSingleton(_ => knowledge.GetAwaiter().GetResult())
        .AddSingleton(provider => provider.GetRequiredService<TradeKnowledge>().Sentences)
        .AddSingleton<Troubleshooting>()
        .AddSingleton<Identifier>()
        .AddSingleton<Coach>()
        .AddSingleton<Listener>();

    /// <summary>The sessions: in a data folder, or in PostgreSQL where a connection string names it.</summary>
    public static void AddSessions(this IServiceCollection services, string folder, string? postgres = null) => services
        .AddSingleton(TimeProvider.System)
        .AddSingleton<ISessionStore>(provider => string.IsNullOrWhiteSpace(postgres)
            ? LocalStore.Open(folder, provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<ILogger<LocalStore>>())
            : PostgresStore.Open(postgres, provider.GetRequiredService<ILogger<PostgresStore>>()))
        .AddSingleton<LiveSessions>()
        .AddSingleton<Watches>()
        .AddSingleton<FactCheck>()
        .AddSingleton<Hearing>()
        .AddSingleton<PracticeBench>()
        .AddSingleton<Opening>()
        .AddSingleton<EarlierSessions>()
        .AddSingleton<Turning>()
        .AddSingleton<Meters>()
        .AddSingleton<TurnLog>()
        .AddSingleton<CoachDesk>();

    /// <summary>Endpoints and pages.</summary>
    /// <param name="builder">The host.</param>
    /// <param name="folder">The data folder.</param>
    /// <param name="sharing">How it is shared on a network; <see langword="null"/> for this machine only.</param>
    public static void AddWeb(this WebApplicationBuilder builder, string folder, Sharing? sharing = null)
    {
        var services = builder.Services;
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            kestrel.Limits.MaxRequestHeadersTotalSize = LargestHeaders;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
        });
        services.Configure<HostFilteringOptions>(hosts =>
        {
            hosts.AllowedHosts = ["localhost", "127.0.0.1", "[::1]", .. sharing?.Hosts ?? []];
            hosts.AllowEmptyHosts = false;
        });
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(5));
        services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
        services.AddOptions<Microsoft.AspNetCore.Http.Json.JsonOptions>().Configure<SentenceBook>((json, sentences) => WireJson.Configure(json.SerializerOptions, sentences));
        services.AddSingleton<Problems>().AddSingleton<RoleJson>().AddScoped<PageWords>().AddSingleton<ICalculators, Calculators>().AddScoped<EarlierInsulation>();
        services.AddExceptionHandler<BadBodies>().AddExceptionHandler<Failures>().AddProblemDetails();
        services.AddDataProtection().SetApplicationName("WireCoach").PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(folder, "keys")));
        services.AddAccess(sharing, folder);
        services.AddOpenApi("v1");
        services.AddRazorComponents();
    }
}
