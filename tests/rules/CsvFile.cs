using System.Globalization;
using System.Text;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests;

/// <summary>Vectors and tables that were written down outside the code, read as they stand.</summary>
internal static class CsvFile
{
    /// <summary>The knowledge that ships, loaded once.</summary>
    public static TradeKnowledge Knowledge { get; } = Trade.Knowledge;

    /// <summary>The rows of a vector file by their first cell.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Vectors(string name) =>
        Rows(Path.Combine(Repository.Root, "tests", "rules", "vectors", name + ".csv")).ToDictionary(row => row.Values.First(), StringComparer.Ordinal);

    /// <summary>The ids of a vector file, as theory data.</summary>
    public static TheoryData<string> Ids(string name) => [.. Vectors(name).Keys];

    /// <summary>The rows of a file, each by column name.</summary>
    public static List<IReadOnlyDictionary<string, string>> Rows(string path)
    {
        var lines = File.ReadAllLines(path);
        var head = Cells(lines[0]);
        return [.. lines.Skip(1).Where(line => line.Length > 0).Select(line => (IReadOnlyDictionary<string, string>)head
            .Zip(Cells(line)).ToDictionary(cell => cell.First, cell => cell.Second, StringComparer.Ordinal))];
    }

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var sign in line)
        {
            if (sign == '"')
            {
                quoted = !quoted;
            }
            else if (sign == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(sign);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
