using System.Globalization;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Copper cable with PVC insulation, and its protective conductor.</summary>
internal static class InternationalCable
{
    /// <summary>The smallest cable that carries the required amps.</summary>
    public static Answer<ConductorChoice> Choose(TradeKnowledge knowledge, SupplyInput input, Quoted required)
    {
        var table = knowledge.Tables["iec-cable"];
        var rule = knowledge.Rules["iec-cable-ambient"];
        var grouping = Grouping(knowledge, input.Together ?? 1);
        ConductorChoice? largest = null;
        foreach (var row in table.Rows.Where(row => table.Number(row, Column(input)) is not null))
        {
            var (amps, inputs) = Capacity(knowledge, table, row, input);
            var carries = rule.Quote(amps * grouping, "amp", $"{row.Key} mm², {inputs}{(grouping < 1 ? $", side by side {Units.Number(grouping)}" : string.Empty)}");
            var size = knowledge.Rules["iec-cable-size"].Quote(row.Size(), "square-millimetre", $"{required.Text} of {carries.Text}", null, [.. required.Trail, .. carries.Trail]);
            largest = new ConductorChoice(size, table.Quote(rule["insulation-celsius"], "celsius", "PVC"), carries);
            if (carries.Value + Slack >= required.Value)
            {
                return largest;
            }
        }

        return new Problem("invalid-fact", input.Kilowatts is null ? "plateAmps" : "kilowatts",
            Statement.Of("supply.conductor-beyond-table", ("largest", largest!.Size.Text)).With("required", required).With("carries", largest.AmpacityAmps));
    }

    /// <summary>The protective conductor by the line conductor.</summary>
    public static EarthChoice Earth(TradeKnowledge knowledge, double squareMillimetres)
    {
        var rule = knowledge.Rules["iec-earth-conductor"];
        var size = squareMillimetres <= rule["same-up-to"] ? squareMillimetres
            : squareMillimetres <= rule["fixed-up-to"] ? rule["same-up-to"]
            : squareMillimetres / 2;
        return new(rule.Quote(size, "square-millimetre", $"line conductor {Units.Text(squareMillimetres, "square-millimetre")}"));
    }

    /// <summary>The protective conductor by the fault that it carries, in mm².</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="faultAmps">Fault current in A.</param>
    /// <param name="seconds">Time until it is cut, in s.</param>
    /// <param name="separate">A conductor of its own, not a core of the cable.</param>
    public static Quoted Adiabatic(TradeKnowledge knowledge, double faultAmps, double seconds, bool separate)
    {
        var rule = knowledge.Rules["iec-earth-adiabatic"];
        var k = rule[separate ? "separate-k" : "cable-k"];
        return rule.Quote(Math.Sqrt(faultAmps * faultAmps * seconds) / k, "square-millimetre", $"{Units.Text(faultAmps, "amp", 4)}, {Units.Text(seconds, "second")}, k = {Units.Number(k)}");
    }

    /// <summary>The factor for other surroundings than 30 °C.</summary>
    public static double Ambient(TradeKnowledge knowledge, double celsius)
    {
        var rule = knowledge.Rules["iec-cable-ambient"];
        return Math.Sqrt((rule["insulation-celsius"] - celsius) / rule["spread"]);
    }

    private static string Column(SupplyInput input) => $"{(input.Laying ?? "b2").ToLowerInvariant()}-{(input.Phases == 3 ? 3 : 2)}";

    /// <summary>The table's own column for 40, 45 and 50 °C, the formula between.</summary>
    private static (double Amps, string Inputs) Capacity(TradeKnowledge knowledge, TradeTable table, TradeRow row, SupplyInput input)
    {
        var ambient = input.AmbientCelsius ?? knowledge.Rules["iec-cable-ambient"]["base-celsius"];
        var column = Column(input);
        var own = $"{column}-{ambient.ToString("0", CultureInfo.InvariantCulture)}";
        var inputs = $"laid {column[..^2].ToUpperInvariant()}, {column[^1]} loaded, {Units.Text(ambient, "celsius")}";
        return table.Columns.Contains(own, StringComparer.Ordinal) && ambient.Equals(Math.Round(ambient))
            ? (table.Number(row, own)!.Value, inputs)
            : (table.Number(row, column)!.Value * Ambient(knowledge, ambient), inputs);
    }

    private static double Grouping(TradeKnowledge knowledge, int circuits) => circuits switch
    {
        1 => 1,
        2 => knowledge.Rules["iec-cable-grouping"]["two"],
        3 => knowledge.Rules["iec-cable-grouping"]["three"],
        _ => knowledge.Rules["iec-cable-grouping"]["four"],
    };

    private const double Slack = 1e-9;
}
