using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>A test in words: why, how, and the reading to expect for each outcome.</summary>
internal sealed class EndsWords(TradeKnowledge knowledge, EndsScheme scheme, EndsEvidence evidence, ulong[] couplings)
{
    /// <summary>A test at rest.</summary>
    public NextTest Of(string test, TestSetup setup) => test switch
    {
        "battery-flick" => new()
        {
            Test = test,
            Setup = setup,
            Outcomes = TestSteps.Kicks,
            Task = "low-voltage-test",
            Why = Statement.Of("ends.why-flick"),
            How = [.. TestSteps.Flick(setup), .. Capacitors(setup)],
            Expect = Flicks(setup),
        },
        "induced-voltage" => new()
        {
            Test = test,
            Setup = setup,
            Unit = "volt",
            Task = "low-voltage-test",
            Why = Statement.Of("ends.why-induced"),
            How = [TestSteps.Feed(setup, knowledge), .. Capacitors(setup), TestSteps.Read(setup)],
            Expect = Volts(test, setup),
        },
        _ => new()
        {
            Test = test,
            Setup = setup,
            Unit = "volt",
            Task = "low-voltage-test",
            Why = Statement.Of("ends.why-series"),
            How =
            [
                Statement.Of("ends.how-tie", ("a", setup.Tie[0][0]), ("b", setup.Tie[0][1])),
                TestSteps.Feed(setup, knowledge),
                .. Capacitors(setup),
                TestSteps.Read(setup),
            ],
            Expect = Volts(test, setup),
        },
    };

    /// <summary>One of the two readings of a series impedance.</summary>
    public NextTest Impedance(TestSetup setup)
    {
        var rule = knowledge.Rules["ends-impedance"];
        return new()
        {
            Test = "series-impedance",
            Setup = setup,
            Unit = "ohm",
            Task = "measure-dead",
            Why = Statement.Of("ends.why-impedance"),
            How =
            [
                Statement.Of("ends.how-tie", ("a", setup.Tie[0][0]), ("b", setup.Tie[0][1])),
                Statement.Of("ends.how-impedance", ("a", setup.Read[0]), ("b", setup.Read[1])),
            ],
            Expect =
            [
                new(
                    Statement.Of("ends.when-impedance-clear").With("ratio", rule.Quote(rule["decides"], "ratio", "greater over smaller")),
                    Statement.Of(scheme.Phases ? "ends.means-impedance-phases" : "ends.means-impedance-halves")),
                new(
                    Statement.Of("ends.when-impedance-near").With("ratio", rule.Quote(rule["decides"], "ratio", "greater over smaller")),
                    Statement.Of("ends.means-cannot-tell")),
            ],
        };
    }

    /// <summary>A test at rest that was done, to be done once more.</summary>
    public NextTest Again(string test, TestSetup setup) => (test == "series-impedance" ? Impedance(setup) : Of(test, setup)) with { Why = Statement.Of("ends.why-again") };

    /// <summary>The motor turning on one half and its start branch.</summary>
    public NextTest HalfRun(TestSetup setup, EndsCoil start)
    {
        var rule = knowledge.Rules["ends-running"];
        var volts = setup.AppliedVolts!.Value;
        Quoted At(double ratio) => rule.Quote(ratio * volts, "volt", Inputs(ratio, volts));
        return new()
        {
            Test = "half-run",
            Setup = setup,
            Unit = "volt",
            Task = "measure-live",
            Why = Statement.Of("ends.why-half-run"),
            How =
            [
                Statement.Of("ends.how-half-run", ("a", setup.Drive[0]), ("b", setup.Drive[1]), ("start", start.From), ("startEnd", start.To)),
                Statement.Of("ends.how-tie", ("a", setup.Tie[0][0]), ("b", setup.Tie[0][1])),
                Statement.Of("ends.how-half-run-open", ("lead", setup.Read[1])).With("volts", At(1 + rule["high"])),
                Statement.Of("ends.how-read", ("a", setup.Read[0]), ("b", setup.Read[1])),
            ],
            Expect =
            [
                new(Statement.Of("ends.when-above").With("volts", At(rule["aiding"])), Tied(setup, like: false)),
                new(Statement.Of("ends.when-below").With("volts", At(rule["opposing"])), Tied(setup, like: true)),
                new(Statement.Of("ends.when-between").With("low", At(rule["opposing"])).With("high", At(rule["aiding"])), Statement.Of("ends.means-cannot-tell")),
            ],
        };
    }

