namespace WireCoach.Rules.Reference;

/// <summary>The words by which people are understood.</summary>
public sealed record Vocabulary
{
    /// <summary>Concepts: words and phrases that mean the same.</summary>
    public required IReadOnlyDictionary<string, WordConcept> Concepts { get; init; }

    /// <summary>What is concluded from concepts that stand together: symptoms, goals, questions, dangers and the like.</summary>
    public required IReadOnlyDictionary<string, WordRule> Rules { get; init; }

    /// <summary>Units in their writings.</summary>
    public required IReadOnlyDictionary<string, UnitWords> Units { get; init; }

    /// <summary>Supplies that people name without figures.</summary>
    public required IReadOnlyDictionary<string, SupplyWords> Supplies { get; init; }

    /// <summary>Terms of the trade, explained.</summary>
    public required IReadOnlyDictionary<string, GlossaryTerm> Glossary { get; init; }

    /// <summary>How strongly each word speaks for each symptom.</summary>
    public required IReadOnlyDictionary<string, ToldWords> Told { get; init; }

    /// <summary>What was learnt of words in their order; there is one.</summary>
    public required IReadOnlyDictionary<string, ToldOrder> Order { get; init; }

    /// <summary>What was learnt of symptoms that are told beside each other.</summary>
    public required IReadOnlyDictionary<string, ToldBeside> Beside { get; init; }
}

/// <summary>How strongly words speak for one symptom, or for its denial.</summary>
public sealed record ToldWords
{
    /// <summary>What stands before a symptom that was denied.</summary>
    public const string Denied = "no/";

    /// <summary>A symptom; <c>no/</c> and a symptom that was denied.</summary>
    public required string Id { get; init; }

    /// <summary>How many of the messages that were learnt from told it.</summary>
    public required int Messages { get; init; }

    /// <summary>The logarithm of its odds where no word speaks for it or against it.</summary>
    public required double Before { get; init; }

    /// <summary>Word and number in turn: a stem, or <c>@</c> and a concept that was said, <c>-@</c> one that was denied; what it adds to the logarithm of the odds.</summary>
    public required string Words { get; init; }
}

/// <summary>What the likelihood of the others adds to the logarithm of the odds of one symptom, or of its denial.</summary>
public sealed record ToldBeside
{
    /// <summary>A symptom; <c>no/</c> and a symptom that was denied.</summary>
    public required string Id { get; init; }

    /// <summary>What is added whatever the others are.</summary>
    public required double Own { get; init; }

    /// <summary>Another of them and number in turn: what it adds where it is certain.</summary>
    public required string Others { get; init; }
}

/// <summary>Networks that tell the symptoms and denials of <see cref="Vocabulary.Told"/>, in the order of their ids, by words in a row; their mean counts.</summary>
public sealed record ToldOrder
{
    /// <summary>Its name.</summary>
    public required string Id { get; init; }

    /// <summary>Numbers that stand for one word; a multiple of eight.</summary>
    public required int Size { get; init; }

    /// <summary>Patterns of each width from one to five words.</summary>
    public required int Filters { get; init; }

    /// <summary>The words that they know: stems, and marks.</summary>
    public required string Words { get; init; }

    /// <summary>What they know of their meanings: <c>@</c> and a concept that was said, <c>-@</c> one that was denied, and whether a word is denied or said aside.</summary>
    public required string Meanings { get; init; }

    /// <summary>The weights of each, in base 64.</summary>
    public required IReadOnlyList<string> Weights { get; init; }
}

/// <summary>Words and phrases that mean the same.</summary>
public sealed record WordConcept
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Words and phrases in any ending; <c>*</c> stands for up to three words, <c>a|b</c> for either, <c>=word</c> for exactly that writing.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>Whether a phrase keeps its single words from meaning anything by themselves.</summary>
    public Swallowing Swallows { get; init; } = Swallowing.All;
}

/// <summary>Which words of a phrase mean nothing by themselves any more.</summary>
public enum Swallowing
{
    /// <summary>All of them: the "start" of "start winding" is no start.</summary>
    All,

    /// <summary>The first: in "started smoking" nothing starts, but something smokes.</summary>
    First,

    /// <summary>None.</summary>
    None,
}

/// <summary>What is concluded from concepts that stand together.</summary>
public sealed record WordRule
{
    /// <summary><c>kind/id</c>, for example <c>symptom/hums-no-start</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Each line is one way of saying it: concepts that all stand in one sentence; <c>-c</c> denied, <c>!c</c> not there, <c>!-c</c> not denied there, <c>~c</c> said or denied.</summary>
    public IReadOnlyList<string> Said { get; init; } = [];

    /// <summary>Ways of denying it, in the same writing. A line of one plain concept in <see cref="Said"/> is denied by that concept's denial without being written here.</summary>
    public IReadOnlyList<string> Denied { get; init; } = [];

    /// <summary>For what stays unsettled: what the words may mean, as <c>kind/id</c>.</summary>
    public IReadOnlyList<string> Reads { get; init; } = [];
}

/// <summary>A unit in its writings.</summary>
public sealed record UnitWords
{
    /// <summary>Its id here; several entries may lead to one unit with different factors.</summary>
    public required string Id { get; init; }

    /// <summary>The unit's id as the contract has it.</summary>
    public required string Unit { get; init; }

    /// <summary>How many of <see cref="Unit"/> one of it is.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>Taken off before the factor, for temperatures.</summary>
    public double Less { get; init; }

    /// <summary>Writings, in lower case; several words where it has them.</summary>
    public IReadOnlyList<string> Written { get; init; } = [];

    /// <summary>Writings that count only right behind a number, without a blank.</summary>
    public IReadOnlyList<string> Glued { get; init; } = [];
}

/// <summary>A supply that people name without figures.</summary>
public sealed record SupplyWords
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>How it is called, in the writing of <see cref="WordConcept.Words"/>.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>The system of the contract, or <see langword="null"/> where the words leave it open.</summary>
    public string? System { get; init; }

    /// <summary>1 or 3.</summary>
    public int? Phases { get; init; }

    /// <summary>Volts by region (<c>na</c>, <c>iec</c>), where the name settles them.</summary>
    public IReadOnlyDictionary<string, double> Volts { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>Hertz by region, where the name settles them.</summary>
    public IReadOnlyDictionary<string, double> Hertz { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>How many times the volts that stand beside the words, for "two legs of 120".</summary>
    public double VoltsFactor { get; init; } = 1;

    /// <summary>Where the figures come from.</summary>
    public string? Source { get; init; }
}

/// <summary>A term of the trade, explained.</summary>
public sealed record GlossaryTerm
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The term.</summary>
    public required string Term { get; init; }

    /// <summary>Other names for it.</summary>
    public IReadOnlyList<string> Synonyms { get; init; } = [];

    /// <summary>What it is, for anyone.</summary>
    public required string Plain { get; init; }

    /// <summary>What it is, for the trade.</summary>
    public required string Technician { get; init; }
}
