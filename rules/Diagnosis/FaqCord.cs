using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What a cord of a given length and size does to the volts of the motor at its end.</summary>
/// <param name="knowledge">The facts of the trade.</param>
internal sealed class FaqCord(TradeKnowledge knowledge)
{
    /// <summary>The drop in figures, or what is missing for it.</summary>
    public IReadOnlyList<Statement> Drop(CaseFile file, QuotedRange? start)
    {
        if (Length(file) is not { } metres || Size(file) is not { } size)
        {
            return [Statement.Of("faq.cord-how")];
        }

        if (Outcomes.RatedAmps(file) is not { } amps || (file.Supply?.Volts ?? (file.Plate.Volts is [var only] ? only : null)) is not { } volts)
        {
            return [Statement.Of("faq.cord-amps-missing")];
        }

        var running = knowledge.Rules["faq-amps-drawn"].Quote(amps, "amp", "plate");
        return Report(file, metres, size, volts, running, start?.High) is { } drop ? Said(drop) : [Statement.Of("faq.cord-size-unknown")];
    }

    private List<Statement> Said(VoltageDropReport drop)
    {
        var most = knowledge.Rules["faq-cord-drop"];
        List<Statement> said =
        [
            Statement.Of("faq.cord-drop").With("volts", drop.Volts).With("percent", drop.Percent),
            drop.Percent.Value > most["most-percent"]
                ? Statement.Of("faq.cord-too-much").With("most", most.Quote(most["most-percent"], "percent", "limit"))
                : Statement.Of("faq.cord-bears"),
        ];
        if (drop.StartingPercent?.Value is { } share && share > most["start-most-percent"])
        {
            said.Insert(1, Statement.Of("faq.cord-no-start").With("most", most.Quote(most["start-most-percent"], "percent", "limit"))); // so far down a current in proportion to full volts says no more than that
        }
        else if (drop is { StartingVolts: { } lost, StartingVoltsAtMotor: { } left, StartingTorque: { } torque })
        {
            said.Insert(1, Statement.Of("faq.cord-starting").With("lost", lost).With("left", left).With("torque", torque));
        }

        return said;
    }

    private VoltageDropReport? Report(CaseFile file, double metres, string size, double volts, Quoted running, Quoted? start)
    {
        var input = new SupplyInput
        {
            Region = file.Region, Phases = file.Supply?.Phases ?? file.Plate.Phases ?? 1, Volts = volts, LengthMetres = metres,
            PlateVolts = file.Plate.Volts.Count == 0 ? volts : file.Plate.Volts.MinBy(one => Math.Abs(Math.Log(one / volts))),
        };
        return IsGauge(file)
            ? knowledge.Tables["nec-chapter-9"].Row(size) is null ? null : VoltageDrop.American(knowledge, input, running, start, size, (int)knowledge.Rules["nec-edition"]["year"])
            : double.TryParse(size, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var area) && area > 0 ? VoltageDrop.International(knowledge, input, running, start, size, 1) : null;
    }

    private static double? Length(CaseFile file) =>
        file.Choices.TryGetValue("supply.length-metres", out var said) && double.TryParse(said, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var metres) && metres > 0 ? metres : null;

    /// <summary>The number of the size as it was said: "14 gauge", "2.5 mm²".</summary>
    private static string? Size(CaseFile file) => file.Choices.TryGetValue("supply.conductor", out var said)
        && new string([.. said.SkipWhile(letter => !char.IsAsciiDigit(letter)).TakeWhile(letter => char.IsAsciiDigit(letter) || letter is '.' or ',')]).Replace(',', '.') is { Length: > 0 } size ? size : null;

    private static bool IsGauge(CaseFile file) => !file.Choices["supply.conductor"].Contains("mm", StringComparison.OrdinalIgnoreCase);
}