    /// <summary>The connection for the high voltage on the low one.</summary>
    public static NextTest SoftRun(TestSetup setup) => new()
    {
        Test = "soft-first-run",
        Setup = setup,
        Outcomes = ["ran", "hummed", "growled"],
        Task = "first-start",
        Why = Statement.Of("ends.why-soft-run"),
        How =
        [
            .. setup.Tie.Select(tie => Statement.Of("ends.how-soft-joint", ("leads", string.Join(" + ", tie)))),
            Statement.Of("ends.how-soft-feed", ("a", setup.Drive[0]), ("b", setup.Drive[1])),
        ],
        Expect =
        [
            new(Statement.Of("ends.when-ran"), Statement.Of("ends.means-soft-right")),
            new(Statement.Of("ends.when-hummed"), Statement.Of("ends.means-soft-turn-over")),
        ],
    };

    /// <summary>A capacitor in the way of the volts can turn their sense round.</summary>
    private IEnumerable<Statement> Capacitors(TestSetup setup) =>
        scheme.Coils.Any(coil => coil.Role == "start" && setup.Drive.Contains(coil.From, StringComparer.Ordinal))
            ? [Statement.Of("ends.how-bridge-capacitor")]
            : scheme.Coils.Any(coil => coil.Role == "start") ? [Statement.Of("ends.how-start-open")] : [];

    private List<Expectation> Flicks(TestSetup setup) =>
    [
        .. Clusters("battery-flick", setup).OrderByDescending(cluster => cluster.Key)
            .Select(cluster => new Expectation(
                cluster.Key > 0 ? Statement.Of("ends.when-up") : cluster.Key < 0 ? Statement.Of("ends.when-down") : Statement.Of("ends.when-no-kick"),
                cluster.Key == 0 ? NoKick(setup, cluster.Value) : Means(setup, cluster.Value))),
        .. Clusters("battery-flick", setup).ContainsKey(0) ? Array.Empty<Expectation>()
            : [new Expectation(Statement.Of("ends.when-no-kick"), Statement.Of("ends.means-cannot-tell"))],
    ];

    private List<Expectation> Volts(string test, TestSetup setup)
    {
        var rule = knowledge.Rules["ends-coupling"];
        var volts = setup.AppliedVolts!.Value;
        var clusters = Clusters(test, setup).OrderByDescending(cluster => cluster.Key).ToList();
        var said = clusters.ConvertAll(cluster =>
        {
            var way = scheme.Ways[cluster.Value[0]];
            var ends = new[] { rule["low"], rule["high"] }.Select(coupling => Math.Abs(evidence.Ratio(setup, way, coupling))).Order().ToList();
            if (ends[1] < knowledge.Rules["ends-induced"]["null"])
            {
                return new Expectation(
                    Statement.Of("ends.when-below").With("volts", Null(volts)), Means(setup, cluster.Value));
            }

            return new Expectation(
                About(rule.Quote(ends[0] * volts, "volt", Inputs(ends[0], volts)), rule.Quote(ends[1] * volts, "volt", Inputs(ends[1], volts))),
                Means(setup, cluster.Value));
        });
        if (test == "induced-voltage" && clusters.Count == 1)
        {
            said.Add(new(Statement.Of("ends.when-below").With("volts", Null(volts)), Statement.Of("ends.phases-by-running")));
        }

        if (test == "series-voltage" && setup.Tie.Count > 0)
        {
            var band = knowledge.Rules[scheme.Phases ? "ends-phases" : "ends-same-axis"];
            said.Add(new(
                Statement.Of("ends.when-between")
                    .With("low", band.Quote(band["opposing"] * volts, "volt", Inputs(band["opposing"], volts)))
                    .With("high", band.Quote(band["aiding"] * volts, "volt", Inputs(band["aiding"], volts))),
                Statement.Of("ends.means-cannot-tell")));
        }

        return said;
    }

