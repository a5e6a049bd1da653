using System.Globalization;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Hosting;

/// <summary>The setting <c>Retention:Days</c>.</summary>
internal static class RetentionSetting
{
    private const string Name = "Retention:Days";

    /// <summary>What is configured.</summary>
    /// <exception cref="StoreException">It is no number of days.</exception>
    public static Retention Of(IConfiguration configuration) => configuration[Name] switch
    {
        null or "" => new(null),
        var text when int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days is >= 1 and <= Retention.MostDays => new(days),
        var text => throw new StoreException($"{Name} is no whole number of days: {text}."),
    };
}
