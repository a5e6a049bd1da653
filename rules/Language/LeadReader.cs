namespace WireCoach.Rules.Language;

/// <summary>Reads the name of a lead: a tag that is known, a printed marking, a colour, a number, or the frame. Never guessed from a misspelling.</summary>
internal sealed class LeadReader
{
    private const int MostLeads = 48;
    private readonly Scene _scene;
    private readonly List<(string[] Words, string Tag)> _known;

    public LeadReader(Scene scene)
    {
        _scene = scene;
        _known = [.. scene.Leads.Select(tag => (Words(tag), tag)).Where(lead => lead.Item1.Length > 0).OrderByDescending(lead => lead.Item1.Length)];
    }

    /// <summary>A lead that starts at the token, and its last token.</summary>
    /// <param name="at">The token.</param>
    /// <param name="letters">Whether single letters count as leads here.</param>
    public (string Tag, int Last)? At(int at, bool letters = false)
    {
        if (_scene[at] is not { } token || token.Used)
        {
            return null;
        }

        if (Known(at) is { } known)
        {
            return known;
        }

        if (_scene.At(at, "lead-noun") is { } noun && _scene[noun.Last + 1] is not { Kind: TokenKind.Word, Text: "to" or "and" })
        {
            var named = _scene.IsWord(noun.Last + 1, "#", "no", "number", "nr") ? noun.Last + 2 : noun.Last + 1;
            return named < at + 4 && _scene.At(named, "lead-noun") is null ? At(named, true) : null;
        }

        if (token.Is("#") || _scene.At(at, "look-of-lead") is not null || (token.Is("the") && at + 1 < _scene.Tokens.Count))
        {
            return token.Is("the") && _scene.IsWord(at + 1, "the") ? null : At(at + 1);
        }

        return Frame(at) ?? Colour(at) ?? Marking(at, letters);
    }

    /// <summary>Leads one behind the other, with such signs between them; the frame and the earth are none.</summary>
    public List<(string Tag, int Last)> Row(int at, params string[] signs)
    {
        var row = new List<(string Tag, int Last)>();
        var next = at;
        while (At(next) is { } lead && lead.Tag is not (Cases.Fact.Reading.Frame or Cases.Fact.Reading.Earth))
        {
            row.Add(lead);
            next = lead.Last + 1;
            while (_scene.IsWord(next, signs))
            {
                next++;
            }

            if (next == lead.Last + 1)
            {
                break;
            }
        }

        return row;
    }

    /// <summary>"frame", "case", "earth", "ground".</summary>
    public (string Tag, int Last)? Frame(int at)
    {
        at = _scene.IsWord(at, "the", "bare") ? at + 1 : at;
        return _scene.At(at, "frame-metal") is { } frame ? (Cases.Fact.Reading.Frame, frame.Last)
            : _scene.At(at, "earth-metal") is { } earth ? (Cases.Fact.Reading.Earth, earth.Last)
            : null;
    }

    private static string[] Words(string tag) => [.. Tokenizer.Cut(tag).Select(token => token.Text)];

    private (string Tag, int Last)? Known(int at)
    {
        foreach (var (words, tag) in _known)
        {
            var fits = true;
            for (var word = 0; fits && word < words.Length; word++)
            {
                fits = _scene[at + word] is { } token && (token.Text == words[word] || Shade(at + word) is { } shade && shade == words[word]);
            }

            if (fits && !(words.Length == 1 && IsPartOfAnother(at)))
            {
                return (tag, at + words.Length - 1);
            }
        }

        return null;
    }

    /// <summary>A known "1" is not the 1 of "1.5 V" or "1/2 hp": those are other tokens or carry a fraction.</summary>
    private bool IsPartOfAnother(int at) => _scene[at] is { Kind: TokenKind.Number } && _scene[at + 1] is { Kind: TokenKind.Word, Glued: true };

    private string? Shade(int at) => _scene.Like(at, "colour.") is { } colour && colour.First == colour.Last ? colour.Concept["colour.".Length..] : null;

    private (string Tag, int Last)? Colour(int at)
    {
        if (Shade(at) is not { } base1)
        {
            return null;
        }

        if (_scene.IsWord(at + 1, "/") && Shade(at + 2) is { } tracer && (_scene.Leads.Count == 0 || !_scene.Leads.Contains(base1)))
        {
            return ($"{base1}/{tracer}", at + 2);
        }

        var with = _scene.IsWord(at + 1, "with", "w") ? at + 2 : at + 1;
        with = _scene.IsWord(with, "/", "a") ? with + 1 : with;
        return Shade(with) is { } stripe && _scene.IsWord(with + 1, "tracer", "stripe", "trace", "line") ? ($"{base1}/{stripe}", with + 1)
            : _scene.IsWord(with, "tracer", "stripe") ? ($"{base1}/tracer", with)
            : ByItsColour(base1) is { } tag ? (tag, at)
            : (base1, at);
    }

    /// <summary>"yellow" is the "fat yellow" when there is one such lead only.</summary>
    private string? ByItsColour(string colour)
    {
        var fitting = _scene.Leads.Where(lead => Words(lead).Contains(colour)).ToList();
        return fitting.Count == 1 ? fitting[0] : null;
    }

    private (string Tag, int Last)? Marking(int at, bool letters)
    {
        var token = _scene.Tokens[at];
        return token.Kind == TokenKind.Tag && !IsOther(token) ? (_scene.Span(at, at).ToUpperInvariant(), at)
            : token.IsWhole && token.Value is >= 1 and <= MostLeads && !BehindPoint(at) ? (ByItsNumber(token.Text), at)
            : letters && token is { Kind: TokenKind.Word, Text.Length: 1 } ? (_scene.Span(at, at), at)
            : null;
    }

    /// <summary>"7" is T7 where the leads carry the printed numbers and none is called just 7.</summary>
    private string ByItsNumber(string number) => _scene.Leads.FirstOrDefault(lead => lead.Equals($"T{number}", StringComparison.OrdinalIgnoreCase)) ?? number;

    private bool BehindPoint(int at) => _scene[at + 1] is { Kind: TokenKind.Word, Glued: true };

    /// <summary>Line conductors, joints and protection classes are no leads.</summary>
    private static bool IsOther(Token token) => token.Text is "l1" or "l2" or "l3" || token.Text[0] == 'j' || token.Text.StartsWith("ip", StringComparison.Ordinal);
}
