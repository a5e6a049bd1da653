using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>The results as set-ups with a ratio, and the marks that are printed.</summary>
internal sealed class EndsReadings
{
    private readonly List<(EndsResult Result, TestSetup Setup, double? Ratio)> _all = [];
    private readonly List<EndsResult> _twice = [];
    private readonly List<(int First, int Second, int Degrees)> _printed = [];

    private EndsReadings()
    {
    }

    /// <summary>Whether anything was tested.</summary>
    public bool Any => _all.Count > 0;

    /// <summary>Whether this very set-up was tested, or cannot be.</summary>
    public bool Has(string test, TestSetup setup) => _all.Exists(done => done.Result.Test == test && IsSame(done.Setup, setup));

    /// <summary>Each result of a test at rest that was read once, the last first, with the set-up by which to read it again.</summary>
    public IEnumerable<(EndsResult Result, TestSetup Setup)> Once =>
        _all.Where(done => done.Result.Test is not ("soft-first-run" or "half-run") && !_twice.Contains(done.Result)).Select(done => (done.Result, done.Setup)).Reverse();

    /// <summary>Whether one coil was fed and the other read, alone or tied to it.</summary>
    public bool Between(EndsCoil one, EndsCoil other) => _all.Exists(done => done.Result.Test != "series-impedance" && (Fed(done.Setup, one, other) || Fed(done.Setup, other, one)));

    private static bool Fed(TestSetup setup, EndsCoil fed, EndsCoil read) => Same(setup.Drive, [fed.From, fed.To])
        && (setup.Tie.Count == 0 ? Same(setup.Read, [read.From, read.To]) : setup.Read.Concat(setup.Tie.SelectMany(tie => tie)).Intersect([read.From, read.To], StringComparer.Ordinal).Count() == 2);

    /// <summary>Set-ups with tied ends that read as if the coils coupled more strongly than they do with a rotor in place.</summary>
    /// <param name="coupling">Volts induced over volts applied above which that is so.</param>
    public IEnumerable<TestSetup> TooStrong(double coupling) =>
        _all.Where(done => done is { Result.Test: "series-voltage", Ratio: { } ratio } && Math.Abs(ratio - 1) > coupling).Select(done => done.Setup);

    /// <summary>Results of soft first runs by their joints.</summary>
    public string? SoftRun(TestSetup setup) => _all.LastOrDefault(done => done.Result.Test == "soft-first-run" && Key(done.Setup) == Key(setup)).Result?.Outcome;

    /// <summary>Reads the results.</summary>
    public static Answer<EndsReadings> Of(EndsInput input, EndsScheme scheme, TradeKnowledge knowledge)
    {
        var readings = new EndsReadings();
        for (var at = 0; at < input.Results.Count; at++)
        {
            var result = input.Results[at];
            var setup = Setup(result, scheme, knowledge);
            if (setup is null)
            {
                return EndsSchemes.Wrong($"results[{at}].between", Statement.Of("problem.ends-no-way", ("leads", string.Join(", ", result.Read))));
            }

            var ratio = Ratio(result, setup);
            if (ratio is null && result.Test != "soft-first-run")
            {
                return EndsSchemes.Wrong($"results[{at}].value", Statement.Of("problem.ends-no-value", ("test", result.Test)));
            }

            readings.Keep(result, setup, ratio);
        }

        readings.ReadPrinted(input, scheme);
        return readings;
    }

    /// <summary>Of a test that was done again with the same set-up the last reading counts.</summary>
    private void Keep(EndsResult result, TestSetup setup, double? ratio)
    {
        var before = _all.FindIndex(done => ratio is not null && done.Result.Test == result.Test && IsSame(done.Setup, setup));
        if (before >= 0)
        {
            _all.RemoveAt(before);
            _twice.Add(result);
        }

        _all.Add((result, setup, ratio));
    }

