namespace WireCoach.Rules.Quantities;

/// <summary>Where a figure or a rule comes from, so that a person could look it up.</summary>
public sealed record Source
{
    /// <summary>The document: a standard, a code, a textbook, or "own computation" / "own judgement".</summary>
    public required string Title { get; init; }

    /// <summary>Clause, table, chapter or row.</summary>
    public string? Place { get; init; }

    /// <summary>Edition or year, where editions differ.</summary>
    public string? Edition { get; init; }

    /// <summary>How firmly it was checked; anything but read or computed is a planning figure.</summary>
    public SourceBasis Basis { get; init; } = SourceBasis.Secondary;

    /// <summary>Derived here from circuit laws or arithmetic.</summary>
    /// <param name="place">What was derived.</param>
    public static Source Computation(string place) => new() { Title = "own computation", Place = place, Basis = SourceBasis.Computed };

    /// <summary>Title, place and edition in one line.</summary>
    public override string ToString() => Basis is SourceBasis.Primary or SourceBasis.Computed ? Name() : $"{Name()}; {Remark}";

    /// <summary>Title, place and edition, to stand inside a sentence.</summary>
    public string Name()
    {
        var place = Place is null ? Title : $"{Title}, {Place}";
        return Edition is null ? place : $"{place} ({Edition})";
    }

    private string Remark => Basis == SourceBasis.Judgement ? "own judgement" : "planning figure";
}

/// <summary>How firmly a source was checked.</summary>
public enum SourceBasis
{
    /// <summary>Read in a reprint or a secondary page, not in the standard itself.</summary>
    Secondary,

    /// <summary>Read in the published document itself.</summary>
    Primary,

    /// <summary>Derived here from circuit laws or arithmetic.</summary>
    Computed,

    /// <summary>Common knowledge of the trade, not read again.</summary>
    Trade,

    /// <summary>Our own threshold: a design choice that may be challenged.</summary>
    Judgement,
}
