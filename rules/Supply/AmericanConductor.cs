using System.Globalization;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Copper conductors by size: ampacity where they lie, and the equipment grounding conductor.</summary>
internal static class AmericanConductor
{
    /// <summary>The smallest conductor that carries the required amps.</summary>
    public static Answer<ConductorChoice> Choose(TradeKnowledge knowledge, SupplyInput input, Quoted required, int year)
    {
        var table = knowledge.Tables.In("nec-310-16", year);
        var insulation = input.InsulationCelsius ?? knowledge.Rules["nec-terminal"]["unmarked-celsius"];
        var terminal = Math.Min(input.TerminalCelsius ?? knowledge.Rules["nec-terminal"]["most-celsius"], insulation);
        var column = insulation.ToString("0", CultureInfo.InvariantCulture);
        var terminals = terminal.ToString("0", CultureInfo.InvariantCulture);
        var factor = Ambient(knowledge, insulation, input.AmbientCelsius);
        var together = Together(knowledge, input.Together ?? 3);
        foreach (var row in table.Rows)
        {
            var (free, ends) = (table.Number(row, column)!.Value, table.Number(row, terminals)!.Value);
            var ampacity = Math.Min(free * factor * together, ends);
            if (ampacity + Slack >= required.Value)
            {
                return Chosen(knowledge, table, row, required, year, new Lying(insulation, terminal, free, ampacity, factor * together));
            }
        }

        var last = table.Rows[^1];
        return new Problem("invalid-fact", input.Horsepower is null ? "kilowatts" : "horsepower", Statement.Of("supply.conductor-beyond-table", ("largest", $"{last.Key} AWG"))
            .With("required", required).With("carries", table.Quote(Math.Min(table.Number(last, column)!.Value * factor * together, table.Number(last, terminals)!.Value), "amp", $"{last.Key} AWG", year)));
    }

    /// <summary>Ambient factor: √((Tc − Ta) / (Tc − 30)).</summary>
    public static double Ambient(TradeKnowledge knowledge, double insulation, double? ambient)
    {
        var usual = knowledge.Rules["nec-ampacity"]["ambient-celsius"];
        return Math.Sqrt((insulation - (ambient ?? usual)) / (insulation - usual));
    }

    /// <summary>Whether the table of equipment grounding conductors goes up to a device.</summary>
    public static bool HasEarth(TradeKnowledge knowledge, Quoted device) => knowledge.Tables["nec-250-122"].Rows.Any(row => device.Value <= row.Size());

    /// <summary>The equipment grounding conductor for a device, no larger than the circuit conductors where those are known.</summary>
    public static EarthChoice Earth(TradeKnowledge knowledge, Quoted device, string? conductor, int year)
    {
        var table = knowledge.Tables["nec-250-122"];
        var row = table.Rows.First(row => device.Value <= row.Size());
        var (copper, aluminium) = (table.Text(row, "copper"), table.Text(row, "aluminium"));
        var sizes = knowledge.Tables["nec-chapter-9"].Rows.Select(size => size.Key).ToList();
        var found = Named(copper);
        var size = conductor is not null && (sizes.IndexOf(copper) > sizes.IndexOf(conductor) || !sizes.Contains(copper))
            ? knowledge.Rules["nec-earth-size"].Name($"{conductor} AWG", "awg", $"table {copper} AWG, circuit conductors {conductor} AWG", year, found.Trail) with { Value = Number(conductor) }
            : found;
        return new(size, Named(aluminium));

        // A size beyond the gauges goes by its thousands of circular mils.
        Quoted Named(string key) => sizes.Contains(key)
            ? table.Name($"{key} AWG", "awg", $"device {device.Text}", year) with { Value = Number(key) }
            : table.Name($"{key} kcmil", "awg", $"device {device.Text}", year);
    }

    /// <summary>The number of a size that is a plain number; 1/0 and larger are not.</summary>
    public static double? Number(string size) => double.TryParse(size, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static Answer<ConductorChoice> Chosen(TradeKnowledge knowledge, TradeTable table, TradeRow row, Quoted required, int year, Lying lying)
    {
        var printed = table.Quote(lying.Free, "amp", $"{row.Key} AWG, {Units.Text(lying.Insulation, "celsius")}", year);
        var carries = knowledge.Rules["nec-ampacity"].Quote(lying.Ampacity, "amp",
            $"{printed.Text} × {Units.Number(lying.Factor)}, terminals {Units.Text(lying.Terminal, "celsius")}", year, printed.Trail);
        var size = knowledge.Rules["nec-conductor-size"].Name($"{row.Key} AWG", "awg", $"{required.Text} of {carries.Text}", year, [.. required.Trail, .. carries.Trail]) with { Value = Number(row.Key) };
        return new ConductorChoice(size, table.Quote(lying.Insulation, "celsius", $"insulation {Units.Text(lying.Insulation, "celsius")}", year), carries);
    }

    private static double Together(TradeKnowledge knowledge, int conductors)
    {
        var table = knowledge.Tables["nec-adjustment"];
        return table.Number(table.Rows.First(row => conductors <= row.Size()), "factor")!.Value;
    }

    private sealed record Lying(double Insulation, double Terminal, double Free, double Ampacity, double Factor);

    private const double Slack = 1e-9;
}
