using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>A current found in a table.</summary>
/// <param name="Amps">The current, quoted.</param>
/// <param name="RowKey">The row as printed.</param>
/// <param name="Column">The column as printed.</param>
/// <param name="Between">Whether the size lies between two rows and the next one up was taken.</param>
public sealed record TableCurrent(Quoted Amps, string RowKey, string Column, bool Between);

/// <summary>Motor currents by size and volts, as the codes print them. Never extrapolated.</summary>
public static class CurrentTable
{
    /// <summary>The current of a size at a system voltage, or what is wrong with the question.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="tableId">A table whose rows are sizes and whose columns are volts.</param>
    /// <param name="size">The size in the table's unit.</param>
    /// <param name="volts">System or plate volts.</param>
    /// <param name="year">The adopted edition, where editions count.</param>
    public static Answer<TableCurrent> Find(TradeKnowledge knowledge, string tableId, double size, double volts, int? year = null)
    {
        var table = knowledge.Tables[tableId];
        if (VoltsColumn(knowledge, table, volts) is not { } column)
        {
            return new Problem("invalid-fact", "volts", Statement.Of("nameplate.volts-not-in-table",
                ("volts", Units.Text(volts, "volt")), ("nearest", Nearest(knowledge, table, volts)), ("table", table.Source.Name())));
        }

        var sized = table.Rows.Where(row => table.Number(row, column) is not null).ToList();
        var slack = knowledge.Rules["size-rounding"]["share"];
        var at = sized.FindIndex(row => size <= row.Size() * (1 + slack));
        if (at < 0 || (at == 0 && size < sized[0].Size() * (1 - slack)))
        {
            var nearest = at < 0 ? sized[^1] : sized[0];
            var field = string.Equals(table.Key, "kilowatt", StringComparison.Ordinal) ? "kilowatts" : "horsepower";
            return new Problem("invalid-fact", field, Statement.Of("nameplate.size-not-in-table",
                ("size", Size(table, size)), ("volts", Units.Text(volts, "volt")), ("table", table.Source.Name()))
                .With("nearest", table.Quote(nearest.Size(), table.Key, $"{nearest.Key} {Units.Sign(table.Key)}, {column} V", year)));
        }

        var row = sized[at];
        var between = Math.Abs(size - row.Size()) > row.Size() * slack;
        var rule = knowledge.Rules["size-next-row"];
        IReadOnlyList<TrailStep> before = between
            ? [new TrailStep(rule.States, rule.Formula, Size(table, size), Size(table, row.Size()))]
            : [];
        var amps = table.Quote(table.Number(row, column)!.Value, "amp", $"{row.Key} {Units.Sign(table.Key)}, {column} V", year, before);
        return new TableCurrent(amps, row.Key, column, between);
    }

    /// <summary>The column that holds a voltage: the nominal one of its system; <see langword="null"/> where no column covers it.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="table">A table with volts as columns.</param>
    /// <param name="volts">System or plate volts.</param>
    internal static string? VoltsColumn(TradeKnowledge knowledge, TradeTable table, double volts)
    {
        var ranges = knowledge.Tables["voltage-columns"];
        return ranges.Rows
            .Where(row => ranges.Number(row, "from") <= volts && volts <= ranges.Number(row, "to"))
            .Select(row => row.Key)
            .FirstOrDefault(key => key.StartsWith($"{Prefix(table)}-", StringComparison.Ordinal) && table.Columns.Contains(key[(Prefix(table).Length + 1)..], StringComparer.Ordinal))
            is { } found ? found[(Prefix(table).Length + 1)..] : null;
    }

    private static string Nearest(TradeKnowledge knowledge, TradeTable table, double volts)
    {
        var ranges = knowledge.Tables["voltage-columns"];
        var nearest = ranges.Rows.Where(row => row.Key.StartsWith($"{Prefix(table)}-", StringComparison.Ordinal)
                && table.Columns.Contains(row.Key[(Prefix(table).Length + 1)..], StringComparer.Ordinal))
            .MinBy(row => Math.Min(Math.Abs(ranges.Number(row, "from")!.Value - volts), Math.Abs(ranges.Number(row, "to")!.Value - volts)))!;
        var (from, to) = (ranges.Number(nearest, "from")!.Value, ranges.Number(nearest, "to")!.Value);
        return from.Equals(to) ? Units.Text(from, "volt") : $"{Units.Number(from)}–{Units.Text(to, "volt")}";
    }

    private static string Prefix(TradeTable table) => table.Id switch
    {
        "nec-430-247" => "dc",
        "iec-current-three-phase" or "iec-current-single-phase" or "iec-current-large" => "iec",
        _ => "na",
    };

    private static string Size(TradeTable table, double size) => Units.Text(size, table.Key);
}
