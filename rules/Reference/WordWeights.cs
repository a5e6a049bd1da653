using System.Globalization;

namespace WireCoach.Rules.Reference;

/// <summary>Words and numbers in turn, as they are written in the knowledge: "hum 0.8 +growl -0.4".</summary>
public static class WordWeights
{
    /// <summary>Each word with its number.</summary>
    public static IEnumerable<(string Word, double Weight)> Of(string written)
    {
        var parts = written.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var at = 0; at + 1 < parts.Length; at += 2)
        {
            yield return (parts[at], double.Parse(parts[at + 1], CultureInfo.InvariantCulture));
        }
    }
}
