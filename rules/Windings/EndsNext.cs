using System.Numerics;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Chooses the next test: the safest that the instruments and the role allow, and of those the one that leaves the fewest ways.</summary>
internal sealed class EndsNext(
    TradeKnowledge knowledge, EndsScheme scheme, EndsEvidence evidence, EndsInput input, ulong[] couplings, EndsReadings readings)
{
    private static readonly string[] Useful = ["low-voltage-ac", "lcr-meter", "battery"];

    /// <summary>The test, or <see langword="null"/> where none at hand would tell more.</summary>
    public NextTest? Choose()
    {
        if (input.Role is Role.Homeowner or Role.Manager)
        {
            return null;
        }

        if (scheme.Coils.Any(coil => coil.Role is "armature" or "series-field" or "shunt-field"))
        {
            return Instrument("battery") ? Best(["battery-flick"]) : null; // AC on a field of few turns steps up in the other
        }

        return (Instrument("low-voltage-ac") ? Best(scheme.Phases ? ["series-voltage", "induced-voltage"] : ["series-voltage"]) : null)
            ?? (Instrument("lcr-meter") ? Impedance() : null)
            ?? (Instrument("battery") ? Best(["battery-flick"]) : null)
            ?? HalfRun()
            ?? SoftRun();
    }

    /// <summary>Halves of one phase that were never fed and read against each other; only such a reading shows that they lie in the same slots.</summary>
    public NextTest? Confirm(int[] way)
    {
        var test = Instrument("low-voltage-ac") ? "induced-voltage" : "battery-flick";
        if (!scheme.Phases || !scheme.CoilsComeOut || input.Role is Role.Homeowner or Role.Manager)
        {
            return null;
        }

        for (var one = 0; one < scheme.Coils.Count; one++)
        {
            for (var other = one + 1; other < scheme.Coils.Count; other++)
            {
                if ((way[one] - way[other]) % 180 == 0 && !readings.Between(scheme.Coils[one], scheme.Coils[other]))
                {
                    return new EndsWords(knowledge, scheme, evidence, couplings).Of(test, new(
                        [scheme.Coils[one].From, scheme.Coils[one].To], [], [scheme.Coils[other].From, scheme.Coils[other].To],
                        test == "battery-flick" ? null : TestVolts));
                }
            }
        }

        return null;
    }

    /// <summary>Halves that seem to couple as they hardly do at rest: a slipped decimal point looks just so, and the other end tied must say the same.</summary>
    public NextTest? Crossed()
    {
        if (scheme.Phases || !Instrument("low-voltage-ac") || Barred("series-voltage") || input.Role is Role.Homeowner or Role.Manager)
        {
            return null;
        }

        return readings.TooStrong(knowledge.Rules["ends-same-axis"]["cross-above"]).Select(Across).OfType<TestSetup>()
            .Where(setup => !readings.Has("series-voltage", setup))
            .Select(setup => new EndsWords(knowledge, scheme, evidence, couplings).Of("series-voltage", setup) with { Why = Statement.Of("ends.why-crossed") }).FirstOrDefault();
    }

    /// <summary>The same set-up with the other end of the coil that is not fed tied.</summary>
    private TestSetup? Across(TestSetup setup)
    {
        if (setup is not { Tie: [[var fed, var tied]], Read: [var first, var second] } || scheme.Coils.FirstOrDefault(coil => coil.From == tied || coil.To == tied) is not { } read)
        {
            return null;
        }

        var free = Other(read, tied);
        return free == first ? setup with { Tie = [[fed, free]], Read = [tied, second] } : free == second ? setup with { Tie = [[fed, free]], Read = [first, tied] } : null;
    }

    /// <summary>Why there is no test, and who or what would help.</summary>
    public Statement WhyNot(bool tested) =>
        input.Role is Role.Homeowner ? Statement.Of("ends.not-for-homeowner")
        : input.Role is Role.Manager ? Statement.Of("ends.not-at-the-bench")
        : scheme.Phases && tested && input.Instruments.Contains("low-voltage-ac", StringComparer.Ordinal) ? Statement.Of("ends.phases-by-running")
        : input.Role is Role.Apprentice && tested ? Statement.Of("ends.with-a-technician")
        : tested ? Statement.Of("ends.nothing-left")
        : Wanting() is { Count: > 0 } wanting ? Statement.Of("ends.needs-instrument").With("instruments", wanting)
        : Statement.Of("ends.nothing-left");

    /// <summary>What is not at hand and would allow a test that tells something here.</summary>
    private List<Statement> Wanting() =>
        [.. Useful.Where(id => !Instrument(id) && new EndsNext(knowledge, scheme, evidence, input with { Instruments = [id], LowVolts = null }, couplings, readings).Choose() is not null).Select(id => Statement.Named($"ends.instrument.{id}"))];

    /// <summary>Whether these joints lay the run halves of a way in series so that they help each other.</summary>
    public static bool SoftRuns(EndsScheme scheme, int[] way, TestSetup setup) =>
        Halves(scheme) is var (first, second) && SoftTie(scheme, way, first, second) is var (a, b)
        && setup.Tie.Any(tie => tie.Contains(a, StringComparer.Ordinal) && tie.Contains(b, StringComparer.Ordinal))
        | setup.Tie.Any(tie => tie.Contains(Other(scheme.Coils[first], a), StringComparer.Ordinal) && tie.Contains(Other(scheme.Coils[second], b), StringComparer.Ordinal));

    /// <summary>The transformer's volts as said, else those of the last test at rest, else the usual ones.</summary>
    private double TestVolts => input.TestVolts
        ?? input.Results.LastOrDefault(result => result is { Test: "series-voltage" or "induced-voltage", AppliedVolts: not null })?.AppliedVolts
        ?? knowledge.Rules["ends-applied-volts"]["volts"];

    private bool Instrument(string id) => input.Instruments.Contains(id, StringComparer.Ordinal);

    private bool Barred(string test) => input.Barred.Contains(test, StringComparer.Ordinal);

    private NextTest? Best(string[] tests)
    {
        var best = (Left: couplings.Sum(BitOperations.PopCount) * (1 - knowledge.Rules["ends-induced"]["worth"]), Next: default((string Test, TestSetup Setup)?));
        foreach (var test in tests.Where(test => !Barred(test)))
        {
            foreach (var setup in Setups(test).Where(setup => evidence.Reads(setup) && !readings.Has(test, setup) && (test != "series-voltage" || AxisKnown(setup))))
            {
                if (ExpectedLeft(test, setup) is var left && left < best.Left - 1e-9)
                {
                    best = (left, (test, setup));
                }
            }
        }

        return best.Next is var (chosen, how) ? new EndsWords(knowledge, scheme, evidence, couplings).Of(chosen, how) : null;
    }

    /// <summary>A reading of tied ends means one thing on one axis and the opposite on two, so a coil is read alone before it is tied.</summary>
    private bool AxisKnown(TestSetup setup)
    {
        var (one, other) = (Index((setup.Drive[0], setup.Drive[1])), Index((setup.Tie[0][1], setup.Read[1])));
        return one < 0 || other < 0 || couplings.Select((mask, way) => (mask, way)).Where(pair => pair.mask != 0)
            .Select(pair => (scheme.Ways[pair.way][one] - scheme.Ways[pair.way][other]) % 180 == 0).Distinct().Count() == 1;
    }

    private IEnumerable<TestSetup> Setups(string test)
    {
        foreach (var (a, b) in Pairings())
        {
            double? applied = test == "battery-flick" ? null : TestVolts;
            if (test == "series-voltage")
            {
                yield return new([a.Item1, a.Item2], [[a.Item2, b.Item1]], [a.Item1, b.Item2], applied);
                if (scheme.Drives.Count == 3 && scheme.Reads.Count == 3 && !scheme.Drives.SequenceEqual(scheme.Reads))
                {
                    yield return new([a.Item1, a.Item2], [[a.Item1, b.Item1]], [b.Item2, a.Item2], applied);
                }
            }
            else
            {
                yield return new([a.Item1, a.Item2], [], [b.Item1, b.Item2], applied);
            }
        }
    }

    /// <summary>What may be fed with what may be read: of one related group, and never the same leads.</summary>
    private IEnumerable<((string, string), (string, string))> Pairings() =>
        from drive in scheme.Drives
        from read in scheme.Reads
        where drive != read && (scheme.Phases || Together(drive, read))
        select (drive, read);

    private bool Together((string From, string) one, (string From, string) other) => scheme.Related.Any(group =>
        group.Any(coil => scheme.Coils[coil].From == one.From) && group.Any(coil => scheme.Coils[coil].From == other.From));

    /// <summary>Ways left on average after the test, each counted with the couplings left to it; every way as likely as the other.</summary>
    private double ExpectedLeft(string test, TestSetup setup)
    {
        var kinds = evidence.Kinds(setup, couplings);
        var alive = (double)kinds.Sum(kind => kind.Count);
        return kinds.GroupBy(kind => Outcome(test, evidence.Ratio(setup, scheme.Ways[kind.Way], evidence.Usual(kind.Couplings)))).Sum(outcome =>
            outcome.Sum(kind => kind.Count) / alive * kinds.Sum(kind => kind.Count * BitOperations.PopCount(evidence.Mask(test, setup, kind.Way, outcome.Key) & kind.Couplings)));
    }

    private double Outcome(string test, double ratio) => test == "battery-flick"
        ? Math.Abs(ratio) <= 2 * knowledge.Rules["ends-induced"]["null"] ? 0 : Math.Sign(ratio)
        : Math.Round(Math.Abs(ratio), 2);

    private NextTest? Impedance()
    {
        if (Barred("series-impedance"))
        {
            return null;
        }

        foreach (var (a, b) in Pairings().Where(_ => scheme.Coils.Count <= 3 || !scheme.Phases))
        {
            foreach (var setup in new TestSetup[]
            {
                new([a.Item1, b.Item2], [[a.Item2, b.Item1]], [a.Item1, b.Item2], null),
                new([a.Item1, b.Item1], [[a.Item2, b.Item2]], [a.Item1, b.Item1], null),
            })
            {
                if (!readings.Has("series-impedance", setup) && Differs(a, b))
                {
                    return new EndsWords(knowledge, scheme, evidence, couplings).Impedance(setup);
                }
            }
        }

        return null;
    }

    /// <summary>Whether the ways left still differ in how these two coils lie to each other.</summary>
    private bool Differs((string, string) a, (string, string) b)
    {
        var (one, other) = (Index(a), Index(b));
        return couplings.Select((mask, way) => (mask, way)).Where(pair => pair.mask != 0)
            .Select(pair => Math.Sign(Math.Round(Math.Cos((scheme.Ways[pair.way][one] - scheme.Ways[pair.way][other]) * Math.PI / 180), 6))).Distinct().Skip(1).Any();
    }

    private int Index((string From, string To) ends) => scheme.Coils.ToList().FindIndex(coil => coil.From == ends.From && coil.To == ends.To);

    private NextTest? HalfRun()
    {
        if (input.Role is not Role.Technician || !Instrument("multimeter") || Barred("half-run") || Halves(scheme) is not var (first, second)
            || !scheme.CanRunOnHalf || input.LowVolts is not { } volts || !Differs(Ends(first), Ends(second)))
        {
            return null;
        }

        var (a, b) = (scheme.Coils[first], scheme.Coils[second]);
        var start = scheme.Coils.FirstOrDefault(coil => coil.Role == "start");
        if (start is null)
        {
            return null;
        }

        var setup = new TestSetup([a.From, a.To], [[a.To, b.From]], [a.From, b.To], volts);
        return readings.Has("half-run", setup) ? null : new EndsWords(knowledge, scheme, evidence, couplings).HalfRun(setup, start);
    }

    private NextTest? SoftRun()
    {
        if (input.Role is not Role.Technician || Barred("soft-first-run") || !scheme.CanRunOnHalf || Halves(scheme) is not var (first, second)
            || input.LowVolts is not { } volts || !Differs(Ends(first), Ends(second)))
        {
            return null;
        }

        foreach (var way in Enumerable.Range(0, couplings.Length).Where(way => couplings[way] != 0))
        {
            var (a, b) = SoftTie(scheme, scheme.Ways[way], first, second);
            var (line, other) = (Other(scheme.Coils[first], a), Other(scheme.Coils[second], b));
            var start = scheme.Coils.Where(coil => coil.Role == "start").ToList();
            List<IReadOnlyList<string>> tie = start.Count == 1 ? [[a, b, start[0].From], [other, start[0].To]] : [[a, b]];
            var setup = new TestSetup([line, other], tie, [], volts);
            if (readings.SoftRun(setup) is null)
            {
                return start.Count > 1 ? null : EndsWords.SoftRun(setup);
            }
        }

        return null;
    }

    private (string, string) Ends(int coil) => (scheme.Coils[coil].From, scheme.Coils[coil].To);

    private static (int First, int Second)? Halves(EndsScheme scheme) =>
        scheme.Related.FirstOrDefault(group => group.Count == 2 && group.All(coil => scheme.Coils[coil].Role == "run")) is { } run ? (run[0], run[1]) : null;

    /// <summary>The ends of the two halves that meet in the middle.</summary>
    private static (string A, string B) SoftTie(EndsScheme scheme, int[] way, int first, int second) =>
        (scheme.Coils[first].To, way[first] == way[second] ? scheme.Coils[second].From : scheme.Coils[second].To);

    private static string Other(EndsCoil coil, string end) => coil.From == end ? coil.To : coil.From;
}
