using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Desk;

/// <summary>What the meter showed at one lead; a reading that was borne out stands there once.</summary>
public static class LeadReadings
{
    /// <summary>The leads that it reads to, with what was shown.</summary>
    public static string Joined(CaseFile file, string tag, PageWords words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Listed(Touching(file, tag).Where(reading => !reading.Open).Select(reading => $"{Other(reading, tag)} {(reading.Short ? words["page.only-probes"] : Units.Text(reading.Ohms ?? 0, "ohm"))}{Held(reading)}"));
    }

    /// <summary>The leads that it is open to.</summary>
    public static string Open(CaseFile file, string tag) => Listed(Touching(file, tag).Where(reading => reading.Open).Select(reading => Other(reading, tag)));

    private static string Listed(IEnumerable<string> shown) => string.Join(", ", shown.Distinct(StringComparer.Ordinal));

    private static IEnumerable<Fact.Reading> Touching(CaseFile file, string tag)
    {
        ArgumentNullException.ThrowIfNull(file);
        return file.Readings.Where(reading => reading.From == tag || reading.To == tag || reading.Together.Contains(tag, StringComparer.Ordinal));
    }

    /// <summary>The leads that were held together for it: what they show is of none of them alone.</summary>
    private static string Held(Fact.Reading reading) => reading.Together.Count == 0 ? string.Empty : $" ({string.Join(" + ", reading.Together.Prepend(reading.From))})";

    private static string Other(Fact.Reading reading, string tag) => reading.To == tag ? reading.From : reading.To;
}
