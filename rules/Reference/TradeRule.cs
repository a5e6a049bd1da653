using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>One rule of the trade: what it states, its formula, its figures and where they come from.</summary>
/// <remarks>The rules in code name no figure; they ask for it here by name and hand the rule on with the value.</remarks>
public sealed record TradeRule
{
    /// <summary>A stable id in kebab-case.</summary>
    public required string Id { get; init; }

    /// <summary>The rule of which this is one edition; the id where nothing else is said.</summary>
    public string? Of { get; init; }

    /// <summary>What it states, in a few words.</summary>
    public required string States { get; init; }

    /// <summary>The formula in symbols, where there is one.</summary>
    public string Formula { get; init; } = string.Empty;

    /// <summary>The figures by name, in kebab-case; the name carries the unit where there is one.</summary>
    public IReadOnlyDictionary<string, double> Figures { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>The first edition (year) that says so; 0 for always.</summary>
    public int Since { get; init; }

    /// <summary>The first edition (year) that no longer says so.</summary>
    public int Until { get; init; } = int.MaxValue;

    /// <summary>Where editions put it under other numbers, the oldest first.</summary>
    public IReadOnlyList<EditionPlace> Places { get; init; } = [];

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>A figure by its name.</summary>
    /// <param name="figure">The figure's name in kebab-case.</param>
    /// <exception cref="KeyNotFoundException">The rule has no such figure: a wrong program or a wrong knowledge file.</exception>
    public double this[string figure] => Figures.TryGetValue(figure, out var value)
        ? value
        : throw new KeyNotFoundException($"The rule '{Id}' has no figure '{figure}'.");

    /// <summary>A value that this rule made.</summary>
    /// <param name="value">The unrounded value.</param>
    /// <param name="unit">The unit's id.</param>
    /// <param name="inputs">The inputs with their units.</param>
    /// <param name="year">The adopted edition, where editions count.</param>
    /// <param name="before">The steps that led to the inputs.</param>
    public Quoted Quote(double value, string unit, string inputs, int? year = null, params IReadOnlyList<TrailStep> before) =>
        Quoted.Of(value, unit, Id, EditionPlace.In(Source, Places, year), [.. before, new TrailStep(States, Formula, inputs, Units.Text(value, unit))]);

    /// <summary>Something that is not a number, and that this rule made.</summary>
    /// <param name="text">The text as it may be printed.</param>
    /// <param name="unit">The kind of thing.</param>
    /// <param name="inputs">The inputs with their units.</param>
    /// <param name="year">The adopted edition, where editions count.</param>
    /// <param name="before">The steps that led to the inputs.</param>
    public Quoted Name(string text, string unit, string inputs, int? year = null, params IReadOnlyList<TrailStep> before) =>
        Quoted.Named(text, unit, Id, EditionPlace.In(Source, Places, year), [.. before, new TrailStep(States, Formula, inputs, text)]);
}

/// <summary>Where an edition puts a rule or a table.</summary>
public sealed record EditionPlace
{
    /// <summary>The first edition (year) with this number.</summary>
    public required int Since { get; init; }

    /// <summary>Clause or table.</summary>
    public required string Place { get; init; }

    /// <summary>The source as the adopted edition has it.</summary>
    internal static Source In(Source source, IReadOnlyList<EditionPlace> places, int? year) => year is not { } adopted ? source : source with
    {
        Place = places.LastOrDefault(place => place.Since <= adopted)?.Place ?? source.Place,
        Edition = source.Edition ?? $"edition {adopted}",
    };
}
