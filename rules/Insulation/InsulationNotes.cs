using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>What else stands out of insulation readings.</summary>
internal static class InsulationNotes
{
    public static IEnumerable<Statement> Of(TradeKnowledge knowledge, InsulationInput input, InsulationReading judged, InsulationRatios ratios)
    {
        var volts = TestVolts(knowledge, input.RatedVolts!.Value);
        var reading = knowledge.Rules["insulation-reading"];
        if (judged.TestVolts > volts.High!.Value)
        {
            yield return Statement.Of("insulation.test-volts-high", ("used", Units.Text(judged.TestVolts.Value, "volt"))).With("most", volts.High);
        }
        else if (judged.TestVolts >= reading["least-test-volts"] && judged.TestVolts < volts.Low!.Value)
        {
            yield return Statement.Of("insulation.test-volts-low", ("used", Units.Text(judged.TestVolts.Value, "volt"))).With("least", volts.Low);
        }
        else if (judged.TestVolts is null)
        {
            yield return Statement.Of("insulation.test-volts-unknown").With("least", volts.Low!);
        }

        if (ratios is { Absorption: { } absorption, AbsorptionBand: { } band })
        {
            yield return Statement.Of("insulation.absorption", ("band", band.Replace('-', ' '))).With("ratio", absorption);
        }

        if (ratios.Index is { } index && index.Value > knowledge.Rules["polarization-index"]["brittle-above"])
        {
            yield return Statement.Of("insulation.index-brittle").With("index", index);
        }
    }

    /// <summary>The direct-current test volts for a winding of these rated volts.</summary>
    public static QuotedRange TestVolts(TradeKnowledge knowledge, double ratedVolts)
    {
        var table = knowledge.Tables["ieee-43-test-volts"];
        var row = table.Rows.First(row => ratedVolts <= row.Size());
        return new(Quote("least"), Quote("most"));

        Quoted Quote(string column) => table.Quote(table.Number(row, column)!.Value, "volt", $"rated {Units.Text(ratedVolts, "volt")}");
    }
}
