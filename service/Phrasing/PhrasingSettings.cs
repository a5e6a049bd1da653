using System.Net;

namespace WireCoach.Service.Phrasing;

/// <summary>Where a language model is reached. There is none unless configuration names one.</summary>
/// <param name="Endpoint">The address up to and with <c>/v1</c>.</param>
/// <param name="Model">The model's name at that address.</param>
/// <param name="Key">A key, where one is needed; never logged.</param>
/// <param name="Timeout">How long the rewording of one reply may take in all.</param>
internal sealed record PhrasingSettings(Uri Endpoint, string Model, string? Key, TimeSpan Timeout)
{
    private const int UsualSeconds = 8;
    private const int MostSeconds = 120;

    /// <summary>How long until the first piece may take.</summary>
    public TimeSpan FirstPiece => Timeout;

    /// <summary>How long a stream may stand still.</summary>
    public TimeSpan Idle => TimeSpan.FromSeconds(Math.Min(3, Timeout.TotalSeconds));

    /// <summary>The settings, or <see langword="null"/> when nothing is configured.</summary>
    /// <exception cref="PhrasingSettingsException">Something is configured that cannot be used.</exception>
    public static PhrasingSettings? Of(IConfiguration configuration)
    {
        var section = configuration.GetSection("Phrasing");
        if (string.IsNullOrWhiteSpace(section["Endpoint"]))
        {
            return null;
        }

        if (!Uri.TryCreate(section["Endpoint"], UriKind.Absolute, out var endpoint) || endpoint.Scheme is not ("http" or "https") || endpoint.UserInfo.Length > 0)
        {
            throw new PhrasingSettingsException("Phrasing:Endpoint must be an http or https address without a name and password in it, for example http://127.0.0.1:8081/v1.");
        }

        if (!IsHere(endpoint) && !string.Equals(section["AllowRemote"], "true", StringComparison.OrdinalIgnoreCase))
        {
            throw new PhrasingSettingsException("Phrasing:Endpoint lies outside this machine; choose a local model server, or set Phrasing:AllowRemote to true if sentences may leave the machine.");
        }

        if (string.IsNullOrWhiteSpace(section["Model"]))
        {
            throw new PhrasingSettingsException("Phrasing:Model is missing: the name of the model at Phrasing:Endpoint.");
        }

        var seconds = (double)UsualSeconds;
        if (section["TimeoutSeconds"] is { Length: > 0 } given && (!double.TryParse(given, out seconds) || !(seconds is > 0 and <= MostSeconds)))
        {
            throw new PhrasingSettingsException($"Phrasing:TimeoutSeconds must be a number above 0 and up to {MostSeconds}.");
        }

        return new(endpoint, section["Model"]!.Trim(), section["Key"] is { Length: > 0 } key ? key : null, TimeSpan.FromSeconds(seconds));
    }

    /// <summary>Without the key.</summary>
    public override string ToString() => $"{Model} at {Endpoint}";

    private static bool IsHere(Uri endpoint) =>
        endpoint.Host == "localhost" || (IPAddress.TryParse(endpoint.Host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
