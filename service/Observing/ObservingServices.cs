using System.Reflection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Observing;

/// <summary>Sends the meters to a collector, where configuration names one; anybody on this machine can read them without (<c>dotnet-counters</c>).</summary>
internal static class ObservingServices
{
    private const string Setting = "Metrics:Endpoint";
    private const string Path = "v1/metrics";

    /// <exception cref="FormatException">What is configured is no address.</exception>
    public static void AddObserving(this IServiceCollection services, IConfiguration configuration)
    {
        if (configuration[Setting] is not { Length: > 0 } text)
        {
            return;
        }

        if (!Uri.TryCreate(text, UriKind.Absolute, out var endpoint) || endpoint.Scheme is not ("http" or "https"))
        {
            throw new FormatException($"{Setting} must be the http or https address of an OpenTelemetry collector, such as http://127.0.0.1:4318");
        }

        services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("wirecoach", serviceVersion: Assembly.GetExecutingAssembly().GetName().Version!.ToString(3), autoGenerateServiceInstanceId: false))
            .WithMetrics(metrics => metrics
                .AddMeter(Meters.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime", "Npgsql")
                .AddInstrumentation(OpenSessions)
                .AddOtlpExporter(exporter =>
                {
                    exporter.Protocol = OtlpExportProtocol.HttpProtobuf;
                    exporter.Endpoint = endpoint.AbsolutePath.EndsWith(Path, StringComparison.Ordinal) ? endpoint : new(endpoint, Path);
                }));
    }

    /// <summary>How many sessions wait for an answer or a verdict; looked at when a collector is sent to.</summary>
    private static object OpenSessions(IServiceProvider provider)
    {
        var store = provider.GetRequiredService<ISessionStore>();
        return provider.GetRequiredService<Meters>().Own.CreateObservableGauge(
            "wirecoach.sessions.open",
            () => store.List(new SessionFilter { Status = "open", Size = 1 }).GetAwaiter().GetResult().Total,
            "{session}",
            "Sessions that are neither closed nor settled.");
    }
}
