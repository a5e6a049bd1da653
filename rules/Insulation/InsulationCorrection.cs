using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Insulation;

/// <summary>Brings an insulation reading to 40 °C. Cold motors read high, so their readings go down.</summary>
public static class InsulationCorrection
{
    /// <summary>The reading at 40 °C; <see langword="null"/> outside the range in which the formulas hold.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="megohms">As read, in MΩ.</param>
    /// <param name="celsius">Winding temperature in °C.</param>
    /// <param name="system"><c>thermoset</c>, <c>thermoplastic</c> or <c>unknown</c>.</param>
    public static Quoted? Corrected(TradeKnowledge knowledge, double megohms, double celsius, string system)
    {
        var range = knowledge.Rules["insulation-correction-range"];
        if (celsius < range["least-celsius"] || celsius > range["most-celsius"])
        {
            return null;
        }

        var (soft, hard) = (knowledge.Rules["insulation-thermoplastic"], knowledge.Rules["insulation-thermoset"]);
        var inputs = $"{Units.Text(megohms, "megohm", 4)} at {Units.Text(celsius, "celsius")}";
        var thermoplastic = soft.Quote(megohms * Thermoplastic(soft, celsius), "megohm", inputs);
        var thermoset = hard.Quote(megohms * Thermoset(hard, celsius), "megohm", inputs);
        return system switch
        {
            "thermoplastic" => thermoplastic,
            "thermoset" => thermoset,
            _ => Lower(knowledge, thermoplastic, thermoset),
        };
    }

    private static Quoted Lower(TradeKnowledge knowledge, Quoted thermoplastic, Quoted thermoset)
    {
        var lower = thermoplastic.Value <= thermoset.Value ? thermoplastic : thermoset;
        return knowledge.Rules["insulation-unknown-system"].Quote(
            lower.Value!.Value, "megohm", $"{thermoplastic.Text} and {thermoset.Text}", null, [.. thermoplastic.Trail, .. thermoset.Trail]);
    }

    private static double Thermoplastic(TradeRule rule, double celsius) => Math.Pow(rule["base"], (rule["to-celsius"] - celsius) / rule["step-kelvin"]);

    private static double Thermoset(TradeRule rule, double celsius) =>
        Math.Exp(-(celsius > rule["to-celsius"] ? rule["warm-k"] : rule["cold-k"]) * (1 / (celsius + rule["zero"]) - 1 / rule["to-kelvin"]));
}
