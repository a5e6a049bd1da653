using System.Globalization;

namespace WireCoach.Rules.Language;

/// <summary>Cuts a text into tokens in one pass.</summary>
internal static class Tokenizer
{
    private const int LongestNumber = 24;
    private const int LeastHertz = 10;
    private const int MostSpeeds = 4;
    private static readonly HashSet<string> UnitLabels = ["kw", "a", "v", "hp", "ps", "cv", "amp", "amps", "ohm", "ohms", "uf", "cos"];
    private static readonly HashSet<string> Namers = ["to", "from", "and", "or", "lead", "wire", "terminal", "between", "with", "marked", "called", "is", "reads", "line", "the"];
    private static readonly string[] UnitWords = ["amp", "cv ", "ps ", "hp", "volt", "meg"];

    public static List<Token> Cut(string text)
    {
        var tokens = new List<Token>(text.Length / 4 + 4);
        for (var at = 0; at < text.Length;)
        {
            var c = text[at];
            if (char.IsWhiteSpace(c) && c != '\n')
            {
                at++;
            }
            else if (StartsNumber(text, at))
            {
                at = Number(text, at, tokens);
            }
            else if (IsLetter(c))
            {
                at = Word(text, at, tokens);
            }
            else
            {
                at = Mark(text, at, tokens);
            }
        }

        return Places(Joined(tokens, text));
    }

    private static bool IsLetter(char c) => char.IsLetter(c);

