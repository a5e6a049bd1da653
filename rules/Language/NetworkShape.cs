namespace WireCoach.Rules.Language;

/// <summary>How large a <see cref="WordNetwork"/> is, and where in one row of numbers each of its weights stands.</summary>
/// <param name="Words">Words that it knows; one more stands for all others.</param>
/// <param name="Meanings">Meanings that it knows.</param>
/// <param name="Rows">Symptoms and denials that it tells.</param>
/// <param name="Size">Numbers that stand for one word.</param>
/// <param name="Filters">Patterns that it looks for in each width.</param>
internal sealed record NetworkShape(int Words, int Meanings, int Rows, int Size, int Filters)
{
    /// <summary>The longest run of words that one pattern looks at.</summary>
    public const int Widest = 5;

    /// <summary>The words among which one is read: itself, and as many behind it as before it.</summary>
    public const int Near = 5;

    /// <summary>How often each word is read among its neighbours before patterns are looked for.</summary>
    public const int Readings = 1;

    /// <summary>The word that stands for all that are not known.</summary>
    public int Unknown => Words;

    /// <summary>Patterns of all widths.</summary>
    public int Features => Widest * Filters;

    /// <summary>What one reading makes of a word: what may be added to each of its numbers, then how far the gate of each is open.</summary>
    public int Sums => 2 * Size;

    /// <summary>All weights.</summary>
    public int Count => OddsBase + Rows;

    private int Neighbours => (Words + 1 + Meanings) * Size;

    private int OneReading => Sums * ((Near * Size) + 1);

    private int Patterns => Neighbours + (Readings * OneReading);

    private int PatternBases => Patterns + (Filters * Size * Widest * (Widest + 1) / 2);

    private int OddsRows => PatternBases + Features;

    private int OddsBase => OddsRows + (Rows * Features);

    /// <summary>Where what stands for a word begins.</summary>
    public int Word(int word) => word * Size;

    /// <summary>Where what stands for a meaning begins.</summary>
    public int Meaning(int meaning) => (Words + 1 + meaning) * Size;

    /// <summary>Where begin the weights of the neighbours for one sum of one reading.</summary>
    public int Neighbour(int reading, int sum) => Neighbours + (reading * OneReading) + (sum * Near * Size);

    /// <summary>Where stands what a sum of one reading begins with.</summary>
    public int NeighbourBase(int reading, int sum) => Neighbour(reading, Sums) + sum;

    /// <summary>Where a pattern of so many words begins.</summary>
    public int Pattern(int width, int filter) => Patterns + (Filters * Size * width * (width - 1) / 2) + (filter * width * Size);

    /// <summary>Where stands what a pattern begins with.</summary>
    public int PatternBase(int feature) => PatternBases + feature;

    /// <summary>Where the weights of the patterns for one row begin.</summary>
    public int Row(int row) => OddsRows + (row * Features);

    /// <summary>Where stands what a row begins with.</summary>
    public int RowBase(int row) => OddsBase + row;

    /// <summary>How many weights belong together in turn: what stands for a word, a sum, a pattern, a row. Each is kept in steps of its own.</summary>
    public IEnumerable<int> Groups() =>
    [
        .. Enumerable.Repeat(Size, Words + 1 + Meanings),
        .. Enumerable.Repeat(Enumerable.Repeat(Near * Size, Sums).Append(Sums), Readings).SelectMany(reading => reading),
        .. Enumerable.Range(1, Widest).SelectMany(width => Enumerable.Repeat(width * Size, Filters)),
        Features,
        .. Enumerable.Repeat(Features, Rows),
        Rows,
    ];
}
