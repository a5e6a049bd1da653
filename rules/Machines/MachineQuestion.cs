using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Machines;

/// <summary>What is asked of a machine model, as far as it was said; ohms at the stated frequency.</summary>
public sealed record MachineQuestion
{
    /// <summary>The kinds of machine.</summary>
    public const string SinglePhaseKind = "single-phase";

    /// <inheritdoc cref="SinglePhaseKind"/>
    public const string TwoWindingKind = "two-winding";

    /// <inheritdoc cref="SinglePhaseKind"/>
    public const string ThreePhaseKind = "three-phase";

    /// <summary>Beyond these no figure of a machine can lie, in any of the units; they keep every answer finite.</summary>
    private const double Least = 1e-9;

    private const double Most = 1e9;
    private const int MostPoints = 2000;
    private const int MostPoles = 96;

    /// <summary><c>single-phase</c>, <c>two-winding</c> or <c>three-phase</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>Stator (main winding) resistance.</summary>
    public double? R1 { get; init; }

    /// <summary>Stator (main winding) leakage reactance.</summary>
    public double? X1 { get; init; }

    /// <summary>Rotor resistance.</summary>
    public double? R2 { get; init; }

    /// <summary>Rotor leakage reactance.</summary>
    public double? X2 { get; init; }

    /// <summary>Magnetising reactance.</summary>
    public double? Xm { get; init; }

    /// <summary>Core-loss resistance.</summary>
    public double? Rc { get; init; }

    /// <summary>Start-winding resistance.</summary>
    public double? StartR { get; init; }

    /// <summary>Start-winding leakage reactance.</summary>
    public double? StartX { get; init; }

    /// <summary>Effective turns, start over main.</summary>
    public double? TurnsRatio { get; init; }

    /// <summary>Capacitor in the start branch.</summary>
    public double? Microfarads { get; init; }

    /// <summary>Volts across the start branch where it has a supply of its own.</summary>
    public double? StartVolts { get; init; }

    /// <summary>Their angle against the main supply.</summary>
    public double StartAngleDegrees { get; init; }

    /// <summary>Supply volts.</summary>
    public double? Volts { get; init; }

    /// <summary>Plate amps, to estimate a circuit from where none is known.</summary>
    public double? PlateAmps { get; init; }

    /// <summary>Plate volts; <see cref="Volts"/> where they are not said.</summary>
    public double? PlateVolts { get; init; }

    /// <summary>Volts between lines AB, BC and CA where they differ.</summary>
    public IReadOnlyList<double>? LineVolts { get; init; }

    /// <summary><c>a</c>, <c>b</c> or <c>c</c>: the line that is lost.</summary>
    public string? OpenLine { get; init; }

    /// <summary>Frequency.</summary>
    public double? Hertz { get; init; }

    /// <summary>Poles.</summary>
    public double? Poles { get; init; }

    /// <summary>Forward slip; or <see cref="Rpm"/>.</summary>
    public double? Slip { get; init; }

    /// <summary>Shaft speed; or <see cref="Slip"/>.</summary>
    public double? Rpm { get; init; }

    /// <summary>Core loss in watts.</summary>
    public double CoreWatts { get; init; }

    /// <summary>Friction and windage in watts.</summary>
    public double RotationalWatts { get; init; }

    /// <summary><c>from-output</c> or <c>to-input</c>.</summary>
    public string CoreBooking { get; init; } = "from-output";

    /// <summary>Points of a curve over slip.</summary>
    public double? Curve { get; init; }

    /// <summary>Bench tests to find the circuit from.</summary>
    public MachineTests? Tests { get; init; }

    /// <summary>Whether the circuit is to be estimated from the plate.</summary>
    internal bool IsEstimate => PlateAmps is not null && Tests is null && R1 is null && R2 is null;

    /// <summary>The same question of one circuit.</summary>
    internal MachineQuestion With(MachineCircuit circuit) =>
        this with { R1 = circuit.R1, X1 = circuit.X1, R2 = circuit.R2, X2 = circuit.X2, Xm = circuit.Xm, Rc = circuit.Rc ?? Rc, Tests = null };

    /// <summary>Whether the start alone is asked, by the locked-rotor impedances of both windings.</summary>
    internal bool IsLocked => Kind == TwoWindingKind && R2 is null && X2 is null && Xm is null && Tests is null && !IsEstimate;

    /// <summary>The supply.</summary>
    internal Feed Feed => new(Volts ?? LineVolts?.Average() ?? 0, Hertz ?? 0, (int)(Poles ?? 0));

