using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>Which microfarads are usual for a motor's power: whether a print is plausible, never which part to choose.</summary>
internal static class UsualMicrofarads
{
    /// <summary>What is usual; <see langword="null"/> where power, volts or use do not say, or no table holds them.</summary>
    public static QuotedRange? Of(TradeKnowledge knowledge, CapacitorInput input)
    {
        if (PlatePower.Watts(knowledge, input.Horsepower, input.Kilowatts) is not { } watts || input.MotorVolts is not { } volts)
        {
            return null;
        }

        var hertz = knowledge.Rules["supply-frequencies"];
        var isRun = input.Marked.Use is "run";
        return input.Hertz is { } said && said.Equals(hertz["iec-hertz"])
            ? isRun ? RunByKilowatts(knowledge, watts / WattsPerKilowatt, volts) : null
            : input.Marked.Use is "run" or "start" ? ByHorsepower(knowledge, PlatePower.Horsepower(knowledge, watts).Value!.Value, volts, isRun) : null;
    }

    /// <summary>A print that is far from what is usual.</summary>
    public static Statement? Doubt(TradeKnowledge knowledge, CapacitorInput input)
    {
        if (Of(knowledge, input) is not { Low: { } low, High: { } high } || input.Marked.Middle is not { } marked)
        {
            return null;
        }

        var band = knowledge.Rules["usual-microfarads-band"];
        return marked < low.Value * band["low-share"] || marked > high.Value * band["high-times"]
            ? Statement.Of("capacitors.unusual", ("marked", Units.Text(marked, "microfarad", 4))).With("low", low).With("high", high)
            : null;
    }

    private static QuotedRange? RunByKilowatts(TradeKnowledge knowledge, double kilowatts, double volts)
    {
        var rule = knowledge.Rules["usual-run-microfarads"];
        return volts < knowledge.Rules["usual-microfarads-band"]["line-volts-from"] || kilowatts > rule["most-kilowatts"] ? null
            : new(rule.Quote(rule["low"] * kilowatts, "microfarad", Units.Text(kilowatts, "kilowatt")), rule.Quote(rule["high"] * kilowatts, "microfarad", Units.Text(kilowatts, "kilowatt")));
    }

    /// <summary>The row of the size, or the two rows between which it lies. A 230 V motor may keep 115 V on its start branch, so both columns hold for it.</summary>
    private static QuotedRange? ByHorsepower(TradeKnowledge knowledge, double horsepower, double volts, bool isRun)
    {
        var table = knowledge.Tables["usual-microfarads"];
        var isLine = volts >= knowledge.Rules["usual-microfarads-band"]["line-volts-from"];
        if (isRun && !isLine)
        {
            return null;
        }

        var slack = knowledge.Rules["size-rounding"]["share"];
        var from = isRun ? "run-230-from" : isLine ? "start-230-from" : "start-115-from";
        var below = table.Rows.LastOrDefault(row => row.Size() <= horsepower * (1 + slack) && table.Number(row, from) is not null);
        var above = table.Rows.FirstOrDefault(row => row.Size() >= horsepower * (1 - slack) && table.Number(row, from) is not null);
        if (below is null || above is null)
        {
            return null;
        }

        var most = (isRun ? table.Number(above, "run-230-to") : table.Number(above, "start-115-to") ?? table.Number(above, "start-230-to"))!.Value;
        var inputs = $"{Units.Text(horsepower, "horsepower")}, {Units.Text(volts, "volt")}";
        return new(table.Quote(table.Number(below, from)!.Value, "microfarad", inputs), table.Quote(most, "microfarad", inputs));
    }

    private const double WattsPerKilowatt = 1000;
}
