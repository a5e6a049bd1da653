using System.Text;

namespace WireCoach.WebUi.Diagrams;

/// <summary>How much room a text takes, on the wide side for any common sans-serif.</summary>
internal static class Lettering
{
    public const double Chip = 13;

    public const double ChipLine = 15;

    public const double Label = 11;

    public const double LabelLine = 13;

    public static double Width(string text, double size, bool bold) =>
        size * (bold ? 1.08 : 1) * text.EnumerateRunes().Sum(Em);

    /// <summary>The text in lines that are no wider than asked: broken at spaces, slashes and hyphens, within a word only where nothing else helps.</summary>
    public static IReadOnlyList<string> Lines(string text, double width, double size, bool bold)
    {
        var lines = new List<string>();
        foreach (var word in Words(text))
        {
            var rest = word;
            if (lines.Count > 0 && Width(Joined(lines[^1], rest), size, bold) <= width)
            {
                lines[^1] = Joined(lines[^1], rest);
                continue;
            }

            while (Width(rest, size, bold) > width && rest.Length > 1)
            {
                var fits = Enumerable.Range(1, rest.Length - 1).Last(length => length == 1 || Width(rest[..length], size, bold) <= width);
                lines.Add(rest[..fits]);
                rest = rest[fits..];
            }

            lines.Add(rest);
        }

        return lines.Count == 0 ? [string.Empty] : lines;
    }

    private static string Joined(string line, string word) => line[^1] is '/' or '-' ? line + word : $"{line} {word}";

    private static IEnumerable<string> Words(string text)
    {
        var word = new StringBuilder();
        foreach (var letter in text)
        {
            if (letter != ' ')
            {
                _ = word.Append(letter);
            }

            if (letter is ' ' or '/' or '-' && word.Length > 0)
            {
                yield return word.ToString();
                _ = word.Clear();
            }
        }

        if (word.Length > 0)
        {
            yield return word.ToString();
        }
    }

    private static double Em(Rune rune) => rune.Value switch
    {
        ' ' or '\u00a0' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' or 'i' or 'j' or 'l' or 'I' => 0.36,
        'm' or 'w' or 'M' or 'W' or '%' or '@' => 0.98,
        >= 'A' and <= 'Z' => 0.76,
        > 0x2E80 => 1.05,
        _ => 0.64,
    };
}
