using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>How the insulation of a motor moved since its earlier sessions.</summary>
internal static class InsulationTrend
{
    private const int Shown = 4;

    /// <summary>The trend in a sentence; <see langword="null"/> without earlier sessions, and for a reading that proves nothing.</summary>
    public static Statement? Of(TradeKnowledge knowledge, IReadOnlyList<double> earlier, InsulationReading judged, Quoted? corrected, string verdict)
    {
        if (earlier.Count == 0 || verdict == "no-proof" || judged.TestVolts < knowledge.Rules["insulation-reading"]["least-test-volts"])
        {
            return null;
        }

        var rule = knowledge.Rules["insulation-trend"];
        var last = rule.Quote(earlier[^1], "megohm", "the last session, at 40 °C");
        if (corrected is not { Value: { } now })
        {
            var range = knowledge.Rules["insulation-correction-range"];
            return Statement.Of("insulation.trend-needs-temperature").With("before", last)
                .With("low", range.Quote(range["least-celsius"], "celsius", "winding"))
                .With("high", range.Quote(range["most-celsius"], "celsius", "winding"));
        }

        var highest = rule.Quote(earlier.Max(), "megohm", "the highest of the earlier sessions, at 40 °C");
        var ratio = rule.Quote(now / earlier[^1], "ratio", $"{corrected.Text} / {last.Text}");
        var said = ratio.Value <= rule["fall"] ? Statement.Of("insulation.falling").With("before", last)
            : now <= rule["fall"] * earlier.Max() ? Statement.Of("insulation.falling-slowly").With("before", highest)
            : Statement.Of("insulation.steady").With("before", last);
        return said.With("now", corrected).With("all", Sequence(earlier, now)).Resting(ratio);
    }

    private static string Sequence(IReadOnlyList<double> earlier, double now) =>
        string.Join(", ", earlier.Append(now).TakeLast(Shown).Select(megohms => Units.Text(megohms, "megohm")));
}
