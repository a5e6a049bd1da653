using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Capacitors;

/// <summary>Several capacitors as one.</summary>
internal static class CapacitorSets
{
    /// <summary>µF of parts in series.</summary>
    public static Quoted Series(TradeKnowledge knowledge, IReadOnlyList<CapacitorPart> parts) =>
        knowledge.Rules["capacitor-series"].Quote(1 / parts.Sum(part => 1 / part.Middle!.Value), "microfarad", Inputs(parts));

    /// <summary>Volts AC that parts in series stand; <see langword="null"/> where one is not marked.</summary>
    public static Quoted? SeriesVolts(TradeKnowledge knowledge, IReadOnlyList<CapacitorPart> parts)
    {
        var together = 1 / parts.Sum(part => 1 / part.Middle!.Value);
        return parts.All(part => part.Volts is not null)
            ? knowledge.Rules["capacitor-series-volts"].Quote(parts.Min(part => part.Volts!.Value * part.Middle!.Value / together), "volt", Inputs(parts))
            : null;
    }

    /// <summary>µF of parts in parallel.</summary>
    public static Quoted Parallel(TradeKnowledge knowledge, IReadOnlyList<CapacitorPart> parts) =>
        knowledge.Rules["capacitor-parallel"].Quote(parts.Sum(part => part.Middle!.Value), "microfarad", Inputs(parts));

    /// <summary>Volts AC that parts in parallel stand; <see langword="null"/> where one is not marked.</summary>
    public static Quoted? ParallelVolts(TradeKnowledge knowledge, IReadOnlyList<CapacitorPart> parts) => parts.All(part => part.Volts is not null)
        ? knowledge.Rules["capacitor-parallel-volts"].Quote(parts.Min(part => part.Volts!.Value), "volt", Inputs(parts))
        : null;

    private static string Inputs(IReadOnlyList<CapacitorPart> parts) => string.Join(", ", parts.Select(part =>
        part.Volts is { } volts ? $"{Units.Text(part.Middle!.Value, "microfarad", 4)} {Units.Text(volts, "volt")}" : Units.Text(part.Middle!.Value, "microfarad", 4)));
}
