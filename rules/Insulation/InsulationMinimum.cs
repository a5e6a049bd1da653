using System.Globalization;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Insulation;

/// <summary>The least insulation resistance of a kind of winding at 40 °C.</summary>
internal static class InsulationMinimum
{
    public static readonly string[] Kinds = ["random-wound", "form-wound", "armature", "dc-armature", "field", "old", "before-1970", "other"];

    /// <summary>The editions of the standard that stand here.</summary>
    public static IEnumerable<int> Editions(TradeKnowledge knowledge) => knowledge.Rules.Editions("insulation-minimum").Select(rule => int.Parse(rule.Source.Edition!, CultureInfo.InvariantCulture));

    public static Quoted Of(TradeKnowledge knowledge, InsulationInput input)
    {
        var rule = knowledge.Rules.In("insulation-minimum", input.Edition);
        var volts = input.RatedVolts!.Value;
        switch (input.Kind)
        {
            case "random-wound" or "form-wound":
                return volts < rule["form-wound-from-volts"]
                    ? rule.Quote(rule["random-wound-megohms"], "megohm", $"{input.Kind}, {Units.Text(volts, "volt")}")
                    : rule.Quote(rule["form-wound-megohms"], "megohm", $"{input.Kind}, {Units.Text(volts, "volt")}");
            case "armature" or "dc-armature":
                return rule.Quote(rule["armature-megohms"], "megohm", "armature");
            default:
                return KilovoltPlusOne(knowledge, volts);
        }
    }

    public static Quoted KilovoltPlusOne(TradeKnowledge knowledge, double volts)
    {
        var rule = knowledge.Rules["insulation-old-minimum"];
        return rule.Quote(volts / 1000 + rule["plus-megohms"], "megohm", Units.Text(volts, "volt"));
    }
}
