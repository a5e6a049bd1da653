using System.Globalization;
using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace WireCoach.Service.Hosting;

/// <summary>Structured lines to the console and to files that roll before they grow large. Ids only: no words, names or readings of a person.</summary>
internal static class Logging
{
    private const long FileSize = 10L << 20;
    private const int Files = 10;

    public static void AddLogging(this WebApplicationBuilder builder, string folder) => builder.Services.AddSerilog(
        (_, log) => log
            .MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
            .WriteTo.Console(formatProvider: CultureInfo.InvariantCulture)
            .WriteTo.File(
                new CompactJsonFormatter(),
                Path.Combine(folder, "logs", "wirecoach-.jsonl"),
                rollingInterval: RollingInterval.Day,
                fileSizeLimitBytes: FileSize,
                rollOnFileSizeLimit: true,
                retainedFileCountLimit: Files),
        preserveStaticLogger: true);
}
