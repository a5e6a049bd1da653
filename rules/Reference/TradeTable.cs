using System.Globalization;
using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>A table of the trade, as printed: rows by key, columns by name.</summary>
public sealed record TradeTable
{
    /// <summary>A stable id in kebab-case.</summary>
    public required string Id { get; init; }

    /// <summary>The table of which this is one edition; the id where nothing else is said.</summary>
    public string? Of { get; init; }

    /// <summary>What it holds, in a few words.</summary>
    public required string States { get; init; }

    /// <summary>What the rows are named by, for example <c>horsepower</c> or <c>awg</c>.</summary>
    public required string Key { get; init; }

    /// <summary>The columns' names.</summary>
    public required IReadOnlyList<string> Columns { get; init; }

    /// <summary>The rows in the order of the table: from small to large.</summary>
    public required IReadOnlyList<TradeRow> Rows { get; init; }

    /// <summary>The first edition (year) that has it; 0 for always.</summary>
    public int Since { get; init; }

    /// <summary>The first edition (year) that no longer has it.</summary>
    public int Until { get; init; } = int.MaxValue;

    /// <summary>Where editions put it under other numbers, the oldest first.</summary>
    public IReadOnlyList<EditionPlace> Places { get; init; } = [];

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>A row by its key, or <see langword="null"/>.</summary>
    /// <param name="key">The key as printed.</param>
    public TradeRow? Row(string key) => Rows.FirstOrDefault(row => string.Equals(row.Key, key, StringComparison.OrdinalIgnoreCase));

    /// <summary>A cell as printed; empty where the table has none.</summary>
    /// <param name="row">A row of this table.</param>
    /// <param name="column">The column's name.</param>
    /// <exception cref="KeyNotFoundException">There is no such column: a wrong program.</exception>
    public string Text(TradeRow row, string column)
    {
        for (var at = 0; at < Columns.Count; at++)
        {
            if (string.Equals(Columns[at], column, StringComparison.Ordinal))
            {
                return row.Cells[at];
            }
        }

        throw new KeyNotFoundException($"The table '{Id}' has no column '{column}'.");
    }

    /// <summary>A cell as a number; <see langword="null"/> where the table has none.</summary>
    /// <param name="row">A row of this table.</param>
    /// <param name="column">The column's name.</param>
    public double? Number(TradeRow row, string column) =>
        Text(row, column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;

    /// <summary>A value that stands in this table.</summary>
    /// <param name="value">The value as printed.</param>
    /// <param name="unit">The unit's id.</param>
    /// <param name="inputs">The row and the column.</param>
    /// <param name="year">The adopted edition, where editions count.</param>
    /// <param name="before">The steps that led to the row.</param>
    public Quoted Quote(double value, string unit, string inputs, int? year = null, params IReadOnlyList<TrailStep> before) =>
        Quoted.Of(value, unit, Id, EditionPlace.In(Source, Places, year), [.. before, new TrailStep(States, string.Empty, inputs, Units.Text(value, unit))]);

    /// <summary>Something that is not a number and stands in this table.</summary>
    /// <param name="text">The text as it may be printed.</param>
    /// <param name="unit">The kind of thing.</param>
    /// <param name="inputs">The row and the column.</param>
    /// <param name="year">The adopted edition, where editions count.</param>
    /// <param name="before">The steps that led to the row.</param>
    public Quoted Name(string text, string unit, string inputs, int? year = null, params IReadOnlyList<TrailStep> before) =>
        Quoted.Named(text, unit, Id, EditionPlace.In(Source, Places, year), [.. before, new TrailStep(States, string.Empty, inputs, text)]);
}

/// <summary>A row of a table.</summary>
public sealed record TradeRow
{
    /// <summary>What the row is named by, as printed.</summary>
    public required string Key { get; init; }

    /// <summary>The cells, one for each column; empty where the table has none.</summary>
    public required IReadOnlyList<string> Cells { get; init; }

    /// <summary>The key as a number; fractions such as 1/6 and 1 1/2 are read.</summary>
    /// <exception cref="FormatException">The key is not a number: a wrong knowledge file.</exception>
    public double Size() => Fractions.Read(Key) ?? throw new FormatException($"'{Key}' is not a size.");
}
