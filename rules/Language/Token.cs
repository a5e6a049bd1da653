namespace WireCoach.Rules.Language;

/// <summary>What kind of token it is.</summary>
internal enum TokenKind
{
    /// <summary>A run of letters.</summary>
    Word,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A letter or two with a number, such as T4 or U1.</summary>
    Tag,

    /// <summary>A sign.</summary>
    Mark,
}

/// <summary>A word, a number, a tag or a sign, with its place in the text.</summary>
internal sealed class Token(TokenKind kind, int start, int end, string text)
{
    public TokenKind Kind { get; } = kind;

    public int Start { get; } = start;

    public int End { get; } = end;

    /// <summary>In lower case, without apostrophes; for a number as written.</summary>
    public string Text { get; } = text;

    /// <summary>The stem by which phrases are found; set by the spelling.</summary>
    public string Stem { get; set; } = text;

    public double Value { get; init; }

    /// <summary>Nothing stands between it and the token before.</summary>
    public bool Glued { get; init; }

    /// <summary>A minus sign belongs to it.</summary>
    public bool Negative { get; init; }

    /// <summary>A number written with its unit inside, such as 3R3: in ohms.</summary>
    public bool InOhms { get; init; }

    /// <summary>Sentence and clause that it stands in, counted through the text.</summary>
    public int Sentence { get; set; }

    public int Clause { get; set; }

    /// <summary>Something was made of it.</summary>
    public bool Used { get; set; }

    /// <summary>It does not speak of this motor as it is now.</summary>
    public bool Aside { get; set; }

    /// <summary>It stands where a "not" before it reaches.</summary>
    public bool Denied => DeniedFrom >= 0;

    /// <summary>The first token of the "not" that reaches it; −1 for none.</summary>
    public int DeniedFrom { get; set; } = -1;

    public bool Is(string word) => Text == word;

    /// <summary>A whole number without a fraction sign, as leads are numbered.</summary>
    public bool IsWhole => Kind == TokenKind.Number && !InOhms && !Negative && Value == Math.Floor(Value) && !Text.Contains('.', StringComparison.Ordinal);
}