    private static bool StartsNumber(string text, int at) =>
        char.IsAsciiDigit(text[at]) || Fraction(text[at]) > 0
        || (text[at] == '.' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]) && (at == 0 || !char.IsAsciiDigit(text[at - 1])));

    private static double Fraction(char c) => c switch
    {
        '½' => 0.5, '¼' => 0.25, '¾' => 0.75, '⅓' => 1 / 3.0, '⅔' => 2 / 3.0, '⅛' => 0.125, '⅙' => 1 / 6.0, '⅕' => 0.2, _ => 0,
    };

    private static int Number(string text, int start, List<Token> tokens)
    {
        var at = start;
        var digits = new System.Text.StringBuilder();
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            digits.Append(text[at++]);
            if (IsThousands(text, at, at - start))
            {
                at++;
            }
        }

        if (at + 1 < text.Length && (text[at] == '.' || IsDecimalComma(text, start, at, tokens)) && char.IsAsciiDigit(text[at + 1]))
        {
            digits.Append('.');
            for (at++; at < text.Length && char.IsAsciiDigit(text[at]); at++)
            {
                digits.Append(text[at]);
            }
        }

        var fraction = at < text.Length ? Fraction(text[at]) : 0;
        if (fraction > 0)
        {
            at++;
        }

        if (digits.Length > LongestNumber)
        {
            tokens.Add(new Token(TokenKind.Word, start, at, "number"));
            return at;
        }

        var value = digits.Length == 0 ? 0 : double.Parse(digits.ToString(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        tokens.Add(new Token(TokenKind.Number, start, at, text[start..at])
        {
            Value = value + fraction,
            Glued = start > 0 && !char.IsWhiteSpace(text[start - 1]),
            Negative = start > 0 && text[start - 1] is '-' or '−' && (start == 1 || char.IsWhiteSpace(text[start - 2])),
        });
        return at;
    }

    /// <summary>"1,140": one to three digits, a comma, exactly three digits.</summary>
    private static bool IsThousands(string text, int at, int digitsBefore) =>
        digitsBefore <= 3 && at + 3 < text.Length + 0 && text[at] == ',' && Digits(text, at + 1) == 3;

    /// <summary>"2,2 kW", "kW 2,2", "0,18", "5,9/3,4 A": a comma between digits, one or two behind it, beside letters of a unit, behind a leading nought, twice around a stroke, or where no other number stands in the row: "6,4", but not "1,2,3".</summary>
    private static bool IsDecimalComma(string text, int start, int at, List<Token> before)
    {
        if (text[at] != ',' || (start > 0 && text[start - 1] is ',' or '-'))
        {
            return false;
        }

        var digits = Digits(text, at + 1);
        var after = at + 1 + digits;
        if (after < text.Length && text[after] == ' ')
        {
            after++;
        }

        var isPaired = digits is 1 or 2 && after + 1 < text.Length && text[after] == '/' && Digits(text, after + 1) is > 0 and var whole && after + 1 + whole < text.Length && text[after + 1 + whole] == ',';
        var isAlone = digits is 1 or 2 && at - start <= 3 && (after >= text.Length || text[after] != ',') && !NumberBefore(text, start);
        var isSmall = digits is > 0 and <= 3 && at == start + 1 && text[start] == '0';
        var isLabelled = digits is 1 or 2 && before.Count > 0 && UnitLabels.Contains(before[^1].Text) && before[^1].End >= start - 1;
        return isSmall || isLabelled || isPaired || isAlone || (digits is 1 or 2 && Array.Exists(UnitWords, word => text.AsSpan(after).StartsWith(word, StringComparison.OrdinalIgnoreCase)))
            || digits is 1 or 2 && after < text.Length && text[after] is 'k' or 'K' or 'A' or 'V' or 'Ω' or 'o' or 'O' or 'h' or 'H' or 'W' or 'µ' or 'μ' or 'u' or 'M';
    }

    /// <summary>Whether a comma ties it to a number before it.</summary>
    private static bool NumberBefore(string text, int start) => text.AsSpan(0, start).TrimEnd() is [.., ','] before && before[..^1].TrimEnd() is [.., var last] && char.IsAsciiDigit(last);

    private static int Digits(string text, int at)
    {
        var count = 0;
        while (at + count < text.Length && count < 5 && char.IsAsciiDigit(text[at + count]))
        {
            count++;
        }

        return count;
    }

    private static int Word(string text, int start, List<Token> tokens)
    {
        var at = start;
        while (at < text.Length && (IsLetter(text[at]) || (IsApostrophe(text[at]) && at + 1 < text.Length && IsLetter(text[at + 1]))))
        {
            at++;
        }

        tokens.Add(new Token(TokenKind.Word, start, at, Plain(text.AsSpan(start, at - start), tokens))
        {
            Glued = start > 0 && !char.IsWhiteSpace(text[start - 1]),
        });
        return at;
    }

    private static bool IsApostrophe(char c) => c is '\'' or '’' or '‘' or '`' or '´';

    /// <summary>"She'll" is no shell.</summary>
    private static bool IsWill(ReadOnlySpan<char> word) => word.Length is 5 or 6 && IsApostrophe(word[^3]) && word.EndsWith("ll", StringComparison.OrdinalIgnoreCase) && word[..^3].EndsWith("he", StringComparison.OrdinalIgnoreCase);

    /// <summary>Lower case without apostrophes; signs of units in letters. "M" behind a number is mega, never milli.</summary>
    private static string Plain(ReadOnlySpan<char> word, List<Token> tokens)
    {
        if (word.Length == 1 && word[0] is 'Ø' or 'ø' or 'Φ' or 'φ')
        {
            return "ph";
        }

        if (IsWill(word))
        {
            return word.Length == 6 ? "she" : "he";
        }

        var behindNumber = tokens.Count > 0 && tokens[^1].Kind == TokenKind.Number;
        if (word[0] == 'M' && behindNumber && (word.Length == 1 || word[1] is 'Ω' or 'Ω' || word[1..].StartsWith("ohm", StringComparison.OrdinalIgnoreCase)))
        {
            return "megohm";
        }

        var plain = new System.Text.StringBuilder(word.Length + 2);
        foreach (var c in word)
        {
            _ = c switch
            {
                'Ω' or 'Ω' or 'ω' => plain.Append("ohm"),
                'µ' or 'μ' => plain.Append('u'),
                _ when IsApostrophe(c) => plain,
                _ => plain.Append(char.ToLowerInvariant(c)),
            };
        }

        return plain.ToString();
    }

    private static int Mark(string text, int at, List<Token> tokens)
    {
        var c = text[at];
        if (c is '°' or 'º')
        {
            var letter = at + 1 < text.Length && text[at + 1] == ' ' ? at + 2 : at + 1;
            if (letter < text.Length && text[letter] is 'C' or 'c' or 'F' or 'f' && (letter + 1 == text.Length || !IsLetter(text[letter + 1])))
            {
                tokens.Add(new Token(TokenKind.Word, at, letter + 1, text[letter] is 'C' or 'c' ? "degc" : "degf"));
                return letter + 1;
            }
        }

        if (c == '%' || (c == '~' && tokens.Count > 0 && tokens[^1].Kind == TokenKind.Number && tokens[^1].End == at))
        {
            tokens.Add(new Token(TokenKind.Word, at, at + 1, c == '%' ? "percent" : tokens[^1].Value < LeastHertz ? "ph" : "hz") { Glued = true }); // "3~" are phases, "50~" hertz
            return at + 1;
        }

        var sign = c switch { '–' or '‑' or '−' => "-", '—' => "—", '\n' => "\n", '’' => "'", _ => c.ToString() };
        tokens.Add(new Token(TokenKind.Mark, at, at + 1, sign) { Glued = at > 0 && !char.IsWhiteSpace(text[at - 1]) });
        return at + 1;
    }

    /// <summary>Puts "T" and "4" together to a tag, "3", "R" and "3" to a number in ohms, "8 point 9" to a number.</summary>
    private static List<Token> Joined(List<Token> tokens, string text)
    {
        var joined = new List<Token>(tokens.Count);
        var rings = Enumerable.Range(0, tokens.Count).Any(at => tokens[at] is { IsWhole: true } && At(tokens, at + 1) is { Text: "u" } next && IsOfRing(tokens[at], next, text));
        for (var at = 0; at < tokens.Count; at++)
        {
            var (token, next, third) = (tokens[at], At(tokens, at + 1), At(tokens, at + 2));
            if (IsNumberGlued(token, next, third) && Prefix(next!.Text) is { } factor && third!.IsWhole)
            {
                var value = token.Value + (third.Value / Math.Pow(10, third.Text.Length));
                joined.Add(new Token(TokenKind.Number, token.Start, third.End, text[token.Start..third.End]) { Value = value * factor, InOhms = true });
                at += 2;
            }
            else if (token.IsWhole && next is { Text: "point" } && third is { IsWhole: true })
            {
                joined.Add(new Token(TokenKind.Number, token.Start, third.End, text[token.Start..third.End]) { Value = token.Value + (third.Value / Math.Pow(10, third.Text.Length)), Glued = token.Glued });
                at += 2;
            }
            else if (IsNumberGlued(token, next, third) && next!.Text is "u" or "v" or "w" && third!.IsWhole)
            {
                joined.Add(new Token(TokenKind.Tag, token.Start, third.End, text[token.Start..third.End].ToLowerInvariant()));
                at += 2;
            }
            else if (rings && IsOfRing(token, next, text) && third is not { Kind: TokenKind.Number, Glued: true })
            {
                joined.Add(new Token(TokenKind.Tag, token.Start, next!.End, text[token.Start..next.End].ToLowerInvariant()));
                at++;
            }
            else if (token.Kind == TokenKind.Word && token.Text.Length <= 2 && next is { IsWhole: true, Glued: true } && next.Text.Length <= 3 && !BehindNumber(token, joined))
            {
                joined.Add(new Token(TokenKind.Tag, token.Start, next.End, text[token.Start..next.End].ToLowerInvariant()) { Glued = token.Glued });
                at++;
            }
            else
            {
                joined.Add(token.Is("n") && IsAnd(tokens, at, text) ? new Token(TokenKind.Word, token.Start, token.End, "and") : token);
            }
        }

        return joined;
    }

    /// <summary>"1U 1V 1W": terminals of a motor of several speeds, where one of them is a U; by themselves they are volts and watts.</summary>
    private static bool IsOfRing(Token number, Token? letter, string text) => number is { IsWhole: true, Value: >= 1 and <= MostSpeeds }
        && letter is { Kind: TokenKind.Word, Glued: true, Text: "u" or "v" or "w" } && char.IsUpper(text[letter.Start]);

    /// <summary>"Wiggle the flex n it comes back": a small n between words joins them; "3 to n" and "n is 4" name a lead.</summary>
    private static bool IsAnd(List<Token> tokens, int at, string text) => at > 0 && text[tokens[at].Start] == 'n' && !tokens[at].Glued
        && tokens[at - 1] is { Kind: TokenKind.Word } before && !Namers.Contains(before.Text)
        && At(tokens, at + 1) is { Kind: TokenKind.Word, Glued: false } after && !Namers.Contains(after.Text);

    private static Token? At(List<Token> tokens, int at) => at < tokens.Count ? tokens[at] : null;

    private static bool BehindNumber(Token token, List<Token> before) => token.Glued && before.Count > 0 && before[^1].Kind == TokenKind.Number;

    private static bool IsNumberGlued(Token first, Token? second, Token? third) =>
        first.IsWhole && second is { Kind: TokenKind.Word, Glued: true, Text.Length: 1 } && third is { Kind: TokenKind.Number, Glued: true };

    private static double? Prefix(string letter) => letter switch { "r" => 1, "k" => 1000, "m" => 1e6, _ => null };

    private static List<Token> Places(List<Token> tokens)
    {
        var (sentence, clause) = (0, 0);
        for (var at = 0; at < tokens.Count; at++)
        {
            var token = tokens[at];
            if (token.Kind == TokenKind.Mark)
            {
                var ends = token.Text is "." or "!" or "?" or "\n" or ";" or "·" or "…" && At(tokens, at + 1) is not { Text: ")" };
                sentence += ends ? 1 : 0;
                clause += ends || token.Text is "," or "(" or ")" or ":" or "—" || (token.Is("-") && !token.Glued) ? 1 : 0;
            }

            (token.Sentence, token.Clause) = (sentence, clause);
        }

        return tokens;
    }
}
