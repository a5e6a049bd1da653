namespace WireCoach.Rules.Capacitors;

/// <summary>A capacitor by its print.</summary>
/// <param name="Microfarads">Marked µF; the lower end of a printed range.</param>
/// <param name="MicrofaradsTo">The upper end of a printed range; <see langword="null"/> for a single figure.</param>
/// <param name="Volts">Marked volts AC, or <see langword="null"/>.</param>
/// <param name="Use"><c>start</c>, <c>run</c> or <c>unknown</c>.</param>
/// <param name="TolerancePercent">Printed tolerance, or <see langword="null"/>.</param>
public sealed record CapacitorPart(
    double? Microfarads, double? MicrofaradsTo = null, double? Volts = null, string Use = "unknown", double? TolerancePercent = null)
{
    /// <summary>The same part with the use that its print tells where none was said: volts that only run capacitors have, or a range of microfarads.</summary>
    /// <param name="print">What the print says of the use.</param>
    internal CapacitorPart ByPrint(Reference.TradeRule print) => Use != "unknown" ? this
        : Volts >= print["run-volts-from"] ? this with { Use = "run" }
        : MicrofaradsTo > Microfarads && !(Volts > print["start-volts-most"]) ? this with { Use = "start" }
        : this;

    /// <summary>The middle of the print in µF.</summary>
    public double? Middle => Microfarads is { } low ? (low + (MicrofaradsTo ?? low)) / 2 : null;
}