    /// <summary>The couplings that every result leaves to each way, and how each was judged.</summary>
    public (ulong[] Couplings, IReadOnlyList<TrailStep> Trail) Weigh(EndsEvidence evidence, EndsScheme scheme)
    {
        var couplings = scheme.Ways.Select(way => AsPrinted(way, 1) || (scheme.Phases && AsPrinted(way, -1)) ? EndsEvidence.Any : 0).ToArray();
        var trail = new List<TrailStep>();
        foreach (var (result, setup, ratio) in _all)
        {
            var masks = result.Test switch
            {
                "soft-first-run" => BySoftRun(result, setup, scheme),
                "series-impedance" => ByImpedance(result, setup, evidence),
                "induced-voltage" when !scheme.Phases => null, // halves on one axis show their sign only when tied
                _ => evidence.Masks(result.Test, setup, ratio!.Value, couplings),
            };
            for (var way = 0; masks is not null && way < couplings.Length; way++)
            {
                couplings[way] &= masks[way];
            }

            var figure = ratio is { } number ? Units.Number(number) : result.Outcome ?? string.Empty;
            trail.Add(new(
                result.Test, "reading / applied volts", $"{string.Join('–', setup.Read)}: {figure}",
                string.Create(CultureInfo.InvariantCulture, $"{couplings.Count(mask => mask != 0)} of {couplings.Length} ways of lying fit")));
        }

        return (couplings, trail);
    }

    /// <summary>The printed marks as the assignment, where every lead carries one.</summary>
    public static IReadOnlyDictionary<string, string>? Printed(EndsScheme scheme, EndsInput input)
    {
        var marks = scheme.Form?.Leads.Select(lead => lead.Marking).ToList() ?? [];
        var byMark = input.Printed.GroupBy(pair => pair.Value, StringComparer.Ordinal).Where(group => group.Count() == 1)
            .ToDictionary(group => group.Key, group => group.Single().Key, StringComparer.Ordinal);
        return marks.Count > 0 && marks.TrueForAll(byMark.ContainsKey)
            ? marks.ToDictionary(mark => mark, mark => byMark[mark], StringComparer.Ordinal) : null;
    }

    /// <summary>Phases may also be printed the other way round: that only sets the direction of rotation.</summary>
    private bool AsPrinted(int[] way, int turn) => _printed.TrueForAll(said => (way[said.Second] - way[said.First] - (turn * said.Degrees)) % 360 == 0);

    private void ReadPrinted(EndsInput input, EndsScheme scheme)
    {
        if (scheme.Form is null || input.Printed.Count == 0)
        {
            return;
        }

        var vectors = EndsLayout.Vectors(scheme.Form);
        List<(int Coil, int Degrees)> known = [];
        for (var coil = 0; coil < scheme.Coils.Count; coil++)
        {
            var (from, to) = (input.Printed.GetValueOrDefault(scheme.Coils[coil].From), input.Printed.GetValueOrDefault(scheme.Coils[coil].To));
            var vector = vectors.FirstOrDefault(vector => vector.From == from && vector.To == to) is { } along ? along.Degrees
                : vectors.FirstOrDefault(vector => vector.From == to && vector.To == from) is { } against && to is not null ? (against.Degrees + 180) % 360
                : -1;
            if (vector >= 0 && (from is not null || to is not null))
            {
                known.Add((coil, vector));
            }
        }

        foreach (var group in scheme.Related)
        {
            var marked = known.Where(one => group.Contains(one.Coil)).ToList();
            _printed.AddRange(marked.Skip(1).Select(one => (marked[0].Coil, one.Coil, one.Degrees - marked[0].Degrees)));
        }
    }

