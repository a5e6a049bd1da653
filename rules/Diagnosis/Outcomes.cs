using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Turns measured values into the outcome of a test, by the limits in knowledge.</summary>
internal static class Outcomes
{
    /// <summary>The outcome that values mean; <see langword="null"/> where what they are measured against is not known.</summary>
    /// <param name="guide">The test.</param>
    /// <param name="values">The values in the rule's unit, at least one.</param>
    /// <param name="file">The case, for plate, supply and capacitor marks.</param>
    /// <param name="mark">The capacitor that was measured; the last that has marks where none is given.</param>
    public static string? Of(TestGuide guide, IReadOnlyList<double> values, CaseFile file, Fact.Capacitor? mark = null)
    {
        if (guide.Value is not { } rule || values.Count == 0)
        {
            return null;
        }

        if (rule.SpreadOver is { } over && Spread(values) > over)
        {
            return rule.SpreadOutcome;
        }

        var bands = file.Region == Region.Iec && rule.IecBands is { } own ? own : rule.Bands;
        return Measure(rule, values, file, mark) is { } measure ? bands.First(band => band.To is not { } to || measure <= to).Outcome : null;
    }

    private static double? Measure(ValueRule rule, IReadOnlyList<double> values, CaseFile file, Fact.Capacitor? mark) => rule.Against switch
    {
        "absolute" => values[^1],
        "spread" => values.Count < 3 ? null : Spread([.. values.TakeLast(3)]),
        "plate-volts" => values.Average() / RatedVolts(file),
        "plate-amps" => values.Max() / RatedAmps(file),
        "plate-rpm" => values[^1] / file.Plate.Rpm,
        "marked-microfarads" => OfMarked(values[^1], mark ?? file.Capacitors.FindLast(capacitor => capacitor.Microfarads is not null)),
        _ => throw new ArgumentException($"Knowledge measures against '{rule.Against}', which nothing here does.", nameof(rule)),
    };

    /// <summary>The greatest distance from the mean, as a share of the mean.</summary>
    private static double Spread(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return mean == 0 ? 0 : values.Max(value => Math.Abs(value - mean)) / mean;
    }

    private static int? PlateColumn(CaseFile file) => file.Plate.Volts.Count switch
    {
        0 => null,
        1 => 0,
        _ when file.Supply?.Volts is { } supply => Enumerable.Range(0, file.Plate.Volts.Count).MinBy(at => Math.Abs(Math.Log(file.Plate.Volts[at] / supply))),
        _ => null,
    };

    public static double? RatedVolts(CaseFile file) => PlateColumn(file) is { } column ? file.Plate.Volts[column] : file.Supply?.Volts;

    /// <summary>Plate amps of the connection that the supply calls for.</summary>
    internal static double? RatedAmps(CaseFile file) => file.Plate.Amps.Count == 1 ? file.Plate.Amps[0]
        : PlateColumn(file) is { } column && column < file.Plate.Amps.Count ? file.Plate.Amps[column] : null;

    /// <summary>Against the mark; inside a marked range it is exactly as marked, below or above it against the nearer end.</summary>
    private static double? OfMarked(double microfarads, Fact.Capacitor? marked) =>
        marked is { Microfarads: { } from } ? microfarads / Math.Clamp(microfarads, from, marked.MicrofaradsTo ?? from) : null;
}
