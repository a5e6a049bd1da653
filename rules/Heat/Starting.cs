using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>How long a start takes, how often it may be repeated, and what a reduced start draws.</summary>
public static class Starting
{
    /// <summary>Seconds to run up.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="kilogramSquareMetres">Inertia at the shaft in kg·m².</param>
    /// <param name="rpm">Speed to reach in rpm.</param>
    /// <param name="newtonMetres">Mean of motor less load torque in N·m, above zero.</param>
    public static Quoted RunUp(TradeKnowledge knowledge, double kilogramSquareMetres, double rpm, double newtonMetres)
    {
        var rule = knowledge.Rules["acceleration"];
        return rule.Quote(kilogramSquareMetres * 2 * Math.PI * rpm / rule["seconds-per-minute"] / newtonMetres, "second",
            $"{Units.Number(kilogramSquareMetres, 4)} kg·m², {Units.Text(rpm, "rpm", 5)}, {Units.Text(newtonMetres, "newton-metre", 4)}");
    }

    /// <summary>Seconds to run up, by the trade's rounded formula in feet and pounds.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="poundSquareFeet">Inertia WK² at the shaft in lb·ft².</param>
    /// <param name="rpm">Speed to reach in rpm.</param>
    /// <param name="poundFeet">Mean of motor less load torque in lb·ft, above zero.</param>
    public static Quoted RunUpPounds(TradeKnowledge knowledge, double poundSquareFeet, double rpm, double poundFeet)
    {
        var rule = knowledge.Rules["acceleration-pounds"];
        return rule.Quote(poundSquareFeet * rpm / (rule["divisor"] * poundFeet), "second",
            $"{Units.Number(poundSquareFeet, 4)} lb·ft², {Units.Text(rpm, "rpm", 5)}, {Units.Text(poundFeet, "pound-foot", 4)}");
    }

    /// <summary>Starts an hour of a design A or B motor and the least rest between them, or what the table does not hold.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="horsepower">Rated power in hp.</param>
    /// <param name="poles">2, 4 or 6.</param>
    /// <param name="loadPoundSquareFeet">WK² of the load at the motor's shaft in lb·ft²; <see langword="null"/> for the table's most.</param>
    public static Answer<StartsPerHour> PerHour(TradeKnowledge knowledge, double horsepower, int poles, double? loadPoundSquareFeet)
    {
        var table = knowledge.Tables["nema-starts"];
        var slack = knowledge.Rules["size-rounding"]["share"];
        var row = poles is 2 or 4 or 6 ? table.Rows.FirstOrDefault(row => horsepower <= row.Size() * (1 + slack)) : null;
        if (row is null || horsepower < table.Rows[0].Size() * (1 - slack))
        {
            return new Problem("invalid-fact", "horsepower", Statement.Of("heat.duty-row",
                ("sizes", $"{Units.Number(table.Rows[0].Size())}–{Units.Text(table.Rows[^1].Size(), "horsepower")}")));
        }

        var (most, inertia, rest) = (table.Number(row, $"starts-{poles}")!.Value, table.Number(row, $"inertia-{poles}")!.Value, table.Number(row, $"rest-{poles}")!.Value);
        var starts = loadPoundSquareFeet is { } load and > 0 ? Math.Min(most, inertia / load) : most;
        var inputs = $"{row.Key} hp, {poles} poles: A = {Units.Number(most)}, B = {Units.Number(inertia, 5)} lb·ft²{(loadPoundSquareFeet is { } wk ? $", WK² = {Units.Number(wk)} lb·ft²" : string.Empty)}";
        return new StartsPerHour(
            knowledge.Rules["starts-per-hour"].Quote(starts, "count", inputs),
            table.Quote(rest, "second", $"{row.Key} hp, {poles} poles"));
    }

    /// <summary>Line current and torque of a start through a star-delta starter, as multiples of what the direct start takes.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public static (Quoted Current, Quoted Torque) StarDelta(TradeKnowledge knowledge) => Reduced(knowledge, 1.0 / 3, 1.0 / 3, "star-delta");

    /// <summary>Line current and torque through an autotransformer.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="tap">Tap as a share of the line volts.</param>
    public static (Quoted Current, Quoted Torque) Autotransformer(TradeKnowledge knowledge, double tap) =>
        Reduced(knowledge, tap * tap, tap * tap, $"tap {Units.Text(100 * tap, "percent")}");

    /// <summary>Line current and torque through a soft starter.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="voltsShare">Volts as a share of the line's.</param>
    public static (Quoted Current, Quoted Torque) SoftStarter(TradeKnowledge knowledge, double voltsShare) =>
        Reduced(knowledge, voltsShare, voltsShare * voltsShare, $"{Units.Text(100 * voltsShare, "percent")} of the volts");

    private static (Quoted Current, Quoted Torque) Reduced(TradeKnowledge knowledge, double current, double torque, string inputs) =>
        (knowledge.Rules["start-reduced"].Quote(current, "ratio", inputs), knowledge.Rules["start-reduced"].Quote(torque, "ratio", inputs));
}

/// <summary>How often a motor may start.</summary>
/// <param name="Starts">Starts an hour.</param>
/// <param name="RestSeconds">Least rest between them in s.</param>
public sealed record StartsPerHour(Quoted Starts, Quoted RestSeconds);
