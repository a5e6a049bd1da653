using WireCoach.Rules.Reference;

namespace WireCoach.Service.Phrasing;

/// <summary>Takes a sentence apart into what carries meaning: fillers fall away, writings that mean the same become one.</summary>
internal sealed class Atoms
{
    private static readonly HashSet<string> NoLeads = [];

    private readonly Signs _signs;
    private readonly Clauses _clauses;
    private readonly int[] _writingLengths;
    private readonly int[] _phraseLengths;
    private readonly HashSet<string> _fillers;
    private readonly Dictionary<string, string> _classes;
    private readonly Dictionary<string, string> _same;
    private readonly Dictionary<string, List<Atom>> _phrases;

    public Atoms(PhrasingWords words)
    {
        var binding = new Binding(words.Binding);
        (_signs, _clauses) = (new(binding), new(binding));
        _fillers = words.Fillers.ToHashSet(StringComparer.Ordinal);
        _classes = words.Classes.SelectMany(named => named.Value.Select(word => (word, named.Key))).ToDictionary(pair => pair.word, pair => pair.Key, StringComparer.Ordinal);
        _same = words.Synonyms.SelectMany(group => group.Select(writing => (writing, group[0]))).ToDictionary(pair => pair.writing, pair => pair.Item2, StringComparer.Ordinal);
        _writingLengths = Lengths(_same.Keys);
        var phrases = words.Phrases.SelectMany(group => group.Select(writing => (Text(Single(writing, NoLeads)), Single(group[0], NoLeads)))).DistinctBy(pair => pair.Item1);
        _phrases = phrases.ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal);
        _phraseLengths = Lengths(_phrases.Keys);
    }

    /// <param name="text">A sentence.</param>
    /// <param name="leads">The tags of the session's leads: they are names, whatever they look like.</param>
    public List<Atom> Of(string text, IReadOnlySet<string> leads) => _signs.Commas(All(text, leads));

    /// <summary>Whether two texts are the same but for clauses in another order and signs that weigh nothing.</summary>
    public bool Same(string first, string second, IReadOnlySet<string> leads) => _clauses.Same(All(first, leads), All(second, leads));

    private List<Atom> All(string text, IReadOnlySet<string> leads)
    {
        var single = Single(text, leads);
        var atoms = new List<Atom>(single.Count);
        for (var at = 0; at < single.Count;)
        {
            var length = _phraseLengths.FirstOrDefault(length => at + length <= single.Count && IsPhrase(single.GetRange(at, length)));
            atoms.AddRange(length > 0 ? _phrases[Text(single.GetRange(at, length))] : [single[at]]);
            at += Math.Max(1, length);
        }

        return atoms;
    }

    private bool IsPhrase(List<Atom> run) => run.TrueForAll(atom => atom.Class != Atom.Lead) && _phrases.ContainsKey(Text(run));

    private static string Text(List<Atom> atoms) => string.Join(' ', atoms.Select(atom => atom.Text));

    /// <summary>How many words writings have, the most first.</summary>
    private static int[] Lengths(IEnumerable<string> writings) => [.. writings.Select(writing => writing.Split(' ').Length).Distinct().OrderDescending()];

    /// <summary>Word by word: fillers gone, synonyms met.</summary>
    private List<Atom> Single(string text, IReadOnlySet<string> leads)
    {
        var pieces = Pieces(text, leads).SelectMany(Spelt).ToList();
        var atoms = new List<Atom>(pieces.Count);
        for (var at = 0; at < pieces.Count;)
        {
            at += Take(pieces, at, atoms);
        }

        return atoms;
    }

    /// <summary>A shortened word in full, so that "isn't" and "is not" meet also inside a longer writing.</summary>
    private IEnumerable<Atom> Spelt(Atom piece) => piece.Text.Contains('\'', StringComparison.Ordinal) && _same.TryGetValue(piece.Text, out var full)
        ? full.Split(' ').Select(word => new Atom(Atom.Word, word))
        : [piece];

    private int Take(List<Atom> pieces, int at, List<Atom> atoms)
    {
        if (pieces[at].Class != Atom.Word)
        {
            atoms.Add(pieces[at]);
            return 1;
        }

        foreach (var length in _writingLengths.Where(length => at + length <= pieces.Count))
        {
            var run = pieces.GetRange(at, length);
            if (run.TrueForAll(piece => piece.Class == Atom.Word) && _same.TryGetValue(string.Join(' ', run.Select(piece => piece.Text)), out var first))
            {
                // The first writing stands for the group, word by word, so that it meets itself also beside other words.
                atoms.AddRange(first.Split(' ').Select(Classed));
                return length;
            }
        }

        if (!_fillers.Contains(pieces[at].Text))
        {
            atoms.Add(Classed(pieces[at].Text));
        }

        return 1;
    }

    private Atom Classed(string word) => new(_classes.GetValueOrDefault(word, Atom.Word), word);

    private static List<Atom> Pieces(string text, IReadOnlySet<string> leads)
    {
        var pieces = new List<Atom>();
        var afterNumber = false;
        for (var at = 0; at < text.Length;)
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }

            var end = End(text, at);
            var piece = text[at..end].Replace('’', '\'');
            var hyphen = piece == "-" && at > 0 && char.IsAsciiLetter(text[at - 1]) && end < text.Length && char.IsAsciiLetter(text[end])
                && !leads.Contains(pieces[^1].Text) && !leads.Contains(text[end..End(text, end)]); // "red-black" and "red black" are other pairs
            if (!hyphen)
            {
                pieces.Add(Piece(piece, afterNumber, pieces.Count == 0 || pieces[^1].Text is "." or ":" or "?" or "!", leads));
                afterNumber = piece is "°" ? afterNumber : char.IsAsciiDigit(piece[0]);
            }

            at = end;
        }

        return pieces;
    }

    private static Atom Piece(string piece, bool afterNumber, bool begins, IReadOnlySet<string> leads)
    {
        if (leads.Contains(piece))
        {
            return new(Atom.Lead, piece);
        }

        if (piece.Any(char.IsAsciiDigit))
        {
            return new(char.IsAsciiDigit(piece[0]) ? Atom.Quantity : Atom.Lead, piece);
        }

        if (!char.IsLetter(piece[0]))
        {
            return new(piece is "%" or "°" or "+" or "=" ? Atom.Quantity : Atom.Mark, piece);
        }

        if (piece.Length == 1 && char.IsAsciiLetterUpper(piece[0]) && piece != "I" && !(begins && piece == "A"))
        {
            return new(afterNumber ? Atom.Quantity : Atom.Lead, piece);
        }

        var shouts = piece.AsSpan(1).ContainsAnyInRange('A', 'Z');
        return shouts || !piece.All(letter => char.IsAscii(letter)) || (afterNumber && char.IsUpper(piece[0]))
            ? new(Atom.Quantity, piece) // a unit or an abbreviation: its case counts
            : new(Atom.Word, piece.ToLowerInvariant());
    }

    /// <summary>Where the piece that begins here ends: a word with its apostrophes, a number with its point, or one sign.</summary>
    private static int End(string text, int at)
    {
        if (!char.IsLetterOrDigit(text[at]))
        {
            return at + 1;
        }

        var end = at + 1;
        while (end < text.Length && (char.IsLetterOrDigit(text[end]) || Joins(text, end)))
        {
            end++;
        }

        return end;
    }

    /// <summary>Whether a sign within a piece belongs to it: an apostrophe before a letter, a point before a digit.</summary>
    private static bool Joins(string text, int at) =>
        at + 1 < text.Length && (text[at] is '\'' or '’' ? char.IsAsciiLetter(text[at + 1]) : text[at] is '.' or ',' && char.IsAsciiDigit(text[at + 1]));
}
