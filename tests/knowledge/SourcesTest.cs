using System.Globalization;
using YamlDotNet.RepresentationModel;

namespace WireCoach.Knowledge.Tests;

/// <summary>Every source can be looked up, and what is our own judgement can be challenged: this test lists it.</summary>
public sealed class SourcesTest(ITestOutputHelper output)
{
    [Fact]
    public void Every_source_has_a_title_and_every_own_judgement_says_what_it_rests_on()
    {
        var sources = Directory.EnumerateFiles(KnowledgeFolder.Beside, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).SelectMany(Read).ToList();
        Assert.True(sources.Count > 500, $"{sources.Count} sources were found.");
        Assert.All(sources, source => Assert.False(string.IsNullOrWhiteSpace(source.Title), $"{source.At}: a source without a title."));
        var judged = sources.FindAll(source => source.Basis == "judgement");
        foreach (var source in judged)
        {
            output.WriteLine($"{source.At}: {source.Title}, {source.Place}");
        }

        output.WriteLine($"{judged.Count.ToString(CultureInfo.InvariantCulture)} of {sources.Count.ToString(CultureInfo.InvariantCulture)} sources are own judgement.");
        Assert.All(judged, source => Assert.False(string.IsNullOrWhiteSpace(source.Place), $"{source.At}: a judgement that does not say what it rests on."));
    }

    private static IEnumerable<Found> Read(string file)
    {
        var stream = new YamlStream();
        using (var reader = File.OpenText(file))
        {
            stream.Load(reader);
        }

        var name = Path.GetRelativePath(KnowledgeFolder.Beside, file);
        return stream.Documents.SelectMany(document => document.AllNodes).OfType<YamlMappingNode>()
            .SelectMany(node => node.Children).Where(child => child is { Key: YamlScalarNode { Value: "source" }, Value: YamlMappingNode })
            .Select(child => (YamlMappingNode)child.Value)
            .Select(source => new Found($"{name}({source.Start.Line.ToString(CultureInfo.InvariantCulture)})", Text(source, "title"), Text(source, "place"), Text(source, "basis")));
    }

    private static string? Text(YamlMappingNode node, string key) =>
        node.Children.TryGetValue(new YamlScalarNode(key), out var value) ? ((YamlScalarNode)value).Value : null;

    private sealed record Found(string At, string? Title, string? Place, string? Basis);
}
