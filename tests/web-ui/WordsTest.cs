using System.Text.RegularExpressions;
using WireCoach.Knowledge;
using WireCoach.Rules.Tests;

namespace WireCoach.WebUi.Tests;

/// <summary>What the pages say lives in knowledge, and nothing lies there that no page says.</summary>
public sealed class WordsTest
{
    /// <summary>Whole ids.</summary>
    private static readonly Regex Named = new("\"((?:page|report|picture)\\.[a-z0-9-]+)\"", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    /// <summary>Ids whose end is filled in, for example by a role.</summary>
    private static readonly Regex Begun = new("\\$\"(page\\.[a-z0-9-]+)\\{", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    private static readonly IReadOnlyCollection<string> Ids = [.. KnowledgeFolder.Load(KnowledgeFolder.Beside).Sentences.Ids];

    private static readonly IReadOnlyList<(string Path, string Text)> Sources =
    [
        .. new[] { "web-ui", "service" }
            .Select(room => Path.Combine(Repository.Root, room))
            .SelectMany(room => Directory.EnumerateFiles(room, "*", SearchOption.AllDirectories))
            .Where(path => Path.GetExtension(path) is ".razor" or ".cs")
            .Select(path => (path, File.ReadAllText(path))),
    ];

    [Fact]
    public void Every_sentence_that_a_page_names_exists()
    {
        var named = Sources.SelectMany(source => Named.Matches(source.Text).Select(match => (source.Path, Id: match.Groups[1].Value))).ToList();
        Assert.True(named.Count > 50, "The pattern finds no ids any more.");
        Assert.Empty(named.Where(one => !Ids.Contains(one.Id, StringComparer.Ordinal)).Select(one => $"{Path.GetFileName(one.Path)}: {one.Id}"));
    }

    [Fact]
    public void Every_sentence_for_pages_is_said_by_one()
    {
        var literals = Sources.SelectMany(source => Named.Matches(source.Text)).Select(match => match.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
        var beginnings = Sources.SelectMany(source => Begun.Matches(source.Text)).Select(match => match.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
        string[] unsaid = [.. Ids.Where(id => (id.StartsWith("page.", StringComparison.Ordinal) || id.StartsWith("picture.", StringComparison.Ordinal)) && !literals.Contains(id) && !beginnings.Any(begun => id.StartsWith(begun, StringComparison.Ordinal)))];
        Assert.Empty(unsaid);
    }

    [Fact]
    public void Every_kind_of_word_is_used_by_a_page_or_a_rule()
    {
        string[] sources = [.. Sources.Select(source => source.Text), .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "rules"), "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText)];
        var kinds = Ids.Where(id => id.StartsWith("term.", StringComparison.Ordinal)).Select(id => id.Split('.')[1]).Distinct(StringComparer.Ordinal).ToList();
        Assert.True(kinds.Count > 20, "The words have other names now.");
        Assert.All(kinds, kind => Assert.Contains(sources, text => text.Contains($"(\"{kind}\"", StringComparison.Ordinal) || text.Contains($"=\"{kind}\"", StringComparison.Ordinal) || text.Contains($"term.{kind}", StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_caution_and_cause_has_a_name_of_its_own()
    {
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        string[] needed = [.. knowledge.Cautions.Keys.Select(id => $"term.caution-name.{id}").Concat(knowledge.Causes.Keys.Select(id => $"cause.{id}.name"))];
        Assert.DoesNotContain(needed, id => !Ids.Contains(id, StringComparer.Ordinal));
    }

    [Fact]
    public void Everybody_who_takes_a_motor_over_has_a_name_that_can_be_read_aloud()
    {
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        var rows = knowledge.GateConditions.Values.SelectMany(condition => condition.Rows).Concat(knowledge.GateTasks.Values.SelectMany(task => task.Roles.Values));
        string[] needed = [.. knowledge.Causes.Values.Select(cause => cause.ReferTo).Concat(rows.Select(row => row.ReferTo).OfType<string>()).Distinct(StringComparer.Ordinal)];
        Assert.True(needed.Length > 3, string.Join(", ", needed));
        Assert.DoesNotContain(needed, id => !Ids.Contains($"term.person.{id}", StringComparer.Ordinal));
    }

    [Fact]
    public void Every_winding_and_every_part_of_a_layout_has_its_words()
    {
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        var forms = knowledge.Layouts.Values.SelectMany(layout => layout.Forms()).ToList();
        string[] roles = [.. forms.SelectMany(form => form.Coils.Select(coil => coil.Role)).Append("other").Append("protector").Distinct(StringComparer.Ordinal)];
        string[] needed = [.. roles.SelectMany(role => (string[])[$"term.coil.{role}", $"term.winding.{role}", $"term.windings.{role}"]), .. forms.SelectMany(form => form.Parts).Select(part => $"term.part.{part.Kind}").Distinct(StringComparer.Ordinal)];
        Assert.True(needed.Length > 25, string.Join(", ", needed));
        Assert.DoesNotContain(needed, id => !Ids.Contains(id, StringComparer.Ordinal));
    }
}
