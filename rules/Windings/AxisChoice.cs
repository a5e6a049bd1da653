using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Chooses a test between two windings where no reading in ohms decides.</summary>
/// <param name="bench">The working table.</param>
/// <param name="readings">The readings.</param>
/// <param name="stands">Whether nothing stands against the likeliest of some explanations any more, with some tests done.</param>
internal sealed class AxisChoice(Bench bench, IReadOnlyList<Measured> readings, Func<Explanations, AxisEvidence, bool> stands)
{
    /// <summary>The kinds of test with what they can show; volts tell more than a kick.</summary>
    private static readonly (string Test, Induced[] Outcomes)[] Kinds = [(AxisEvidence.ByVolts, [Induced.Nothing, Induced.Half, Induced.Whole]), (AxisEvidence.ByFlick, [Induced.NoKick, Induced.Kick])];

    /// <summary>The test by which it is most likely settled, the first kind before the second; <see langword="null"/> where none is likely enough to.</summary>
    /// <param name="all">The explanations of all that was measured.</param>
    /// <param name="best">The likeliest.</param>
    /// <param name="tests">The tests that may be done.</param>
    public NextReading? Wanted(Explanations all, Leaf best, IReadOnlyList<string> tests)
    {
        var may = all.Share(leaf => Looks.HasArmature(leaf.Pattern.Layout)) < bench.Figures.BrushesBarTest.Value ? Kinds.Where(kind => tests.Contains(kind.Test, StringComparer.Ordinal)) : [];
        return may.Select(kind => Setups(all, best).Select(setup => (Setup: setup, Chance: Math.Round(Settles(all, setup, kind.Outcomes), 9))).OrderByDescending(one => one.Chance).FirstOrDefault() is { Setup: { } setup, Chance: var chance }
            && chance >= bench.Figures.TestSettles.Value ? Asked(kind.Test, setup, Statement.Of("windings.axis-tells"), chance) : null).FirstOrDefault(asked => asked is not null);
    }

    /// <summary>Where all rests on one test alone: the same with fed and read exchanged. <see langword="null"/> where it does not, or where both ways were tried.</summary>
    /// <param name="all">The explanations of all that was measured.</param>
    /// <param name="role">The windings that are believed.</param>
    /// <param name="tests">The tests that may be done.</param>
    /// <param name="guarded">Whether the roles may still be called with one test fewer.</param>
    public (bool Rests, NextReading? Next) BorneOut(Explanations all, string role, IReadOnlyList<string> tests, Func<AxisEvidence, bool> guarded)
    {
        foreach (var result in bench.Axes.Results)
        {
            var without = bench.Axes.Without(result);
            var rest = all.Weighed(leaf => without.LogOf(leaf) - bench.Axes.LogOf(leaf));
            if (guarded(without) && rest.ShareOf(role) >= bench.Figures.TestLeaves.Value)
            {
                continue;
            }

            var exchanged = new AxisResult(result.ReadFirst, result.ReadSecond, result.DriveFirst, result.DriveSecond, result.Shown);
            var test = tests.FirstOrDefault(test => test == AxisEvidence.ByFlick == result.Shown is Induced.Kick or Induced.NoKick);
            return (true, test is null || Done(exchanged) || !MayBeFed(all, exchanged) ? null : Asked(test, exchanged, Statement.Of("windings.axis-once-more"), 1));
        }

        return (false, null);
    }

    /// <summary>The likelihood of an outcome after which it stands, or nearly does.</summary>
    private double Settles(Explanations all, AxisResult setup, Induced[] outcomes)
    {
        var sum = 0.0;
        foreach (var shown in outcomes)
        {
            var evidence = bench.Axes.With(setup with { Shown = shown });
            var then = all.Weighed(leaf => evidence.LogOf(leaf) - bench.Axes.LogOf(leaf));
            var likely = Math.Exp(then.LogTotal - all.LogTotal);
            sum += likely >= bench.Figures.TestMisread.Value && (stands(then, evidence) || Nearly(all, then)) ? likely : 0;
        }

        return sum;
    }

    /// <summary>Whether what was open before is nearly settled: it was not before, or no more doubt is left than the test took.</summary>
    private bool Nearly(Explanations before, Explanations then)
    {
        var role = RoleKeys.Of(then.Best!);
        var (was, share) = (before.ShareOf(role), then.ShareOf(role));
        return share >= bench.Figures.TestLeaves.Value && (was < bench.Figures.TestLeaves.Value || 1 - share <= share - was);
    }

    /// <summary>Two windings of the likeliest explanation each that share no lead, or what is fed would be read; the one of fewer ohms fed: what is tied across a half that is read takes of its volts.</summary>
    private IEnumerable<AxisResult> Setups(Explanations all, Leaf best)
    {
        var leadOf = RoleKeys.LeadOf(best);
        var pairs = best.Pattern.Windings.Where(winding => !winding.Junction && winding.Taps.Count == 0 && winding.Terminals.Count == 2)
            .Select(winding => winding.Terminals.Select(terminal => leadOf[terminal]).Order().ToArray())
            .Select(pair => (Pair: pair, Ohms: readings.Where(reading => reading.Showed == Showed.Ohms && reading.First == pair[0] && reading.Second == pair[1]).Select(reading => reading.Ohms).DefaultIfEmpty(double.MaxValue).Average()))
            .OrderBy(pair => pair.Ohms).ThenBy(pair => pair.Pair[0]).Select(pair => pair.Pair).ToList();
        return from drive in Enumerable.Range(0, pairs.Count)
               from read in Enumerable.Range(drive + 1, pairs.Count - drive - 1)
               let setup = new AxisResult(pairs[drive][0], pairs[drive][1], pairs[read][0], pairs[read][1], default)
               where !pairs[drive].Intersect(pairs[read]).Any() && MayBeFed(all, setup) && !bench.Axes.Results.Any(setup.Between)
               select setup;
    }

    private bool Done(AxisResult setup) => bench.Axes.Results.Any(done => done.Drives(setup.DriveFirst, setup.DriveSecond) && done.Reads(setup.ReadFirst, setup.ReadSecond));

    /// <summary>A protector would short the feed, and a sensor is not made for it.</summary>
    private bool MayBeFed(Explanations all, AxisResult setup) => all.Share(leaf =>
        AxisEvidence.Winding(leaf, setup.DriveFirst, setup.DriveSecond) is not { } driven || driven.Role is "protector" or "other"
        || AxisEvidence.Winding(leaf, setup.ReadFirst, setup.ReadSecond) is { Role: "protector" }) < bench.Figures.BrushesBarTest.Value;

    private NextReading Asked(string test, AxisResult setup, Statement why, double chance)
    {
        string[] read = [bench.Leads[setup.ReadFirst], bench.Leads[setup.ReadSecond]];
        return new()
        {
            Kind = test,
            From = read[0],
            To = read[1],
            Setup = new TestSetup([bench.Leads[setup.DriveFirst], bench.Leads[setup.DriveSecond]], [], read, test == AxisEvidence.ByFlick ? null : bench.TestVolts),
            Why = why,
            ExpectedTellings = Math.Round(chance, 3),
        };
    }
}
