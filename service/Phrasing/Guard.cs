using System.Text.RegularExpressions;
using WireCoach.Rules.Reference;

namespace WireCoach.Service.Phrasing;

/// <summary>Compares a rewording with the sentence it was made from. On any doubt it refuses.</summary>
/// <remarks>
/// What carries meaning must come back, nothing missing, nothing added, in the same order; only whole clauses may move,
/// where they cannot bind to anything else. That is stricter than a
/// reader would be: a good rewording that is refused costs nothing, because the sentence itself stands there already.
/// </remarks>
internal sealed partial class Guard(PhrasingWords words)
{
    private const string Everyday = ".,;:?!'’\"()- ";
    private const int LongestSource = 2000;

    /// <summary>In which order a difference is named.</summary>
    private static readonly string[] Weight =
        [Atom.Quantity, Atom.Lead, Atom.Number, Atom.Verb, Atom.Negation, Atom.Condition, Atom.Order, Atom.Modality, Atom.Quantifier, Atom.Hazard, Atom.State, Atom.Grammar, Atom.Mark];

    private readonly Atoms _atoms = new(words);

    /// <param name="source">The engine's sentence.</param>
    /// <param name="rewording">What came back.</param>
    /// <param name="leads">The tags of the session's leads.</param>
    public Verdict Compare(string source, string? rewording, IReadOnlySet<string> leads)
    {
        if (string.IsNullOrWhiteSpace(rewording))
        {
            return Verdict.Refused("empty");
        }

        if (source.Length > LongestSource || rewording.Length > Longest(source) || rewording.Length < 0.35 * source.Length)
        {
            return Verdict.Refused("length");
        }

        if (!IsPlain(source, rewording))
        {
            return Verdict.Refused("characters");
        }

        return _atoms.Same(source, rewording, leads) || _atoms.Same(source, Milder(rewording), leads)
            ? Verdict.Faithful
            : Verdict.Refused(Reason(_atoms.Of(source, leads), _atoms.Of(rewording, leads)));
    }

    /// <summary>How long a rewording may be at most.</summary>
    public static int Longest(string source) => (2 * source.Length) + 40;

    /// <summary>The classes of meaning in a sentence.</summary>
    public IReadOnlySet<string> Classes(string sentence, IReadOnlySet<string> leads) => _atoms.Of(sentence, leads).Select(atom => atom.Class).ToHashSet(StringComparer.Ordinal);

    /// <summary>Letters of the alphabet and everyday signs; anything else only where the sentence itself has it.</summary>
    private static bool IsPlain(string source, string rewording) =>
        rewording.All(sign => char.IsAsciiLetter(sign) || Everyday.Contains(sign, StringComparison.Ordinal) || source.Contains(sign, StringComparison.Ordinal))
        && !rewording.Any(sign => char.IsControl(sign) || char.IsSurrogate(sign) || char.GetUnicodeCategory(sign) == System.Globalization.UnicodeCategory.Format)
        && source.Where(IsForeign).SequenceEqual(rewording.Where(IsForeign));

    /// <summary>A sign outside the plain alphabet, such as Ω: it must come back as it was, so that no look-alike takes its place.</summary>
    private static bool IsForeign(char sign) => !char.IsAscii(sign) && sign != '’';

    /// <summary>"Never" where the sentence says "do not" forbids no less.</summary>
    private static string Milder(string rewording) => ForbidsRegex().Replace(rewording, "${begin}do not ");

    [GeneratedRegex("(?<begin>^|[.:;] )[Nn]ever ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ForbidsRegex();

    private static string Reason(List<Atom> wanted, List<Atom> got)
    {
        foreach (var kind in Weight)
        {
            if (!wanted.Where(atom => atom.Class == kind).SequenceEqual(got.Where(atom => atom.Class == kind)))
            {
                return kind;
            }
        }

        return got.Count > wanted.Count ? "added" : got.Count < wanted.Count ? "missing" : got.Except(wanted).Any() ? "words" : "moved";
    }
}
