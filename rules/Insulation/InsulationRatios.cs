using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>Polarization index and absorption ratio, and where they say nothing.</summary>
internal sealed record InsulationRatios
{
    public Quoted? Index { get; init; }

    public Quoted? IndexLeast { get; init; }

    public bool IndexFails { get; init; }

    public Quoted? Absorption { get; init; }

    /// <summary><c>bad</c>, <c>questionable</c>, <c>good</c> or <c>very-good</c>.</summary>
    public string? AbsorptionBand { get; init; }

    public Statement? NotApplicable { get; init; }

    public static InsulationRatios Of(TradeKnowledge knowledge, InsulationInput input)
    {
        var index = knowledge.Rules["polarization-index"];
        var absorption = knowledge.Rules["absorption-ratio"];
        var (half, one, ten) = (At(absorption["early-minute"]), At(index["early-minute"]), At(index["late-minute"]));
        var ratio = half is not null && one is not null && !one.OverRange && !half.OverRange
            ? absorption.Quote(one.Megohms / half.Megohms, "ratio", $"{Units.Text(one.Megohms, "megohm")} / {Units.Text(half.Megohms, "megohm")}")
            : null;
        var report = new InsulationRatios { Absorption = ratio, AbsorptionBand = Band(absorption, ratio?.Value) };
        if (one is null || ten is null)
        {
            return report;
        }

        if (NotMeant(index, input, one, ten) is { } reason)
        {
            return report with { NotApplicable = reason };
        }

        var classA = string.Equals(input.InsulationClass, "A", StringComparison.OrdinalIgnoreCase);
        var least = classA ? index["class-a-least"] : index["least"];
        var found = index.Quote(ten.Megohms / one.Megohms, "ratio", $"{Units.Text(ten.Megohms, "megohm")} / {Units.Text(one.Megohms, "megohm")}");
        return report with
        {
            Index = found,
            IndexLeast = index.Quote(least, "ratio", $"class {input.InsulationClass ?? "B and above"}"),
            IndexFails = found.Value < least,
        };

        InsulationReading? At(double minute) =>
            input.Readings.FirstOrDefault(reading => reading.AtMinute is { } at && Math.Abs(at - minute) <= knowledge.Rules["insulation-reading"]["minute-slack"] * minute);
    }

    private static Statement? NotMeant(TradeRule rule, InsulationInput input, InsulationReading one, InsulationReading ten) => input.Kind switch
    {
        "random-wound" => Statement.Of("insulation.index-random-wound"),
        "armature" or "dc-armature" => Statement.Of("insulation.index-armature"),
        "field" => Statement.Of("insulation.index-field"),
        _ when one.Megohms > rule["skip-above-megohms"] || one.OverRange || ten.OverRange => Statement.Of("insulation.index-high-reading")
            .With("limit", rule.Quote(rule["skip-above-megohms"], "megohm", "one-minute reading")),
        _ => null,
    };

    private static string? Band(TradeRule rule, double? ratio) => ratio switch
    {
        null => null,
        _ when ratio < rule["bad-below"] => "bad",
        _ when ratio < rule["fair-from"] => "questionable",
        _ when ratio <= rule["very-good-above"] => "good",
        _ => "very-good",
    };
}