    private static TestSetup? Setup(EndsResult result, EndsScheme scheme, TradeKnowledge knowledge)
    {
        if (result.Test == "soft-first-run")
        {
            return new TestSetup(result.Drive, result.Tie, result.Read, result.AppliedVolts);
        }

        if (result.Read.Count != 2)
        {
            return null;
        }

        var read = result.Read;
        var drive = result.Drive.Count == 2 ? result.Drive : DriveFor(result, scheme);
        var tie = result.Tie.Count > 0 || result.Test is "induced-voltage" or "battery-flick" ? result.Tie : TieFor(read, scheme);
        if (drive is null || tie is null)
        {
            return null;
        }

        var setup = new TestSetup(drive, tie, read, result.AppliedVolts ?? knowledge.Rules["ends-applied-volts"]["volts"]);
        var physics = new EndsPhysics(scheme.Coils);
        return (result.Test != "series-impedance" && physics.Way(drive[0], drive[1], []) is null) || physics.Way(read[0], read[1], tie) is null ? null : setup;
    }

    /// <summary>The winding of the first lead read is the one that is fed; a winding read alone leaves the first other one.</summary>
    private static List<string>? DriveFor(EndsResult result, EndsScheme scheme)
    {
        bool Holds(EndsCoil coil, string lead) => coil.From == lead || coil.To == lead;
        var coil = result.Test is "induced-voltage" or "battery-flick"
            ? scheme.Related.Where(group => group.Any(one => Holds(scheme.Coils[one], result.Read[0]))).SelectMany(group => group).Select(one => scheme.Coils[one])
                .FirstOrDefault(one => !Holds(one, result.Read[0]))
            : scheme.Coils.FirstOrDefault(one => Holds(one, result.Read[0]));
        return coil is null || coil.To[0] == '\0' ? null : [coil.From, coil.To];
    }

    private static List<IReadOnlyList<string>>? TieFor(IReadOnlyList<string> read, EndsScheme scheme)
    {
        var other = read.Select(lead => scheme.Coils.FirstOrDefault(coil => coil.From == lead || coil.To == lead) is { } coil
            ? coil.From == lead ? coil.To : coil.From : null).OfType<string>().ToList();
        return other.Count == 2 && other.TrueForAll(lead => lead[0] != '\0') && other[0] != read[1] ? [other] : null;
    }

    private static double? Ratio(EndsResult result, TestSetup setup) => result.Test switch
    {
        "battery-flick" => result.Outcome switch
        {
            "up-on-make" => 1,
            "down-on-make" => -1,
            "no-kick" => 0,
            null => result.Value is { } value ? Math.Sign(value) : null,
            _ => null,
        },
        "series-impedance" => result.Value is > 0 ? result.Unit == "amp" ? 1 / result.Value : result.Value : null,
        "half-run" when result.AppliedVolts is null => null,
        _ => result.Value / setup.AppliedVolts,
    };

    private ulong[]? ByImpedance(EndsResult result, TestSetup setup, EndsEvidence evidence)
    {
        var first = _all.Find(one => one.Result.Test == "series-impedance" && Leads(one.Setup) == Leads(setup));
        return first.Result == result || Key(first.Setup) == Key(setup) ? null : evidence.ByImpedance(first.Setup, first.Ratio!.Value, _all.Find(one => one.Result == result).Ratio!.Value);
    }

    /// <summary>A way is proved when its own joints ran quietly; a hum alone may also be a dead start branch.</summary>
    private static ulong[]? BySoftRun(EndsResult result, TestSetup setup, EndsScheme scheme) => result.Outcome != "ran" ? null
        : [.. scheme.Ways.Select(way => EndsNext.SoftRuns(scheme, way, setup) ? EndsEvidence.Any : 0)];

    private static bool IsSame(TestSetup one, TestSetup other) => Same(one.Read, other.Read) && Same(one.Drive, other.Drive) && Key(one) == Key(other);

    private static bool Same(IReadOnlyList<string> one, IReadOnlyList<string> other) => one.Order(StringComparer.Ordinal).SequenceEqual(other.Order(StringComparer.Ordinal), StringComparer.Ordinal);

    internal static string Key(TestSetup setup) => string.Join('/', setup.Tie.Select(tie => string.Join('+', tie.Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal));

    private static string Leads(TestSetup setup) => string.Join('+', setup.Read.Concat(setup.Tie.SelectMany(tie => tie)).Order(StringComparer.Ordinal));
}
