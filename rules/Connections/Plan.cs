using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>How a motor is connected for one supply, in the person's own tags.</summary>
public sealed record Plan
{
    /// <summary>The layout, in the form that has these leads.</summary>
    public required Layout Layout { get; init; }

    /// <summary>The row of its connection table.</summary>
    public required LayoutConnection Row { get; init; }

    /// <summary>Volts between the line conductors, as said.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>The plate's volts for this row.</summary>
    public required double PlateVolts { get; init; }

    /// <summary>1 or 3.</summary>
    public required int Phases { get; init; }

    /// <summary>What is joined: the line conductors first, then what is joined with nothing else.</summary>
    public required IReadOnlyList<PlanJoint> Joints { get; init; }

    /// <summary>The tags of the leads that are capped one by one.</summary>
    public required IReadOnlyList<string> Capped { get; init; }

    /// <summary>What each winding in circuit gets, in the order of the layout.</summary>
    public required IReadOnlyList<PlannedWinding> Windings { get; init; }

    /// <summary>Line amps at full load by the plate; <see langword="null"/> where the plate was not read.</summary>
    public Quoted? LineAmps { get; init; }

    /// <summary>What a meter shows on this connection before power.</summary>
    public required IReadOnlyList<ExpectedOhms> ExpectedOhms { get; init; }

    /// <summary>The numbered steps, in order.</summary>
    public required IReadOnlyList<Statement> Steps { get; init; }

    /// <summary>Why it is connected so.</summary>
    public required IReadOnlyList<Statement> Why { get; init; }

    /// <summary>What else must be known with it: what the leads do not tell, what must not be done.</summary>
    public required IReadOnlyList<Statement> Notes { get; init; }

    /// <summary>The direction to expect; <see langword="null"/> where the first run settles it.</summary>
    public string? Rotation { get; init; }

    /// <summary>Where <see cref="Rotation"/> is seen from.</summary>
    public string? SeenFrom { get; init; }

    /// <summary>How it is turned round later.</summary>
    public required Reversal Reverse { get; init; }

    /// <summary>The cautions, the weightiest first.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>The plans of the other rows that suit the same supply: other speeds, the step of the start.</summary>
    public IReadOnlyList<Plan> Others { get; init; } = [];

    /// <summary>A part that is wired on outside the motor between two leads; <see langword="null"/> for none.</summary>
    public OuterPart? Outer { get; init; }

    /// <summary>The connection as a circuit, for the diagram and for a check.</summary>
    public required PlanCircuit Circuit { get; init; }
}

/// <summary>Leads that are joined.</summary>
/// <param name="Name">J1, J2, … in the order of the plan.</param>
/// <param name="Leads">The tags of the leads.</param>
/// <param name="Conductor">The line conductor that goes to it, or <see langword="null"/>.</param>
public sealed record PlanJoint(string Name, IReadOnlyList<string> Leads, string? Conductor);

/// <summary>What one winding gets.</summary>
/// <param name="Coil">The coil's id within the layout.</param>
/// <param name="Coils">All coils it stands for: several where coils of different kinds lie in series, whose shares ohms do not tell.</param>
/// <param name="Role">A winding role.</param>
/// <param name="Leads">The tags at its two ends, or the names of the inner nodes where no lead comes out there.</param>
/// <param name="Volts">Volts across it; for a winding in series with a capacitor or switch, across the whole branch.</param>
/// <param name="AngleDegrees">The phase of these volts, counted from its start to its finish; 0 is L1 against L2, or L1 against the star's middle.</param>
/// <param name="PercentOfRated">These volts as percent of what it is made for.</param>
/// <param name="Branch">It lies behind a capacitor or a start switch, and its volts are those of the whole branch.</param>
/// <param name="Amps">Amps at full load by the plate; <see langword="null"/> where they cannot be told.</param>
public sealed record PlannedWinding(
    string Coil, IReadOnlyList<string> Coils, string Role, IReadOnlyList<string> Leads, Quoted Volts, double AngleDegrees, Quoted PercentOfRated, bool Branch, Quoted? Amps);

/// <summary>What a meter shows between two joints.</summary>
/// <param name="Between">Names of joints, or a joint and <c>frame</c>.</param>
/// <param name="Ohms">The resistance; <see langword="null"/> where the windings were not measured, or where it reads open.</param>
/// <param name="Note">What it rests on, and what another reading would mean.</param>
public sealed record ExpectedOhms(IReadOnlyList<string> Between, Quoted? Ohms, Statement Note);

/// <summary>How the direction is turned round.</summary>
/// <param name="Possible">Whether it can be by the leads.</param>
/// <param name="Swap">Every exchange, each a pair of tags, or of line conductors.</param>
/// <param name="Why">Why so, or why not.</param>
public sealed record Reversal(bool Possible, IReadOnlyList<IReadOnlyList<string>> Swap, Statement Why);

/// <summary>A capacitor or relay outside the motor.</summary>
/// <param name="Kind">A part's kind, for example <c>run-capacitor</c>.</param>
/// <param name="Between">The tags of the two leads.</param>
public sealed record OuterPart(string Kind, IReadOnlyList<string> Between);
