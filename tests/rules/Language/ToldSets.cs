using System.Globalization;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>The sets from which words are learnt, and what their lines tell.</summary>
internal static class ToldSets
{
    private const int LastEasy = 30;
    private const int FirstStory = 54;

    /// <summary>Where the sets are.</summary>
    public static string Folder { get; } = Path.Combine(Repository.Root, "tests", "rules", "Language");

    /// <summary>Sets from which may be learnt at all; the others only measure.</summary>
    public static string[] Files { get; } = [.. Directory.EnumerateFiles(Folder, "*.yaml").Select(path => Path.GetFileName(path)).Where(file => IsTold(file) || file.StartsWith("development-", StringComparison.Ordinal) || file == "held-out.yaml").Order(StringComparer.Ordinal)];

    /// <summary>Sets of which no phrase may be made: from their lines only the weights of words are learnt.</summary>
    public static bool IsTold(string file) => file.StartsWith("told-", StringComparison.Ordinal);

    /// <summary>Sets of what people write as it comes; the others were looked for to be as unusual as words can be.</summary>
    public static bool IsPlain(string file) => !IsTold(file) || int.Parse(file.AsSpan("told-".Length, 2), CultureInfo.InvariantCulture) is <= LastEasy or >= FirstStory;

    /// <summary>The symptoms and denials of a line, as the rows of told words are named.</summary>
    public static HashSet<string> Symptoms(Utterance line) =>
        [.. line.Expect.Where(expected => Brief.Kind(expected) == "symptom").Select(expected => expected.Replace("no ", ToldWords.Denied, StringComparison.Ordinal))];

    /// <summary>How many lines tell each.</summary>
    public static SortedDictionary<string, int> Rows(IEnumerable<IReadOnlyCollection<string>> lines)
    {
        var rows = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var row in lines.SelectMany(line => line))
        {
            rows[row] = rows.GetValueOrDefault(row) + 1;
        }

        return rows;
    }
}
