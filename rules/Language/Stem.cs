namespace WireCoach.Rules.Language;

/// <summary>Takes the commonest English endings off, so that hum, hums, humming and hummed are one word.</summary>
internal static class Stem
{
    /// <summary>Is no form of "quit".</summary>
    private const string Quite = "quite";

    public static string Of(string word)
    {
        if (word == Quite || (word.Length > 0 && char.IsAsciiDigit(word[0])))
        {
            return word;
        }

        var stem = word;
        if (stem.Length > 4 && stem.EndsWith("ing", StringComparison.Ordinal) && HasVowel(stem, 3))
        {
            stem = stem[..^3];
        }
        else if (stem.Length > 4 && stem.EndsWith("ies", StringComparison.Ordinal))
        {
            stem = stem[..^3] + "y";
        }
        else if (stem.Length > 4 && stem.EndsWith("ied", StringComparison.Ordinal))
        {
            stem = stem[..^3] + "y";
        }
        else if (stem.Length > 4 && stem.EndsWith("ed", StringComparison.Ordinal) && stem[^3] != 'e' && HasVowel(stem, 2))
        {
            stem = stem[..^2];
        }
        else if (stem.Length > 3 && stem[^1] == 's' && stem[^2] is not ('s' or 'u' or 'i'))
        {
            stem = stem[..^1];
        }

        if (stem.Length > 3 && stem[^1] == 'e')
        {
            stem = stem[..^1];
        }

        return stem.Length > 3 && stem[^1] == stem[^2] && stem[^1] is not ('a' or 'e' or 'i' or 'o' or 'u') ? stem[..^1] : stem;
    }

    private static bool HasVowel(string word, int ending)
    {
        for (var at = 0; at < word.Length - ending; at++)
        {
            if (word[at] is 'a' or 'e' or 'i' or 'o' or 'u' or 'y')
            {
                return word.Length - ending >= 2;
            }
        }

        return false;
    }
}
