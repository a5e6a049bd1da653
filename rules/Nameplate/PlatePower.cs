using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>Shaft power in its units, and the torque it amounts to.</summary>
public static class PlatePower
{
    /// <summary>Shaft power in watts from whichever of the two is marked; horsepower goes first.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="horsepower">Shaft power in hp, or <see langword="null"/>.</param>
    /// <param name="kilowatts">Shaft power in kW, or <see langword="null"/>.</param>
    public static double? Watts(TradeKnowledge knowledge, double? horsepower, double? kilowatts) =>
        horsepower is { } hp ? hp * knowledge.Rules["horsepower"]["watts"] : kilowatts * 1000;

    /// <summary>Watts as horsepower.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="watts">Watts, zero or more.</param>
    public static Quoted Horsepower(TradeKnowledge knowledge, double watts)
    {
        var rule = knowledge.Rules["horsepower"];
        return rule.Quote(watts / rule["watts"], "horsepower", Units.Text(watts, "watt", 4));
    }

    /// <summary>Torque at the shaft in N·m.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="watts">Shaft power in watts.</param>
    /// <param name="rpm">Speed in revolutions a minute, above zero.</param>
    public static Quoted Torque(TradeKnowledge knowledge, double watts, double rpm)
    {
        var rule = knowledge.Rules["shaft-torque"];
        var newtonMetres = watts * rule["seconds-per-minute"] / (2 * Math.PI * rpm);
        return rule.Quote(newtonMetres, "newton-metre", Inputs(watts, rpm));
    }

    /// <summary>Torque at the shaft in lb·ft.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="watts">Shaft power in watts.</param>
    /// <param name="rpm">Speed in revolutions a minute, above zero.</param>
    public static Quoted TorquePoundFeet(TradeKnowledge knowledge, double watts, double rpm)
    {
        var rule = knowledge.Rules["shaft-torque"];
        var newtonMetres = watts * rule["seconds-per-minute"] / (2 * Math.PI * rpm);
        return rule.Quote(newtonMetres / rule["newton-metres-per-pound-foot"], "pound-foot", Inputs(watts, rpm));
    }

    private static string Inputs(double watts, double rpm) => $"P = {Units.Text(watts, "watt", 4)}, {Units.Text(rpm, "rpm", 5)}";
}
