using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>What else stands out of insulation readings.</summary>
internal static class InsulationNotes
{
    public static IEnumerable<Statement> Of(TradeKnowledge knowledge, InsulationInput input, InsulationReading judged, InsulationRatios ratios)
    {
        foreach (var note in Used(knowledge, TestVolts(knowledge, input.RatedVolts!.Value), judged.TestVolts))
        {
            yield return note;
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

    /// <summary>What there is to say of the volts that were used.</summary>
    private static IEnumerable<Statement> Used(TradeKnowledge knowledge, QuotedRange? volts, double? used)
    {
        if (volts is not { Low: { } least, High: { } most })
        {
            yield return Statement.Of("insulation.low-rated-volts");
        }
        else if (used > most.Value)
        {
            yield return Statement.Of("insulation.test-volts-high", ("used", Units.Text(used.Value, "volt"))).With("most", most);
        }
        else if (used >= knowledge.Rules["insulation-reading"]["least-test-volts"] && used < least.Value)
        {
            yield return Statement.Of("insulation.test-volts-low", ("used", Units.Text(used.Value, "volt"))).With("least", least);
        }
        else if (used is null)
        {
            yield return Statement.Of("insulation.test-volts-unknown").With("least", least);
        }
    }

    /// <summary>The direct-current test volts for a winding of these rated volts; <see langword="null"/> for one of so few that no tester of motors may be put on it.</summary>
    public static QuotedRange? TestVolts(TradeKnowledge knowledge, double ratedVolts)
    {
        if (ratedVolts < knowledge.Rules["insulation-reading"]["least-rated-volts"])
        {
            return null;
        }

        var table = knowledge.Tables["ieee-43-test-volts"];
        var row = table.Rows.First(row => ratedVolts <= row.Size());
        return new(Quote("least"), Quote("most"));

        Quoted Quote(string column) => table.Quote(table.Number(row, column)!.Value, "volt", $"rated {Units.Text(ratedVolts, "volt")}");
    }
}
