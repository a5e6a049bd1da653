using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Heat;

/// <summary>What a three-phase motor draws when one line is lost.</summary>
public static class LostLine
{
    /// <summary>Amps in the two live lines under the load that they carried before.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="normalAmps">Line current before, in A.</param>
    public static Quoted Running(TradeKnowledge knowledge, double normalAmps) =>
        knowledge.Rules["lost-line-current"].Quote(Math.Sqrt(3) * normalAmps, "amp", Units.Text(normalAmps, "amp"));

    /// <summary>Amps in the two live lines of a motor that stands.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="lockedRotorAmps">Locked-rotor current on three lines, in A.</param>
    public static Quoted AtStandstill(TradeKnowledge knowledge, double lockedRotorAmps) =>
        knowledge.Rules["lost-line-standstill"].Quote(Math.Sqrt(3) / 2 * lockedRotorAmps, "amp", Units.Text(lockedRotorAmps, "amp"));

    /// <summary>Amps in the hottest winding of a delta.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="lineAmps">Amps in the live lines.</param>
    public static Quoted HottestDeltaWinding(TradeKnowledge knowledge, double lineAmps) =>
        knowledge.Rules["lost-line-delta"].Quote(2.0 / 3 * lineAmps, "amp", Units.Text(lineAmps, "amp"));

    /// <summary>The hottest winding of a delta against its rated current: the overload relay sees the line, not this.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="lineAmps">Amps in the live lines.</param>
    /// <param name="plateAmps">Plate amps of the delta connection.</param>
    public static Quoted HottestDeltaShare(TradeKnowledge knowledge, double lineAmps, double plateAmps) => knowledge.Rules["lost-line-delta"].Quote(
        2.0 / 3 * lineAmps / (plateAmps / Math.Sqrt(3)), "ratio", $"{Units.Text(lineAmps, "amp")}, plate {Units.Text(plateAmps, "amp")}");
}
