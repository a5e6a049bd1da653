using System.Text.RegularExpressions;

namespace WireCoach.Rules.Tests;

/// <summary>What holds all over the house: short files, and no sentence in knowledge that nobody says.</summary>
public sealed partial class ConventionsTest
{
    private const int LongestFile = 400;

    private static readonly string[] Rooms = ["rules", "knowledge", "service", "web-ui", "tests"];

    [Fact]
    public void No_file_of_code_is_longer_than_four_hundred_lines() => Assert.DoesNotContain(
        Code(Rooms).Select(file => (file, File.ReadLines(file).Count())), file => file.Item2 > LongestFile);

    [Fact]
    public void Every_sentence_is_said_by_code_or_named_by_other_knowledge()
    {
        var code = Code(Rooms[..4]).Select(File.ReadAllText).ToList();
        var said = code.SelectMany(text => Literal().Matches(text)).Select(match => match.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
        var begun = code.SelectMany(text => Beginning().Matches(text)).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal).ToList();
        var named = Directory.EnumerateFiles(Path.Combine(Repository.Root, "knowledge"), "*.yaml", SearchOption.AllDirectories)
            .SelectMany(file => Word().Matches(File.ReadAllText(file))).GroupBy(match => match.Value, StringComparer.Ordinal).Where(word => word.Count() > 1).Select(word => word.Key).ToHashSet(StringComparer.Ordinal);
        Assert.True(said.Count > 1000 && begun.Count > 10, "The patterns find nothing any more.");
        Assert.DoesNotContain(Trade.Knowledge.Sentences.Ids, id => !said.Contains(id) && !named.Contains(id) && !begun.Exists(beginning => id.StartsWith(beginning, StringComparison.Ordinal)));
    }

    private static IEnumerable<string> Code(IEnumerable<string> rooms) => rooms
        .SelectMany(room => Directory.EnumerateFiles(Path.Combine(Repository.Root, room), "*", SearchOption.AllDirectories))
        .Where(file => Path.GetExtension(file) is ".cs" or ".razor" or ".css" or ".js");

    [GeneratedRegex("\"([a-z0-9][A-Za-z0-9.-]*)\"", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Literal();

    [GeneratedRegex("\"([a-z][a-z0-9-]*\\.[a-z0-9.-]*)\\{", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Beginning();

    [GeneratedRegex("[A-Za-z0-9][A-Za-z0-9.-]*", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Word();
}
