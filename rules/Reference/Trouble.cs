using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>A kind of motor, as far as its faults go.</summary>
public sealed record MotorFamily
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>How often it is brought, against the other families; any positive scale.</summary>
    public required double Weight { get; init; }

    /// <summary>1 or 3 phases; 0 for direct current.</summary>
    public required int Phases { get; init; }

    /// <summary>Whether it has a capacitor for the start; <see langword="null"/> where some have.</summary>
    public bool? StartCapacitor { get; init; }

    /// <summary>Whether it has a capacitor to run; <see langword="null"/> where some have.</summary>
    public bool? RunCapacitor { get; init; }

    /// <summary>Whether it has brushes; <see langword="null"/> where some have.</summary>
    public bool? Brushes { get; init; }

    /// <summary>Whether it has a capacitor of either kind; <see langword="null"/> where some have.</summary>
    public bool? HasCapacitor => StartCapacitor == true || RunCapacitor == true ? true : StartCapacitor == false && RunCapacitor == false ? false : null;

    /// <summary>Other names for it, in kebab-case.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>The layouts that belong to it.</summary>
    public IReadOnlyList<string> Layouts { get; init; } = [];

    /// <summary>Applications in which it is usual.</summary>
    public IReadOnlyList<string> OftenIn { get; init; } = [];

    /// <summary>Applications in which it is hardly ever met.</summary>
    public IReadOnlyList<string> SeldomIn { get; init; } = [];

    /// <summary>Where the weight comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>Something that a person notices.</summary>
public sealed record SymptomNote
{
    /// <summary>A symptom id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary>What was noticed, in a few words.</summary>
    public required string Name { get; init; }

    /// <summary>How likely a person notices it where it is there; 0 to 1. A denial counts only as far as it would have been noticed.</summary>
    public required double Noticed { get; init; }

    /// <summary>How likely a person who noticed it tells it unasked; 0 to 1. What is not told counts only as far as it would have been.</summary>
    public required double Told { get; init; }

    /// <summary>How often it is reported with causes that do not bring it; 0 to 1.</summary>
    public required double Usual { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as a sentence of the book: <c>symptom.ID</c>.</summary>
    public Sentence Sentence() => new() { Id = $"symptom.{Id}", Text = Name };
}

/// <summary>A test that tells causes apart: how it is done and what each outcome means.</summary>
public sealed record TestGuide
{
    /// <summary>A test id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The question that a person answers with what the test showed.</summary>
    public required string Ask { get; init; }

    /// <summary>The same at home, where less of it can be seen.</summary>
    public string? HomeownerAsk { get; init; }

    /// <summary>The task that the gate must open for it.</summary>
    public required string Task { get; init; }

    /// <summary>Seconds of a person's time once the machine is ready for it.</summary>
    public required double Seconds { get; init; }

    /// <summary>Instruments of which one is needed; empty where hands and eyes do.</summary>
    public IReadOnlyList<string> Instruments { get; init; } = [];

    /// <summary>Families that it makes sense for; empty for all.</summary>
    public IReadOnlyList<string> Families { get; init; } = [];

    /// <summary>Whether it only makes sense on a motor with a capacitor.</summary>
    public bool NeedsCapacitor { get; init; }

    /// <summary>Whether it only makes sense on a motor of which like coils come out, that may be joined one way round or the other.</summary>
    public bool NeedsLikeCoils { get; init; }

    /// <summary>Symptoms that show already what it would: nobody is sent to look whether there is power at a motor that hums.</summary>
    public IReadOnlyList<string> ToldBy { get; init; } = [];

    /// <summary>Why it is worth its time.</summary>
    public required string Why { get; init; }

    /// <summary>How it is done, step by step.</summary>
    public required IReadOnlyList<string> How { get; init; }

    /// <summary>The same steps at home, one for each of <see cref="How"/>; left out where they are the same.</summary>
    public IReadOnlyList<string> HomeownerHow { get; init; } = [];

    /// <summary>How the question of a test is named: this and the test's id.</summary>
    public const string QuestionPrefix = "test.";

    /// <summary>What it can show, the good outcome first.</summary>
    public required IReadOnlyList<TestOutcome> Outcomes { get; init; }

    /// <summary>How a measured value becomes an outcome; <see langword="null"/> for a test of eyes and hands.</summary>
    public ValueRule? Value { get; init; }

    /// <summary>The cautions that come with it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Where the method and its limits come from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as sentences of the book: <c>test.ID.name</c>, <c>.why</c>, <c>.how-1</c>, <c>.reading-OUTCOME</c>, <c>.means-OUTCOME</c>.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = $"test.{Id}.name", Text = Name },
        new() { Id = $"test.{Id}.ask", Text = Ask, Homeowner = HomeownerAsk },
        new() { Id = $"test.{Id}.why", Text = Why },
        .. Sentence.Steps($"test.{Id}", How, HomeownerHow),
        .. Outcomes.SelectMany(outcome => new Sentence[]
        {
            new() { Id = $"test.{Id}.reading-{outcome.Id}", Text = outcome.Reading, Homeowner = outcome.HomeownerReading },
            new() { Id = $"test.{Id}.means-{outcome.Id}", Text = outcome.Means, Homeowner = outcome.Homeowner },
        }),
    ];
}

