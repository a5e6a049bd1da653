using WireCoach.Rules.Quantities;
using WireCoach.Rules.Windings;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Diagrams;

/// <summary>What stands beside a symbol, and the shorter word for where there is no room.</summary>
internal sealed record Label(string Words, string? Narrow = null)
{
    /// <summary>A word that would be cut is shortened instead.</summary>
    public string Within(double width) => Narrow is null || Words.Split(' ').All(word => Lettering.Width(word, Lettering.Label, false) <= width) ? Words : Narrow;
}

/// <summary>How windings, parts and leads are named in pictures.</summary>
internal sealed class PictureWords(PageWords words)
{
    public string this[string id] => words[id];

    public string Fill(string id, params ReadOnlySpan<(string Name, string Text)> gaps) => words.Fill(id, gaps);

    /// <summary>A coil's job, short enough for its symbol.</summary>
    public Label Coil(string role) => new(words.Term("coil", role), words.TermOrNull("narrow", role));

    /// <summary>A winding by its job.</summary>
    public string Winding(string role) => words.Term("winding", role);

    /// <summary>A winding by its job and its ohms, as far as they are known.</summary>
    public string Winding(Winding winding)
    {
        var named = winding.Junction ? Fill("picture.joined-inside", ("windings", words.Term("windings", winding.Role))) : Winding(winding.Role);
        return winding.Ohms is { } ohms ? Fill("picture.winding-ohms", ("winding", named), ("ohms", Units.Text(ohms, "ohm").Replace(' ', '\u00a0'))) : named;
    }

    public Label Part(string kind) => new(words.Term("part", kind), words.TermOrNull("narrow", kind));

    /// <summary>Tags in a row, as they are read out.</summary>
    public string All(IReadOnlyList<string> tags) =>
        tags.Count == 1 ? tags[0] : Fill("picture.and", ("first", string.Join(", ", tags.Take(tags.Count - 1))), ("last", tags[^1]));

    /// <summary>The same with what they are.</summary>
    public string Leads(IReadOnlyList<string> tags) => Fill(tags.Count == 1 ? "picture.told-lead" : "picture.told-leads", ("leads", All(tags)));

    /// <summary>As a sentence begins.</summary>
    public static string Begun(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
