using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Coaching;

/// <summary>The volts that the supply gives before the start: one figure, or one for each pair of lines. After one that does not suit the series begins anew, and only a whole good one clears it.</summary>
/// <param name="Volts">The figures that count, in their order.</param>
/// <param name="Wrong">The figure that did not suit the connection.</param>
internal sealed record SupplySeries(IReadOnlyList<double> Volts, Fact.BenchTest? Wrong)
{
    public const int Pairs = 3;

    /// <summary>Whether pairs of lines are still to be read.</summary>
    public bool Begun(Plan plan) => plan.Phases == Pairs && Volts.Count is > 0 and < Pairs;

    public static SupplySeries Of(Workup work, Plan plan)
    {
        var series = new SupplySeries([], null);
        var most = plan.Phases == Pairs ? Pairs : 1;
        foreach (var test in work.File.BenchTests.Where(test => test is { Test: "supply-voltage", Value: not null }))
        {
            if (test.At is null || test.At != series.Wrong?.At) // what was told in one breath with a wrong figure is read again with it
            {
                series = series.With(test, most, Suits(work, plan, test.Value!.Value));
            }
        }

        return series;
    }

    private SupplySeries With(Fact.BenchTest test, int most, bool suits)
    {
        IReadOnlyList<double> volts = Volts.Count == most ? [test.Value!.Value] : [.. Volts, test.Value!.Value];
        return suits ? new(volts, volts.Count == most ? null : Wrong) : new([], test);
    }

    /// <summary>Volts against the plate's, and the pairs against each other; <see langword="null"/> before anything was read.</summary>
    public Check? Judge(Workup work, Plan plan)
    {
        if ((Wrong?.Value ?? (Volts.Count > 0 ? Volts[^1] : null)) is not { } last)
        {
            return null;
        }

        var match = SupplyMatch.Volts(work.Knowledge, plan.PlateVolts, last);
        var got = string.Join(", ", (Wrong is null ? Volts : [last]).Select(volts => Units.Text(volts, "volt", 4)));
        var check = new Check("supply-voltage", Units.Text(plan.PlateVolts, "volt"), got, Wrong is null ? "pass" : "fail", match.Why);
        return Volts.Count < Pairs || Unbalance.OfVolts(work.Knowledge, Volts).Value is not { } pairs ? check
            : pairs.Verdict == "do-not-run" ? check with { Verdict = "fail", Says = pairs.Why }
            : check with { Also = pairs.Why };
    }

    private static bool Suits(Workup work, Plan plan, double volts) => !SupplyMatch.Volts(work.Knowledge, plan.PlateVolts, volts).Verdict.StartsWith("out", StringComparison.Ordinal);
}
