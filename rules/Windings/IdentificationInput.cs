using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Windings;

/// <summary>All that may be known of a motor's leads before they are told apart.</summary>
public sealed record IdentificationInput
{
    /// <summary>The leads by the person's own tags, each once.</summary>
    public required IReadOnlyList<string> Leads { get; init; }

    /// <summary>Markings printed on the leads, by tag (T1, U1 …); believed as far as the ohms agree. Colours are never looked at.</summary>
    public IReadOnlyDictionary<string, string> Markings { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>The plate as far as it was read; the number of phases narrows the layouts.</summary>
    public PlateFields Plate { get; init; } = PlateFields.Empty;

    /// <summary>Whether the motor has a capacitor; <see langword="null"/> when nobody looked.</summary>
    public bool? HasCapacitor { get; init; }

    /// <summary><c>start</c> or <c>run</c>, as printed on the one capacitor; <see langword="null"/> when not said.</summary>
    public string? CapacitorUse { get; init; }

    /// <summary>Whether the capacitor was bridged or taken out of the way of the meter; <see langword="null"/> when not said.</summary>
    public bool? CapacitorBridged { get; init; }

    /// <summary>What a look at the motor, or a turn of its shaft by hand, has told; <see langword="null"/> where nobody can be asked to look.</summary>
    public Looks? Looks { get; init; }

    /// <summary>Leads that were followed from the brushes of slip rings, by tag: those of a rotor, of which one says it for all that read to it; none where nobody looked.</summary>
    public IReadOnlyList<string> RingLeads { get; init; } = [];

    /// <summary>The meter; <see langword="null"/> takes the usual hand-held one from knowledge.</summary>
    public MeterInput? Meter { get; init; }

    /// <summary>The meter readings in any order.</summary>
    public IReadOnlyList<Fact.Reading> Readings { get; init; } = [];

    /// <summary>Results of tests in which one winding was fed and another read; other tests are left aside.</summary>
    public IReadOnlyList<Fact.BenchTest> Tests { get; init; } = [];

    /// <summary>Ids of such tests that may be asked for: <c>induced-voltage</c>, <c>battery-flick</c>; none where nobody may or can do them.</summary>
    public IReadOnlyList<string> TestsAllowed { get; init; } = [];

    /// <summary>Volts of the test transformer at hand; the usual ones where it is left out.</summary>
    public double? TestVolts { get; init; }

    /// <summary>Readings that somebody cannot take, as pairs of tags; they are not asked for again.</summary>
    public IReadOnlyList<(string From, string To)> Unreadable { get; init; } = [];

    /// <summary>Whether the next reading may hold several leads together.</summary>
    public bool Shortcuts { get; init; }

    /// <summary>Whether a reading to the frame is wanted before the motor counts as identified.</summary>
    public bool CheckFrame { get; init; }
}

/// <summary>What is said of a meter; members that are not said are those of the usual hand-held one.</summary>
public sealed record MeterInput
{
    /// <summary>Error in percent of the reading, 0 to 50.</summary>
    public double? Percent { get; init; }

    /// <summary>Error in counts of the last digit, 0 to 100.</summary>
    public double? Counts { get; init; }

    /// <summary>Ohms of the test leads held together, 0 to 10.</summary>
    public double? TestLeadOhms { get; init; }

    /// <summary>Whether the test leads were zeroed, so that readings are already without them.</summary>
    public bool? Zeroed { get; init; }

    /// <summary>Ohms of the test leads as they were held together last; <see langword="null"/> where they never were.</summary>
    /// <param name="tests">Results of bench tests in their order.</param>
    public static double? ProbeOhms(IEnumerable<Fact.BenchTest> tests) => tests.LastOrDefault(test => test.Test == Fact.BenchTest.ProbeZero)?.Value;

    /// <summary>The meter with its test leads as they were measured, where nothing was said of them.</summary>
    /// <param name="said">What was said of the meter.</param>
    /// <param name="tests">Results of bench tests in their order.</param>
    public static MeterInput? Probed(MeterInput? said, IEnumerable<Fact.BenchTest> tests) =>
        said is { Zeroed: true } or { TestLeadOhms: not null } || ProbeOhms(tests) is not { } ohms ? said : (said ?? new()) with { TestLeadOhms = ohms, Zeroed = false };
}
