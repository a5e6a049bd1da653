using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>Current with the rotor held, from the code letter or from the kind of motor.</summary>
public static class LockedRotor
{
    /// <summary>Volts to kilovolt-amps: 1 for single-phase, √3 for three-phase.</summary>
    /// <param name="phases">1 or 3.</param>
    public static double PhaseFactor(int phases) => phases == 3 ? Math.Sqrt(3) : 1;

    /// <summary>Locked-rotor amps from the code letter at the rated volts; <see langword="null"/> for a letter that does not exist.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="letter">The letter in the plate's CODE box; not the design letter, not the insulation class.</param>
    /// <param name="horsepower">Rated power in hp.</param>
    /// <param name="volts">Rated volts.</param>
    /// <param name="phases">1 or 3.</param>
    public static QuotedRange? FromCodeLetter(TradeKnowledge knowledge, string letter, double horsepower, double volts, int phases)
    {
        var table = knowledge.Tables["nec-430-7-b"];
        if (table.Row(letter.Trim()) is not { } row)
        {
            return null;
        }

        var rule = knowledge.Rules["locked-rotor-current"];
        return new QuotedRange(End("kva-min"), End("kva-max"));

        Quoted? End(string column) => table.Number(row, column) is { } kva
            ? rule.Quote(
                kva * horsepower * 1000 / (PhaseFactor(phases) * volts),
                "amp",
                $"code {row.Key}: {Units.Number(kva, 4)} kVA/hp, {Units.Text(horsepower, "horsepower")}, {Units.Text(volts, "volt")}, {phases} ph")
            : null;
    }

    /// <summary>Starting amps that motors of a kind usually draw.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="kind">A row of the starting-current table.</param>
    /// <param name="amps">Plate amps.</param>
    public static QuotedRange FromKind(TradeKnowledge knowledge, string kind, double amps)
    {
        var table = knowledge.Tables["starting-current"];
        var row = table.Row(kind) ?? throw new KeyNotFoundException($"The starting-current table has no kind '{kind}'.");
        var rule = knowledge.Rules["starting-current-range"];
        return new QuotedRange(End("low"), End("high"));

        Quoted End(string column)
        {
            var multiple = table.Number(row, column)!.Value;
            return rule.Quote(multiple * amps, "amp", $"{Units.Number(multiple)} × {Units.Text(amps, "amp")} ({kind})");
        }
    }

    /// <summary>The row of the starting-current table for a motor of which only the phases, and perhaps the type, are known.</summary>
    /// <param name="type">The type as marked or as said, or <see langword="null"/>.</param>
    /// <param name="phases">1 or 3.</param>
    public static string KindOf(string? type, int phases) => MotorKind.Of(type) switch
    {
        "split-phase" => "split-phase",
        "capacitor-start" or "two-value" => "capacitor-start",
        "psc" => "psc",
        "shaded-pole" => "shaded-pole",
        "universal" or "dc-permanent-magnet" => "commutator",
        _ => phases == 3 ? "design-b" : "single-phase",
    };
}
