using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What tells kinds of motor apart that read the same: each <see langword="null"/> when nobody looked.</summary>
public sealed record Looks
{
    /// <summary>Whether a switch or a control turns it one way and then the other.</summary>
    public bool? BothWays { get; init; }

    /// <summary>Whether both wires of the capacitor end on leads at hand, and not inside the motor.</summary>
    public bool? CapacitorOutside { get; init; }

    /// <summary>Whether the shaft drags when the ends of the armature pair are held together.</summary>
    public bool? Drags { get; init; }

    /// <summary>Whether it has brushes, on a commutator or on slip rings: they are seen, or a reading changes as the shaft is turned.</summary>
    public bool? Brushes { get; init; }

    /// <summary>Whether it has several speeds to choose from.</summary>
    public bool? Speeds { get; init; }

    /// <summary>How many of the looks go against a layout.</summary>
    /// <param name="layout">The layout.</param>
    internal int Against(Layout layout) => Pairs(layout).Count(look => look.Seen is { } seen && look.Made is { } made && seen != made);

    /// <summary>Whether a look that nobody has taken yet would tell one layout from another.</summary>
    /// <param name="one">A layout.</param>
    /// <param name="other">Another layout.</param>
    internal bool WouldTell(Layout one, Layout other) => Pairs(one).Zip(Pairs(other)).Any(look =>
        look.First.Seen is null && look.First.Made is { } made && look.Second.Made is { } otherwise && made != otherwise);

    private (bool? Seen, bool? Made)[] Pairs(Layout layout) =>
    [
        (BothWays, TurnsBothWays(layout)), (CapacitorOutside, HasCapacitorOutside(layout)), (Brushes, HasBrushes(layout)), (Speeds, HasSpeeds(layout)), (Drags, HasMagnets(layout)),
    ];

    /// <summary>Whether a motor is made to be turned either way by moving the line across its capacitor, or cannot be turned round at all; <see langword="null"/> for all that may be wired either way.</summary>
    /// <param name="layout">The layout.</param>
    public static bool? TurnsBothWays(Layout layout) => layout.NotReversible is not null ? false
        : layout.Connections.Any(row => row.OuterPart is { } part && row.ReverseSwap.Any(swap => swap.Contains(part.From) && swap.Contains(part.To))) ? true
        : null;

    /// <summary>Whether the capacitor is wired outside, from lead to lead, or inside; <see langword="null"/> for motors without one, or with both.</summary>
    /// <param name="layout">The layout.</param>
    public static bool? HasCapacitorOutside(Layout layout) => (layout.Connections.Any(row => row.OuterPart is { IsCapacitor: true }), layout.Parts.Any(part => part.IsCapacitor)) switch
    {
        (true, false) => true,
        (false, true) => false,
        _ => null,
    };

    /// <summary>Whether it is made to run at several speeds.</summary>
    /// <param name="layout">The layout.</param>
    public static bool HasSpeeds(Layout layout) => layout.Coils.Any(coil => coil.Role == "speed-tap") || layout.Connections.Any(row => row.For is "slow" or "first-winding");

    /// <summary>Whether it has brushes, on the commutator of an armature or on the slip rings of a rotor.</summary>
    /// <param name="layout">The layout.</param>
    public static bool HasBrushes(Layout layout) => HasArmature(layout) || HasSlipRings(layout);

    /// <summary>Whether it has an armature with a commutator.</summary>
    /// <param name="layout">The layout.</param>
    public static bool HasArmature(Layout layout) => layout.Coils.Any(coil => coil.ChangesWithShaft);

    /// <summary>Whether the winding of its rotor comes out over slip rings.</summary>
    /// <param name="layout">The layout.</param>
    public static bool HasSlipRings(Layout layout) => layout.Coils.Any(coil => coil.Role == "rotor");

    /// <summary>Whether an armature turns between magnets; <see langword="null"/> for motors without an armature.</summary>
    /// <param name="layout">The layout.</param>
    public static bool? HasMagnets(Layout layout) => HasArmature(layout)
        ? layout.Coils.All(coil => !coil.Role.EndsWith("-field", StringComparison.Ordinal))
        : null;
}
