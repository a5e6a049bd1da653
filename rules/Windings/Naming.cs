namespace WireCoach.Rules.Windings;

/// <summary>Of all ways to lay leads that no reading tells apart, the one in which leads take the first places as the readings name them: in whatever order they were tried.</summary>
internal sealed class Naming
{
    private readonly Pattern _pattern;
    private readonly int[] _other;
    private readonly bool[] _taken;
    private readonly bool[][] _keeps;

    public Naming(Pattern pattern)
    {
        _pattern = pattern;
        _other = new int[pattern.Blocks.Length];
        _taken = new bool[_other.Length];
        _keeps = Array.ConvertAll(pattern.Blocks, block => new bool[block.Symmetries.Length]);
    }

    /// <summary>By lead the terminal in that way.</summary>
    /// <param name="terminalOf">By lead the terminal in some way.</param>
    /// <param name="order">The leads in the order in which they are to take places; all of them.</param>
    public int[] Of(int[] terminalOf, int[] order)
    {
        Array.Fill(_other, -1);
        Array.Clear(_taken);
        Array.ForEach(_keeps, keeps => Array.Fill(keeps, true));
        var named = new int[terminalOf.Length];
        foreach (var lead in order)
        {
            var block = _pattern.Blocks[_pattern.BlockOf[terminalOf[lead]]];
            if (_other[block.Index] < 0)
            {
                _other[block.Index] = Array.FindIndex(_pattern.Blocks, other => other.Class == block.Class && !_taken[other.Index]);
                _taken[_other[block.Index]] = true;
            }

            named[lead] = _pattern.Blocks[_other[block.Index]].Terminals[First(block, Array.IndexOf(block.Terminals, terminalOf[lead]))];
        }

        return named;
    }

    /// <summary>The first place to which the exchanges that are left bring a place; only those that bring it there are left then.</summary>
    private int First(Block block, int place)
    {
        var (first, keeps) = (int.MaxValue, _keeps[block.Index]);
        for (var at = 0; at < keeps.Length; at++)
        {
            first = keeps[at] ? Math.Min(first, block.Symmetries[at][place]) : first;
        }

        for (var at = 0; at < keeps.Length; at++)
        {
            keeps[at] &= block.Symmetries[at][place] == first;
        }

        return first;
    }
}
