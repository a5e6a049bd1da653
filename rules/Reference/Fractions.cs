using System.Globalization;

namespace WireCoach.Rules.Reference;

/// <summary>Sizes as the trade writes them: 1/6, 3/4, 1 1/2, 1-1/2, 7.5.</summary>
public static class Fractions
{
    /// <summary>The number, or <see langword="null"/> where the text is no size.</summary>
    /// <param name="text">A size as written.</param>
    public static double? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Trim().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length switch
        {
            _ when text.TrimStart().StartsWith('-') => null,
            1 => Part(parts[0]),
            2 when parts[1].Contains('/', StringComparison.Ordinal) && Part(parts[0]) is { } whole && Part(parts[1]) is { } rest => whole + rest,
            _ => null,
        };
    }

    private static double? Part(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? Plain(text)
            : Plain(text[..slash]) is { } above && Plain(text[(slash + 1)..]) is { } below and > 0 ? above / below
            : null;
    }

    private static double? Plain(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