    /// <summary>The losses outside the circuit.</summary>
    internal Losses Losses => new(CoreWatts, RotationalWatts, CoreBooking == "to-input" ? Machines.CoreBooking.ToInput : Machines.CoreBooking.FromOutput);

    /// <summary>The slip asked for; standstill where nothing was said.</summary>
    internal double AskedSlip => Slip ?? (Rpm is { } rpm ? Feed.SlipAt(rpm) : 1);

    /// <summary>What is wrong with the question.</summary>
    internal IReadOnlyList<Problem> Problems()
    {
        var wrong = new List<Problem>();
        void Require(bool holds, string field, Statement why)
        {
            if (!holds)
            {
                wrong.Add(new Problem("invalid-fact", field, why));
            }
        }

        void Above(double? value, string field, bool zeroAllowed, bool needed)
        {
            Require(value is not null || !needed, field, Statement.Of("problem.missing", ("field", field)));
            Require(value is null or (>= Least and <= Most) || (zeroAllowed && value == 0), field, Statement.Of("machines.out-of-range", ("field", field), ("value", $"{value}")));
        }

        Require(Kind is SinglePhaseKind or TwoWindingKind or ThreePhaseKind, "kind", Statement.Of("machines.kind"));
        var (two, whole) = (Kind == TwoWindingKind, Tests is null && !IsEstimate);
        Above(R1, two ? "main.r" : "r1", !IsLocked, whole);
        Above(X1, two ? "main.x" : "x1", !IsLocked, whole);
        Above(R2, "r2", false, whole && !IsLocked);
        Above(X2, "x2", true, whole && !IsLocked);
        Above(Xm, "xm", false, whole && !IsLocked);
        Above(Rc, "rc", false, false);
        Above(StartR, "start.r", false, two && !IsEstimate);
        Above(StartX, "start.x", true, two && !IsEstimate);
        Above(TurnsRatio, "turnsRatio", false, two && !IsLocked && !IsEstimate);
        Above(PlateAmps, "plate.amps", false, false);
        Above(PlateVolts, "plate.volts", false, false);
        Above(Microfarads, "microfarads", false, false);
        Above(StartVolts, "startVolts", true, false);
        Above(Volts, "volts", false, LineVolts is null);
        Above(Hertz, "hertz", false, !IsLocked || Microfarads is not null);
        Above(CoreWatts, "coreWatts", true, true);
        Above(RotationalWatts, "rotationalWatts", true, true);
        Above(Poles, "poles", false, !IsLocked);
        Require(Poles is null || (Poles is >= 2 and <= MostPoles && Poles % 2 == 0), "poles", Statement.Of("machines.poles"));
        Require(LineVolts is null || IsTriangle(LineVolts), "lineVolts", Statement.Of("machines.no-triangle"));
        Require(OpenLine is null or "a" or "b" or "c", "openLine", Statement.Of("machines.open-line"));
        Require(CoreBooking is "from-output" or "to-input", "coreBooking", Statement.Of("machines.core-booking"));
        Require(Curve is null || (Curve is >= 2 and <= MostPoints && Curve % 1 == 0), "curve", Statement.Of("machines.curve", ("most", $"{MostPoints}")));
        Require(Slip is null || Rpm is null, "rpm", Statement.Of("machines.slip-and-rpm"));
        Require(Slip is not null || Rpm is not null || Curve is not null || two, "slip", Statement.Of("problem.missing", ("field", "slip")));
        if (wrong.Count == 0)
        {
            Require(AskedSlip is >= -1 and <= 2, Rpm is null ? "slip" : "rpm", Statement.Of("machines.slip-out-of-range"));
            Require(!IsLocked || AskedSlip == 1, "r2", Statement.Of("machines.rotor-needed"));
        }

        return wrong;
    }

    private static bool IsTriangle(IReadOnlyList<double> sides) =>
        sides.Count == 3 && sides.All(side => side > 0) && 2 * sides.Max() <= sides.Sum();
}

/// <summary>Bench tests to find the circuit from.</summary>
/// <param name="NoLoad">No load at rated volts.</param>
/// <param name="Blocked">Blocked rotor.</param>
/// <param name="R1">Stator resistance in ohms, of one phase as a star.</param>
/// <param name="LeakageRatio">Stator leakage over rotor leakage.</param>
/// <param name="BlockedHertz">Frequency of the blocked-rotor test where it was not the rated one.</param>
public sealed record MachineTests(BenchReading NoLoad, BenchReading Blocked, double R1, double LeakageRatio, double? BlockedHertz);
