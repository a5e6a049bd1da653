using WireCoach.Rules.Reference;

namespace WireCoach.Service.Phrasing;

/// <summary>Which words bind others to themselves, and how.</summary>
internal sealed class Binding(BindingWords words)
{
    private readonly HashSet<string> _joiners = Set(words.Joiners);
    private readonly HashSet<string> _conditions = Set(words.Conditions);
    private readonly HashSet<string> _places = Set(words.Places);
    private readonly HashSet<string> _pointing = Set(words.Pointing);
    private readonly HashSet<string> _focus = Set(words.Focus);
    private readonly HashSet<string> _leaning = Set(words.Leaning);
    private readonly HashSet<string> _subjects = Set(words.Subjects);
    private readonly HashSet<string> _openers = Set(words.Openers);
    private readonly HashSet<string> _counting = Set(words.Counting);

    public bool IsJoiner(Atom atom) => _joiners.Contains(atom.Text);

    public bool IsCondition(Atom atom) => _conditions.Contains(atom.Text);

    public bool IsPlace(Atom atom) => _places.Contains(atom.Text);

    public bool Points(Atom atom) => _pointing.Contains(atom.Text);

    public bool IsFocus(Atom atom) => _focus.Contains(atom.Text);

    /// <summary>Whether a word, standing last, takes hold of whatever comes behind it.</summary>
    public bool IsLeaning(Atom atom) => _leaning.Contains(atom.Text) || atom.Text.EndsWith("ly", StringComparison.Ordinal);

    public bool IsSubject(Atom atom) => _subjects.Contains(atom.Text);

    public bool IsOpener(Atom atom) => _openers.Contains(atom.Text);

    public bool IsCounting(Atom atom) => _counting.Contains(atom.Text);

    private static HashSet<string> Set(IReadOnlyList<string> words) => words.ToHashSet(StringComparer.Ordinal);
}
