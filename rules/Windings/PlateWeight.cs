using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What a plate says for or against a layout: its phases, its speeds, its volts.</summary>
internal static class PlateWeight
{
    private const double PhasesAgainst = -9;
    private const int Direct = 0;

    /// <summary>ln of how likely the plate is on a motor of this layout, against one that it goes with.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="plate">The plate as far as it was read.</param>
    /// <param name="figures">How often a plate is misread or read in part.</param>
    public static double Of(Layout layout, PlateFields plate, IdentificationFigures figures) =>
        Phases(layout, plate, figures)
        + Speeds(layout, plate.Numbers("rpm"), figures)
        + Volts(layout, plate.Volts, figures);

    private static double Speeds(Layout layout, IReadOnlyList<double> rpm, IdentificationFigures figures) =>
        rpm.Count == 1 && layout.Connections.Any(row => row.For is "slow" or "first-winding") ? Math.Log(figures.LookMissed.Value)
        : rpm.Count > 1 && rpm.Max() > figures.SpeedsApart.Value * rpm.Min() && !Looks.HasSpeeds(layout) ? Math.Log(figures.SpeedsMisread.Value)
        : 0;

    private static double Phases(Layout layout, PlateFields plate, IdentificationFigures figures) => plate.Phases switch
    {
        3 => layout.Family is "three-phase" or "sealed" ? 0 : PhasesAgainst,
        1 => layout.Family == "three-phase" ? PhasesAgainst : 0,
        Direct when layout.Family != "commutator" => PhasesAgainst,
        Direct when layout.Connections.All(row => !row.Lines.ContainsKey("+")) => Math.Log(figures.CapacitorMissed.Value),
        _ => 0,
    };

    /// <summary>A plate with two voltages stands on a motor that can be joined for both; one voltage may be all that was read of two.</summary>
    private static double Volts(Layout layout, IReadOnlyList<double> volts, IdentificationFigures figures)
    {
        double[] shares = [.. layout.Connections.SelectMany(one => layout.Connections.Select(other => one.VoltsShare / other.VoltsShare)).Where(share => share > 1 + figures.VoltsAlike.Value)];
        double[] ratios = [.. volts.SelectMany(one => volts.Select(other => one / other)).Where(ratio => ratio > 1 + (2 * figures.VoltsAlike.Value))];
        return volts.Count == 0 || layout.Connections.Count == 0 ? 0
            : ratios.Length == 0 ? shares.Length == 0 ? 0 : Math.Log(figures.OneVoltsRead.Value)
            : shares.Any(share => ratios.Any(ratio => Math.Abs((ratio / share) - 1) < figures.VoltsAlike.Value)) ? 0 : Math.Log(figures.LookMissed.Value);
    }
}
