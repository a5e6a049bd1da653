namespace WireCoach.Rules.Reference;

/// <summary>Rules or tables by id, and by what they are an edition of.</summary>
/// <typeparam name="T">Rules or tables.</typeparam>
public sealed class TradeBook<T>
    where T : class
{
    private readonly Dictionary<string, T> _all;
    private readonly ILookup<string, T> _editions;
    private readonly Func<T, (int Since, int Until)> _years;

    /// <summary>A book of the given rules or tables.</summary>
    /// <param name="all">Each id once.</param>
    /// <param name="id">The id of one.</param>
    /// <param name="of">What one is an edition of.</param>
    /// <param name="years">The first edition that has it, and the first that no longer has it.</param>
    public TradeBook(IEnumerable<T> all, Func<T, string> id, Func<T, string?> of, Func<T, (int Since, int Until)> years)
    {
        _all = all.ToDictionary(id, StringComparer.Ordinal);
        _editions = _all.Values.ToLookup(one => of(one) ?? id(one), StringComparer.Ordinal);
        _years = years;
    }

    /// <summary>All ids.</summary>
    public IReadOnlyCollection<string> Ids => _all.Keys;

    /// <summary>All of them.</summary>
    public IReadOnlyCollection<T> All => _all.Values;

    /// <summary>The one with this id.</summary>
    /// <param name="id">An id.</param>
    /// <exception cref="KeyNotFoundException">There is none: a wrong program or a wrong knowledge file.</exception>
    public T this[string id] => _all.TryGetValue(id, out var one)
        ? one
        : throw new KeyNotFoundException($"There is no '{id}' in the {typeof(T).Name} knowledge.");

    /// <summary>All editions of one thing.</summary>
    /// <param name="of">What they are editions of.</param>
    public IEnumerable<T> Editions(string of) => _editions[of];

    /// <summary>The one that the adopted edition has.</summary>
    /// <param name="of">What it is an edition of.</param>
    /// <param name="year">The adopted edition.</param>
    /// <exception cref="KeyNotFoundException">No edition of it covers the year: a wrong program or a wrong knowledge file.</exception>
    public T In(string of, int year) =>
        _editions[of].FirstOrDefault(one => _years(one) is var (since, until) && since <= year && year < until)
        ?? throw new KeyNotFoundException($"No edition of '{of}' covers {year} in the {typeof(T).Name} knowledge.");
}
