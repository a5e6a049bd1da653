using System.Collections;

namespace WireCoach.Service.Sessions;

/// <summary>Numbers for words, so that a session need only hold which ones occur in it. A word is what stands between blanks.</summary>
internal sealed class WordBook
{
    private readonly List<string> _words = [];
    private readonly HashSet<int> _found = [];
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> _bySpan;

    public WordBook() => _bySpan = _numbers.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The numbers of the words in a text, each once.</summary>
    public int[] Of(string text)
    {
        _found.Clear();
        foreach (var range in text.AsSpan().Split(' '))
        {
            var word = text.AsSpan()[range];
            if (word.Length > 0)
            {
                _found.Add(NumberOf(word));
            }
        }

        return [.. _found];
    }

    /// <summary>Which words have this within them.</summary>
    public BitArray Holding(string part)
    {
        var holding = new BitArray(_words.Count);
        for (var number = 0; number < _words.Count; number++)
        {
            holding[number] = _words[number].Contains(part, StringComparison.Ordinal);
        }

        return holding;
    }

    private int NumberOf(ReadOnlySpan<char> word)
    {
        if (!_bySpan.TryGetValue(word, out var number))
        {
            number = _words.Count;
            _words.Add(word.ToString());
            _numbers.Add(_words[number], number);
        }

        return number;
    }
}
