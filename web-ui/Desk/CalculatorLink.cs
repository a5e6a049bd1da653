using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.WebUi.Desk;

/// <summary>The address of a calculator with its fields filled in: the same address gives the same answer.</summary>
public static class CalculatorLink
{
    /// <summary>The address.</summary>
    public static string To(string calculator, IEnumerable<KeyValuePair<string, string>> given, Role role = Role.Technician)
    {
        var fields = given.Concat(role == Role.Homeowner ? [new KeyValuePair<string, string>("for", "homeowner")] : []).ToList();
        return $"calculators/{calculator}{(fields.Count > 0 ? "?" : null)}{string.Join('&', fields.Select(field => $"{Uri.EscapeDataString(field.Key)}={Uri.EscapeDataString(field.Value)}"))}";
    }

    /// <summary>The address with what a case knows.</summary>
    /// <param name="form">The calculator.</param>
    /// <param name="file">The case.</param>
    /// <param name="earlier">Insulation of the same motor in earlier sessions in MΩ at 40 °C, the earliest first.</param>
    public static string For(CalculatorForm form, CaseFile file, IReadOnlyList<double> earlier) => To(
        form.Id,
        form.Fields.Select(field => new KeyValuePair<string, string>(field.Name, field.From is { } from ? Of(from, file, earlier) ?? string.Empty : string.Empty))
            .Where(field => field.Value.Length > 0),
        file.Role);

    private static string? Of(string from, CaseFile file, IReadOnlyList<double> earlier) => from.Split('.') switch
    {
        ["region"] => file.Region == Region.Iec ? "iec" : "na",
        ["plate", var field] => file.Plate.Text(field),
        ["connection", "volts"] => Text(InUse(file) is { } at ? file.Plate.Volts[at] : null),
        ["connection", "amps"] => Text(InUse(file) is { } at && at < file.Plate.Amps.Count ? file.Plate.Amps[at] : null),
        ["supply", "volts"] => Text(file.Supply?.Volts),
        ["supply", "phases"] => Text(file.Supply?.Phases ?? file.Plate.Phases),
        ["supply", "hertz"] => Text(file.Supply?.Hertz),
        ["capacitor", var member] => file.Capacitors.FindLast(capacitor => capacitor.Present) is { } capacitor ? Of(member, capacitor) : null,
        ["insulation", var member] => file.Insulations.IsEmpty ? null : Text(member switch
        {
            "megohms" => file.Insulations[^1].Megohms,
            "celsius" => file.Insulations[^1].Celsius,
            _ => file.Insulations[^1].TestVolts,
        }),
        ["earlier", var place] => Text(int.Parse(place, CultureInfo.InvariantCulture) is var at && at < earlier.Count ? earlier[at] : null),
        _ => throw new ArgumentException($"'{from}' is nothing that a case holds.", nameof(from)),
    };

    private static string? Of(string member, Fact.Capacitor capacitor) => member switch
    {
        "microfarads" => Text(capacitor.Microfarads),
        "volts" => Text(capacitor.Volts),
        "measuredMicrofarads" => Text(capacitor.MeasuredMicrofarads),
        _ => capacitor.Use is "start" or "run" ? capacitor.Use : null,
    };

    /// <summary>Which of the plate's volts the supply gives: the nearest.</summary>
    private static int? InUse(CaseFile file) => file.Supply?.Volts is { } volts && file.Plate.Volts.Count > 0
        ? Enumerable.Range(0, file.Plate.Volts.Count).MinBy(at => Math.Abs(file.Plate.Volts[at] - volts))
        : file.Plate.Volts.Count == 1 ? 0 : null;

    private static string? Text(double? number) => number?.ToString("0.####", CultureInfo.InvariantCulture);
}
