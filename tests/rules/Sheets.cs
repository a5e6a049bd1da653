using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests;

/// <summary>Reports as they are written down beside their test. With WIRECOACH_REWRITE=1 they are written anew: whatever changes in them was looked at, line by line, before it is committed.</summary>
internal static class Sheets
{
    private static bool IsRewriting => Environment.GetEnvironmentVariable("WIRECOACH_REWRITE") == "1";

    /// <summary>Holds reports against the file, one sheet each.</summary>
    public static void Hold(string file, IEnumerable<(string About, object Report)> reports, [CallerFilePath] string test = "")
    {
        var path = Path.Combine(Path.GetDirectoryName(test)!, file);
        var said = new Dictionary<string, int>(StringComparer.Ordinal);
        string[] sheets = [.. reports.Select((one, at) => $"## {at + 1}. {one.About}\n{string.Join('\n', Lines(string.Empty, one.Report).DefaultIfEmpty("nothing").Select(line => Once(line, at + 1, said)))}")];
        if (IsRewriting)
        {
            File.WriteAllText(path, string.Join("\n\n", sheets) + "\n");
        }

        var written = File.ReadAllText(path).Split("\n\n");
        for (var at = 0; at < Math.Min(sheets.Length, written.Length); at++)
        {
            Assert.Equal(written[at].TrimEnd(), sheets[at].TrimEnd());
        }

        Assert.Equal(written.Length, sheets.Length);
    }

    /// <summary>Holds lines against the file, and shows those that are not as written.</summary>
    public static void Hold(string file, IEnumerable<string> lines, [CallerFilePath] string test = "")
    {
        var path = Path.Combine(Path.GetDirectoryName(test)!, file);
        string[] said = [.. lines];
        if (IsRewriting)
        {
            File.WriteAllLines(path, said);
        }

        var written = File.ReadAllLines(path);
        Assert.Empty(said.Zip(written).Where(line => line.First != line.Second).Select(line => $"{line.First}\nwas {line.Second}"));
        Assert.Equal(written.Length, said.Length);
    }

    private static IEnumerable<string> Lines(string name, object? value) => value switch
    {
        null => [],
        Quoted quote => [string.Join('\n', [$"{name}: {Figure(quote)}{(quote.Caution is Quoted.CodeDeferral ? "" : $", caution {quote.Caution}")}", .. quote.Trail.Select(step => $"  {step.Formula}; {step.Inputs} = {step.Result}")])],
        QuotedRange range => [.. Lines($"{name} from", range.Low), .. Lines($"{name} to", range.High)],
        Statement said => [string.Join('\n', [$"{name}: {said.Id}: {Trade.Knowledge.Sentences.Render(said)}", .. said.Quotes.Select(quote => $"  {Figure(quote)}{(quote.Trail is [.., var last] ? $" from {last.Inputs}" : "")}")])],
        Problem problem => [$"{problem.Id} {problem.Field}{(problem.Missing.Count > 0 ? $", missing {string.Join(' ', problem.Missing)}" : "")}: {Trade.Knowledge.Sentences.Render(problem.Advice)}"],
        string or bool or Enum => [$"{name}: {value}"],
        double number => [$"{name}: {(Math.Round(number, 4) + 0.0).ToString("G7", CultureInfo.InvariantCulture)}"],
        IFormattable number => [$"{name}: {number.ToString(null, CultureInfo.InvariantCulture)}"],
        IEnumerable many => many.Cast<object?>().SelectMany(one => Lines(name, one)),
        _ when value.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(Answer<>) => Lines(name, Member(value, Member(value, "IsGiven") is true ? "Value" : "Problems")),
        _ => value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).SelectMany(member => Lines(name.Length == 0 ? member.Name : $"{name} {member.Name}", member.GetValue(value))),
    };

    /// <summary>What was said before is named by its sheet.</summary>
    private static string Once(string block, int sheet, Dictionary<string, int> said) =>
        said.TryAdd(block, sheet) || !block.Contains(": ", StringComparison.Ordinal) || block.Length < 60 ? block : $"{block[..block.IndexOf(':', StringComparison.Ordinal)]} as in {said[block]}";

    private static object? Member(object value, string name) => value.GetType().GetProperty(name)!.GetValue(value);

    private static string Figure(Quoted quote) => $"{quote.Text}{(quote.Value is { } exact ? $" ({exact.ToString("G7", CultureInfo.InvariantCulture)} {quote.Unit})" : $" ({quote.Unit})")} by {quote.Rule}";
}
