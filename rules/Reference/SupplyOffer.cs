using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>A supply that people commonly have, as an option to tap.</summary>
public sealed record SupplyOffer
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary>Where it is met.</summary>
    public required Region Region { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Text { get; init; }

    /// <summary>Volts between the line conductors.</summary>
    public required double Volts { get; init; }

    /// <summary>1 or 3; 0 of direct current.</summary>
    public required int Phases { get; init; }

    /// <summary>Hertz; 0 of direct current.</summary>
    public required double Hertz { get; init; }

    /// <summary>The system's id; none of direct current.</summary>
    public string? System { get; init; }

    /// <summary>The id of the sentence that names it.</summary>
    public string SentenceId => $"supply-offer.{Id}";

    /// <summary>Its name as a sentence of the book.</summary>
    public Sentence Sentence() => new() { Id = SentenceId, Text = Text };

    /// <summary>The fact that tapping it amounts to.</summary>
    public Fact.Supply Fact() => new() { Volts = Volts, Phases = Phases == 0 ? null : Phases, Hertz = Hertz, System = System, How = FactEntry.Form };
}