/// <summary>One outcome of a test.</summary>
public sealed record TestOutcome
{
    /// <summary>Its id within the test.</summary>
    public required string Id { get; init; }

    /// <summary>What the person sees or reads.</summary>
    public required string Reading { get; init; }

    /// <summary>The same at home, where no box is opened.</summary>
    public string? HomeownerReading { get; init; }

    /// <summary>What it means.</summary>
    public required string Means { get; init; }

    /// <summary>What it means for somebody at home, who mends none of it.</summary>
    public string? Homeowner { get; init; }

    /// <summary>Further words that tell it, as phrases.</summary>
    public IReadOnlyList<string> Heard { get; init; } = [];

    /// <summary>How often it shows with causes that do not bear on the test; the outcomes of a test add up to 1.</summary>
    public required double Usual { get; init; }
}

/// <summary>How a measured value becomes an outcome.</summary>
public sealed record ValueRule
{
    /// <summary>What the value is measured against: <c>absolute</c>, <c>plate-volts</c>, <c>plate-amps</c>, <c>marked-microfarads</c>, <c>plate-rpm</c> or <c>spread</c> (of several values, about their mean).</summary>
    public required string Against { get; init; }

    /// <summary>The unit of the value.</summary>
    public required string Unit { get; init; }

    /// <summary>The bands in rising order; a value belongs to the first whose upper end it does not exceed.</summary>
    public required IReadOnlyList<ValueBand> Bands { get; init; }

    /// <summary>The bands where the practice of the IEC draws them elsewhere.</summary>
    public IReadOnlyList<ValueBand>? IecBands { get; init; }

    /// <summary>Several values that lie further from their mean than this share of it mean <see cref="SpreadOutcome"/>.</summary>
    public double? SpreadOver { get; init; }

    /// <summary>The outcome of values that differ.</summary>
    public string? SpreadOutcome { get; init; }

    /// <summary>Where the limits come from.</summary>
    public required Source Source { get; init; }
}

/// <summary>One band of values.</summary>
public sealed record ValueBand
{
    /// <summary>The upper end, a number in the rule's unit or a share; left out for the last band.</summary>
    public double? To { get; init; }

    /// <summary>The outcome that it means.</summary>
    public required string Outcome { get; init; }
}

/// <summary>A cause of trouble: how often, what it looks like, what tests show, what is to be done.</summary>
public sealed record Cause
{
    /// <summary>A cause id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The instruction that it leads to; causes that share it need no test between them.</summary>
    public required string Decision { get; init; }

    /// <summary>What is to be done, as the technician reads it.</summary>
    public required string Repair { get; init; }

    /// <summary>The same for a person at home, who does not do it.</summary>
    public string? Homeowner { get; init; }

    /// <summary>The task that the repair takes.</summary>
    public required string Task { get; init; }

    /// <summary>Who else settles it where the gate refuses that task.</summary>
    public required string ReferTo { get; init; }

    /// <summary>How often it is the cause, by family; any scale, the loader makes each family add up to 1.</summary>
    public required IReadOnlyDictionary<string, double> Families { get; init; }

    /// <summary>The part without which it cannot be: one of <see cref="Parts"/>; <see langword="null"/> where it can be on any motor of its families.</summary>
    public string? Needs { get; init; }

    /// <summary>The parts that a cause may need: <c>capacitor</c>, <c>start-capacitor</c>, <c>run-capacitor</c>, <c>brushes</c>, <c>like-coils</c>.</summary>
    public static IReadOnlyList<string> Parts { get; } = ["capacitor", "start-capacitor", "run-capacitor", "brushes", "like-coils"];

    /// <summary>How likely each symptom is with it; others as usual.</summary>
    public required IReadOnlyDictionary<string, double> Symptoms { get; init; }

    /// <summary>How likely each outcome of a test is with it; what is left over shows as the good outcome.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, double>> Tests { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, double>>(StringComparer.Ordinal);

    /// <summary>The cautions that come with it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Where the figures come from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as sentences of the book: <c>cause.ID.name</c> and <c>cause.ID.repair</c>.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = $"cause.{Id}.name", Text = Name },
        new() { Id = $"cause.{Id}.repair", Text = Repair, Homeowner = Homeowner },
    ];
}

/// <summary>Two causes that are met together.</summary>
public sealed record CausePair
{
    /// <summary>The cause that comes first.</summary>
    public required string First { get; init; }

    /// <summary>The cause that it brings, or that comes with it.</summary>
    public required string Second { get; init; }

    /// <summary>How often the second stands beside the first; 0 to 1.</summary>
    public required double Share { get; init; }

    /// <summary>Why they come together.</summary>
    public required string Why { get; init; }

    /// <summary>Where the share comes from.</summary>
    public required Source Source { get; init; }
}
