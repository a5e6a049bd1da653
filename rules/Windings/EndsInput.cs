using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Windings;

/// <summary>What is known before the ends are told apart.</summary>
public sealed record EndsInput
{
    /// <summary>A layout id; where it is left out, the windings' roles and number say what they can.</summary>
    public string? Layout { get; init; }

    /// <summary>The windings, as identification gives them.</summary>
    public required IReadOnlyList<EndsWinding> Windings { get; init; }

    /// <summary>Instrument ids within reach: <c>multimeter</c>, <c>low-voltage-ac</c>, <c>battery</c>, <c>lcr-meter</c>, …</summary>
    public IReadOnlyCollection<string> Instruments { get; init; } = [];

    /// <summary>Who does the test; a homeowner never feeds anything.</summary>
    public Role Role { get; init; } = Role.Technician;

    /// <summary>What was measured so far.</summary>
    public IReadOnlyList<EndsResult> Results { get; init; } = [];

    /// <summary>Markings printed on leads, by tag.</summary>
    public IReadOnlyDictionary<string, string> Printed { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>The lowest volts of the plate, for the tests that run the motor; without them none is offered.</summary>
    public double? LowVolts { get; init; }

    /// <summary>Volts of the test transformer at hand; those of the last result with a low voltage, or the usual ones, where it is left out.</summary>
    public double? TestVolts { get; init; }

    /// <summary>Tests that the person cannot do, by id.</summary>
    public IReadOnlyCollection<string> Barred { get; init; } = [];
}

/// <summary>A winding between two leads, or a group of leads that are joined inside.</summary>
/// <param name="Role">A winding role of the contract.</param>
/// <param name="Leads">The two leads by tag; of a junction all its leads.</param>
public sealed record EndsWinding(string Role, IReadOnlyList<string> Leads)
{
    /// <summary>Whether the leads meet in a point that does not come out.</summary>
    public bool Junction { get; init; }

    /// <summary>The lead at which two coils of the group meet, or taps by tag.</summary>
    public IReadOnlyList<string> Taps { get; init; } = [];

    /// <summary>The lead at which three coils of the group meet, besides <see cref="Leads"/>.</summary>
    internal string? Point { get; init; }

    /// <summary>The layout's markings that belong to <see cref="Leads"/>, where identification settled the group.</summary>
    public IReadOnlyList<string> Markings { get; init; } = [];
}

/// <summary>The result of a test.</summary>
public sealed record EndsResult
{
    /// <summary>A test id.</summary>
    public required string Test { get; init; }

    /// <summary>The leads that were fed; the winding of the first lead read where it is left out.</summary>
    public IReadOnlyList<string> Drive { get; init; } = [];

    /// <summary>Leads tied together; the two ends that were not read where it is left out and the test needs a tie.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Tie { get; init; } = [];

    /// <summary>The leads read across.</summary>
    public required IReadOnlyList<string> Read { get; init; }

    /// <summary>Volts on the fed leads while connected; the volts of the proposed set-up where it is left out.</summary>
    public double? AppliedVolts { get; init; }

    /// <summary>The reading: volts, or ohms of a series impedance.</summary>
    public double? Value { get; init; }

    /// <summary>The reading's unit id, where it is not volts: <c>ohm</c>, <c>amp</c>.</summary>
    public string? Unit { get; init; }

    /// <summary>What was seen where that is not a number: <c>up-on-make</c>, <c>down-on-make</c>, <c>no-kick</c>, <c>ran</c>, <c>hummed</c>, <c>growled</c>.</summary>
    public string? Outcome { get; init; }

    /// <summary>The result that a bench test of a case amounts to.</summary>
    /// <param name="test">The fact.</param>
    public static EndsResult Of(Fact.BenchTest test) => new()
    {
        Test = test.Test,
        Drive = test.Drive,
        Tie = test.Tie,
        Read = test.Read,
        AppliedVolts = test.AppliedVolts,
        Value = test.Value,
        Unit = test.Unit,
        Outcome = test.Outcome,
    };
}
