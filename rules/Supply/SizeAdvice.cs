using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>A size that its table does not hold, told by the member that was given and with what would fit.</summary>
internal static class SizeAdvice
{
    public static Problem Of(TradeKnowledge knowledge, SupplyInput input, Problem problem)
    {
        if (problem.Advice.Id != "nameplate.size-not-in-table")
        {
            return problem;
        }

        var american = input.Region == Region.NorthAmerica;
        var kilowatts = american ? input.Horsepower is null : input.Kilowatts is not null;
        var advice = kilowatts != american ? problem.Advice : problem.Advice.With("size", InBoth(knowledge, input, american)).With("nearest", NearestInBoth(knowledge, problem.Advice.Quotes[0], american));
        return problem with
        {
            Field = kilowatts ? "kilowatts" : "horsepower",
            Advice = input.Phases == 1 && input.MotorType is not "dc" && ThreePhaseVolts(knowledge, input) is { } volts ? advice.As("supply.size-needs-three-phases").With("three", Units.Text(volts, "volt")) : advice,
        };
    }

    /// <summary>The size as it was given, and in the unit of the table.</summary>
    private static string InBoth(TradeKnowledge knowledge, SupplyInput input, bool american) => american
        ? $"{Units.Text(input.Kilowatts!.Value, "kilowatt")} ({PlatePower.Horsepower(knowledge, input.Kilowatts.Value * 1000).Text})"
        : $"{Units.Text(input.Horsepower!.Value, "horsepower")} ({Units.Text(input.Horsepower.Value * knowledge.Rules["horsepower"]["watts"] / 1000, "kilowatt")})";

    private static string NearestInBoth(TradeKnowledge knowledge, Quoted nearest, bool american)
    {
        var watts = knowledge.Rules["horsepower"]["watts"];
        return $"{nearest.Text} ({(american ? Units.Text(nearest.Value!.Value * watts / 1000, "kilowatt") : Units.Text(nearest.Value!.Value * 1000 / watts, "horsepower"))})";
    }

    /// <summary>Volts at which the three-phase table holds a size that is too large for one phase: the given ones, or the nearest others.</summary>
    private static double? ThreePhaseVolts(TradeKnowledge knowledge, SupplyInput input)
    {
        var watts = PlatePower.Watts(knowledge, input.Horsepower, input.Kilowatts)!.Value;
        var american = input.Region == Region.NorthAmerica;
        var size = american ? watts / knowledge.Rules["horsepower"]["watts"] : watts / 1000;
        if (size < knowledge.Tables[american ? "nec-430-248" : "iec-current-single-phase"].Rows[^1].Size())
        {
            return null;
        }

        string[] tables = american ? ["nec-430-250"] : ["iec-current-three-phase", "iec-current-large"];
        var columns = tables.SelectMany(table => knowledge.Tables[table].Columns).Select(column => double.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out var volts) ? volts : 0).Where(volts => volts > 0);
        return columns.OrderBy(volts => Math.Abs(volts - input.Volts)).Prepend(input.Volts)
            .Where(volts => Array.Exists(tables, table => CurrentTable.Find(knowledge, table, size, volts).IsGiven)).Select(volts => (double?)volts).FirstOrDefault();
    }
}
