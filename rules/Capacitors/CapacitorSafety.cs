using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>How a motor capacitor is made safe: through a resistor, measured, and measured again.</summary>
public static class CapacitorSafety
{
    /// <summary>Resistor, time and steps for a capacitor.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="microfarads">Its µF, above zero.</param>
    /// <param name="voltsAc">Marked volts AC, or the greatest that it has seen.</param>
    public static Discharge Discharge(TradeKnowledge knowledge, double microfarads, double voltsAc) =>
        From(knowledge, microfarads, PeakVolts(knowledge, voltsAc));

    /// <summary>Whether a reading of the volts on it allows touching.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="directVolts">Volts DC across its terminals, of either sign.</param>
    public static bool IsSafe(TradeKnowledge knowledge, double directVolts) => Math.Abs(directVolts) < knowledge.Rules["capacitor-gate"]["volts"];

    /// <summary>The volts DC below which it may be touched or measured.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public static Quoted SafeVolts(TradeKnowledge knowledge)
    {
        var gate = knowledge.Rules["capacitor-gate"];
        return gate.Quote(gate["volts"], "volt", "direct volts, terminal to terminal and to the case");
    }

    /// <summary>Direct volts that can be left on it, at worst.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="voltsAc">Volts AC across it.</param>
    public static Quoted PeakVolts(TradeKnowledge knowledge, double voltsAc) =>
        knowledge.Rules["capacitor-peak-volts"].Quote(Math.Sqrt(2) * voltsAc, "volt", $"{Units.Text(voltsAc, "volt", 4)} AC");

    /// <summary>Energy held at direct volts, in J.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="microfarads">µF.</param>
    /// <param name="worst">Direct volts.</param>
    internal static Quoted Energy(TradeKnowledge knowledge, double microfarads, Quoted worst)
    {
        var rule = knowledge.Rules["capacitor-energy"];
        var volts = worst.Value!.Value;
        return rule.Quote(microfarads / rule["microfarads-per-farad"] * volts * volts / 2, "joule",
            $"{Units.Text(microfarads, "microfarad", 4)}, {Units.Text(volts, "volt", 4)}", null, worst.Trail);
    }

    /// <summary>Seconds through a resistor from one voltage to a lower one.</summary>
    internal static Quoted Seconds(TradeKnowledge knowledge, double ohms, double microfarads, double fromVolts, double toVolts)
    {
        var rule = knowledge.Rules["capacitor-bleed-time"];
        return rule.Quote(ohms * microfarads / rule["microfarads-per-farad"] * Math.Log(fromVolts / toVolts), "second",
            $"{Units.Text(ohms, "ohm", 4)}, {Units.Text(microfarads, "microfarad", 4)}, {Units.Text(fromVolts, "volt", 4)} to {Units.Text(toVolts, "volt")}");
    }

    internal static Discharge From(TradeKnowledge knowledge, double microfarads, Quoted worst)
    {
        var rule = knowledge.Rules["capacitor-bleed-tool"];
        var safe = SafeVolts(knowledge);
        var seconds = worst.Value > safe.Value ? Seconds(knowledge, rule["ohms"], microfarads, worst.Value!.Value, safe.Value!.Value) : null;
        var hold = rule.Quote(
            Math.Max(rule["least-seconds"], seconds?.Value ?? 0), "second", $"{Units.Text(microfarads, "microfarad", 4)}, {worst.Text} at worst", null, seconds?.Trail ?? []);
        var kilohms = rule["ohms"] / knowledge.Rules["capacitor-bleed-ohms"]["ohms-per-kilohm"];
        var resistor = rule.Quote(kilohms, "kilohm", "slow enough to spare terminals and bleeder");
        var watts = rule.Quote(rule["least-watts"], "watt", $"{worst.Text}, {resistor.Text}");
        return new Discharge(resistor, watts, hold, safe, worst,
        [
            Statement.Of("capacitors.off-and-locked"),
            Statement.Of("capacitors.bleed").With("resistor", resistor).With("watts", watts)
                .With("leads", rule.Quote(rule["lead-volts"], "volt", "insulation of the leads")).With("hold", hold),
            Statement.Of("capacitors.measure-rest").With("safe", safe),
            Statement.Of("capacitors.measure-again").With("safe", safe)
                .With("wait", knowledge.Rules["capacitor-gate"].Quote(knowledge.Rules["capacitor-gate"]["again-seconds"], "second", "recovery of the charge")),
            Statement.Of("capacitors.never-screwdriver"),
        ]);
    }
}
