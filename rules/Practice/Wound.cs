using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Practice;

/// <summary>A coil as it was wound.</summary>
/// <param name="Coil">The coil of the layout.</param>
/// <param name="Ohms">Its resistance when sound.</param>
/// <param name="Ohm">Its reactance at the plate's frequency, alone in the iron.</param>
/// <param name="Degrees">Its axis.</param>
internal sealed record WoundCoil(LayoutCoil Coil, double Ohms, double Ohm, double Degrees);

/// <summary>A fault, where it is, and how far it goes.</summary>
/// <param name="Id">A cause id.</param>
/// <param name="At">The coil or part.</param>
/// <param name="Share">The share of the coil or capacitor that is left, or ohms to the frame.</param>
internal sealed record WoundFault(string Id, string At, double Share);

/// <summary>The whole motor as it was wound; hidden from the person.</summary>
internal sealed record Wound
{
    public required long Seed { get; init; }

    public required Layout Form { get; init; }

    public required PracticeMachine Machine { get; init; }

    public required IReadOnlyDictionary<string, string> TagOf { get; init; }

    public required IReadOnlyList<WoundCoil> Coils { get; init; }

    public required WoundFault? Fault { get; init; }

    public required bool OnOwnPoles { get; init; }

    /// <summary>Cage resistance over the reactance of its own winding.</summary>
    public required double Cage { get; init; }

    public required double Megohms { get; init; }

    public double Hertz => Machine.Hertz ?? 60;

    /// <summary>The node that a tag hangs on; the frame and the earth conductor are their own.</summary>
    public string NodeOf(string tag) => TagOf.FirstOrDefault(pair => pair.Value == tag) is { Key: { } marking } ? Form.NodeOf(marking) : tag;

    public bool Has(string fault, string at) => Fault is { } found && found.Id == fault && found.At == at;
}