    /// <summary>A band, or one figure where the coupling does not change it.</summary>
    private static Statement About(Quoted low, Quoted high) => low.Text == high.Text
        ? Statement.Of("ends.when-about-one").With("volts", low)
        : Statement.Of("ends.when-about").With("low", low).With("high", high);

    private Quoted Null(double volts)
    {
        var rule = knowledge.Rules["ends-induced"];
        return rule.Quote(rule["null"] * volts, "volt", Inputs(rule["null"], volts));
    }

    /// <summary>The ways left by the outcome that they would give.</summary>
    private SortedDictionary<double, List<int>> Clusters(string test, TestSetup setup)
    {
        var rule = knowledge.Rules["ends-coupling"];
        var usual = (rule["low"] + rule["high"]) / 2;
        var found = new SortedDictionary<double, List<int>>();
        for (var way = 0; way < couplings.Length; way++)
        {
            if (couplings[way] != 0)
            {
                var ratio = evidence.Ratio(setup, scheme.Ways[way], usual);
                var key = test == "battery-flick"
                    ? Math.Abs(ratio) <= 2 * knowledge.Rules["ends-induced"]["null"] ? 0 : Math.Sign(ratio)
                    : Math.Round(Math.Abs(ratio), 2);
                (found.TryGetValue(key, out var ways) ? ways : found[key] = []).Add(way);
            }
        }

        return found;
    }

    private Statement NoKick(TestSetup setup, List<int> ways) => scheme.Phases ? Means(setup, ways) : Statement.Of("ends.means-cannot-tell");

    /// <summary>What all ways of an outcome have in common.</summary>
    private Statement Means(TestSetup setup, List<int> ways)
    {
        var (one, other) = (CoilAt(setup.Drive[0]), CoilAt(setup.Read[0]) is var read && setup.Tie.Count > 0 ? CoilAt(setup.Tie[0][1]) : read);
        if (one < 0 || other < 0 || scheme.Coils[one].To[0] == '\0' || CoilAt(setup.Drive[1]) != one)
        {
            return Statement.Of("ends.means-fewer");
        }

        if (setup.Tie.Count > 0)
        {
            var like = Common(ways, way => StartAt(one, setup.Tie[0][0], way) == StartAt(other, setup.Tie[0][1], way));
            return like is { } alike ? Tied(setup, alike) : Statement.Of("ends.means-fewer");
        }

        if (Common(ways, way => (way[one] - way[other]) % 180 == 0) is { } sameAxis && scheme.Ways.Any(way => (way[one] - way[other]) % 180 == 0 != sameAxis))
        {
            return sameAxis
                ? Statement.Of("ends.means-same-phase", ("a", setup.Drive[0]), ("b", setup.Drive[1]), ("c", setup.Read[0]), ("d", setup.Read[1]))
                : Statement.Of("ends.means-other-phase", ("a", setup.Drive[0]), ("b", setup.Drive[1]), ("c", setup.Read[0]), ("d", setup.Read[1]));
        }

        return Common(ways, way => StartAt(one, setup.Drive[0], way) == StartAt(other, setup.Read[0], way)) is not { } same ? Statement.Of("ends.means-fewer")
            : same ? Statement.Of("ends.means-like", ("a", setup.Drive[0]), ("b", setup.Read[0]))
            : Statement.Of("ends.means-like", ("a", setup.Drive[0]), ("b", setup.Read[1]));
    }

    private bool? Common(List<int> ways, Func<int[], bool> holds) =>
        ways.ConvertAll(way => holds(scheme.Ways[way])).Distinct().ToList() is [var single] ? single : null;

    private bool StartAt(int coil, string lead, int[] way) => EndsScheme.StartsFrom(coil, way) == (scheme.Coils[coil].From == lead);

    private int CoilAt(string lead) => scheme.Coils.ToList().FindIndex(coil => coil.From == lead || coil.To == lead);

    private static Statement Tied(TestSetup setup, bool like) => like
        ? Statement.Of("ends.means-tied-like", ("a", setup.Tie[0][0]), ("b", setup.Tie[0][1]))
        : Statement.Of("ends.means-tied-unlike", ("a", setup.Tie[0][0]), ("b", setup.Tie[0][1]));

    private static string Inputs(double ratio, double volts) => string.Create(CultureInfo.InvariantCulture, $"{ratio:0.00} × {volts:0.#} V");
}
