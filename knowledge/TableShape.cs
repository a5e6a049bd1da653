using System.Text.RegularExpressions;
using WireCoach.Rules.Reference;

namespace WireCoach.Knowledge;

/// <summary>What makes a table a table: as many cells as columns, keys once, cells that are numbers or wire sizes.</summary>
internal static partial class TableShape
{
    /// <summary>What is wrong with the table, or <see langword="null"/>.</summary>
    public static string? Wrong(TradeTable table)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in table.Rows)
        {
            if (row.Cells.Count != table.Columns.Count)
            {
                return $"the row '{row.Key}' has {row.Cells.Count} cells for {table.Columns.Count} columns.";
            }

            if (!keys.Add(row.Key))
            {
                return $"the row '{row.Key}' stands twice.";
            }

            if (row.Cells.FirstOrDefault(cell => !Cell().IsMatch(cell)) is { } odd)
            {
                return $"the row '{row.Key}' has the cell '{odd}', which is neither a number nor a wire size.";
            }
        }

        return table.Since < table.Until ? null : "'until' must be after 'since'.";
    }

    [GeneratedRegex(@"^(-?\d+(\.\d+)?|[1-4]/0|)$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Cell();
}
