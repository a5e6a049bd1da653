using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>A kind of work that the gate opens or closes, and what each person may do of it before any condition is looked at.</summary>
public sealed record GateTask
{
    /// <summary>A task id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary>What it is called in a sentence.</summary>
    public required string Name { get; init; }

    /// <summary><c>look</c>, <c>dead</c>, <c>powered</c> or <c>installation</c>: what rows of conditions may name instead of single tasks.</summary>
    public required string Group { get; init; }

    /// <summary>How much dearer a minute of it is than a minute of looking, for its risk; 1 or more.</summary>
    public required double CostFactor { get; init; }

    /// <summary>What each role may do, by role id.</summary>
    public required IReadOnlyDictionary<string, GateRow> Roles { get; init; }

    /// <summary>Where the division of work comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as sentences of the book: why a role may not do it, <c>gate.task.ID.ROLE</c>.</summary>
    public IEnumerable<Sentence> Sentences() => Roles.Where(role => role.Value.Reason is not null)
        .Select(role => new Sentence { Id = $"gate.task.{Id}.{role.Key}", Text = role.Value.Reason! });
}

/// <summary>One cell of the gate: refused, or open once the named confirmations are given (at once where there are none).</summary>
public sealed record GateRow
{
    /// <summary>The roles it holds for; left out where the cell already stands under a role, or for all.</summary>
    public IReadOnlyList<string> Roles { get; init; } = [];

    /// <summary>Task ids or group names; left out where the cell already stands under a task.</summary>
    public IReadOnlyList<string> Tasks { get; init; } = [];

    /// <summary>Not open to this role at all.</summary>
    public bool Refuse { get; init; }

    /// <summary>Who takes it over where it is refused, or <see langword="null"/>.</summary>
    public string? ReferTo { get; init; }

    /// <summary>The confirmations it waits for.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];

    /// <summary>Why it is refused to this role; needed in the cells of a task, a condition has its own reason.</summary>
    public string? Reason { get; init; }
}

/// <summary>A condition of the case that closes work or adds confirmations to it.</summary>
public sealed record GateCondition
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary>What it means for the work, as the technician reads it.</summary>
    public required string Reason { get; init; }

    /// <summary>The same in plainer words.</summary>
    public string? Homeowner { get; init; }

    /// <summary>What makes it hold; one is enough.</summary>
    public required IReadOnlyList<GateTrigger> When { get; init; }

    /// <summary>Whether everything stops until the machine is isolated anew.</summary>
    public bool Stops { get; init; }

    /// <summary>The roles that touch nothing more of the machine until whoever it is referred to has seen it.</summary>
    public IReadOnlyList<string> KeepsOff { get; init; } = [];

    /// <summary>Whether confirmations given before the condition arose no longer count.</summary>
    public bool Renews { get; init; }

    /// <summary>The cells that it changes; none for a condition that only warns.</summary>
    public IReadOnlyList<GateRow> Rows { get; init; } = [];

    /// <summary>The cautions that come with it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A line for the card that goes with the motor, or <see langword="null"/>.</summary>
    public string? Tell { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as sentences of the book: <c>gate.condition.ID</c> and <c>gate.tell.ID</c>.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = $"gate.condition.{Id}", Text = Reason, Homeowner = Homeowner },
        .. Tell is null ? Array.Empty<Sentence>() : [new Sentence { Id = $"gate.tell.{Id}", Text = Tell }],
    ];
}

/// <summary>What makes a condition hold; exactly one kind of member is given.</summary>
public sealed record GateTrigger
{
    /// <summary>A symptom that was seen.</summary>
    public string? Symptom { get; init; }

    /// <summary>What the motor drives, by application id.</summary>
    public IReadOnlyList<string> Applications { get; init; } = [];

    /// <summary>Words for it in the person's own text, lower case; each matches a whole word or phrase.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>A test that was made.</summary>
    public string? Test { get; init; }

    /// <summary>More than this was measured by that test, in its own unit.</summary>
    public double? Above { get; init; }

    /// <summary>The question of a choice that was taken.</summary>
    public string? Question { get; init; }

    /// <summary>The options of that choice.</summary>
    public IReadOnlyList<string> Options { get; init; } = [];

    /// <summary>Supply or plate has this many phases.</summary>
    public int? Phases { get; init; }

    /// <summary>The supply, or each of the plate's volts, is above this many volts.</summary>
    public double? VoltsAbove { get; init; }

    /// <summary>Its links or its plate are for far less volts than it is fed.</summary>
    public bool FedTooHigh { get; init; }

    /// <summary>A question that was answered with "I can't tell".</summary>
    public string? Unknown { get; init; }

    /// <summary><c>present</c>: there is a capacitor; <c>possible</c>: nothing rules one out.</summary>
    public string? Capacitor { get; init; }

    /// <summary>A confirmation that was answered with "I can't".</summary>
    public string? Denied { get; init; }

    /// <summary>The latest insulation reading is below this many megohms as read.</summary>
    public double? MegohmsBelow { get; init; }

    /// <summary>A danger word that was heard, by its id.</summary>
    public string? Danger { get; init; }

    /// <summary>A goal of the case.</summary>
    public string? Goal { get; init; }

    /// <summary>Roles whom it always holds for.</summary>
    public IReadOnlyList<string> Roles { get; init; } = [];
}

/// <summary>Something that a person confirms before work opens.</summary>
public sealed record GateConfirmation
{
    /// <summary>A stable id; the id of the confirm fact.</summary>
    public required string Id { get; init; }

    /// <summary>What is asked, as a question.</summary>
    public required string Ask { get; init; }

    /// <summary>The same in plainer words.</summary>
    public string? Homeowner { get; init; }

    /// <summary>What has to be so, as the rest of a sentence that begins with "First:".</summary>
    public required string First { get; init; }

    /// <summary>The same at home, where it is less or another thing.</summary>
    public string? HomeownerFirst { get; init; }

    /// <summary>How it is done, step by step.</summary>
    public IReadOnlyList<string> How { get; init; } = [];

    /// <summary>The same steps at home, one for each of <see cref="How"/>; left out where they are the same.</summary>
    public IReadOnlyList<string> HomeownerHow { get; init; } = [];

    /// <summary>Words that say it is done, beside "done" and "yes", as phrases.</summary>
    public IReadOnlyList<string> Heard { get; init; } = [];

    /// <summary>What people say who have done less than this, each with the answer to it.</summary>
    public IReadOnlyList<ShortOfEnough> Short { get; init; } = [];

    /// <summary>Whether it must be confirmed anew after every time that power was on.</summary>
    public bool LapsesWithPower { get; init; }

    /// <summary>Whether it must be confirmed anew once the motor was isolated again: somebody may have changed something since.</summary>
    public bool LapsesWithIsolation { get; init; }

    /// <summary>An insulation reading that is judged a pass confirms it too.</summary>
    public bool MetByInsulation { get; init; }

    /// <summary>An earth reading that is judged a pass confirms it too.</summary>
    public bool MetByEarth { get; init; }

    /// <summary>Seconds that it takes.</summary>
    public required double Seconds { get; init; }

    /// <summary>The cautions that come with it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>Its words as sentences of the book: <c>confirmation.ID.ask</c>, <c>confirmation.ID.first</c>, <c>confirmation.ID.short-1</c> and <c>confirmation.ID.how-1</c>.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = $"confirmation.{Id}.ask", Text = Ask, Homeowner = Homeowner },
        new() { Id = FirstId, Text = First, Homeowner = HomeownerFirst },
        .. Short.Select((less, at) => new Sentence { Id = ShortId(at), Text = less.Text, Homeowner = less.Homeowner }),
        .. Sentence.Steps($"confirmation.{Id}", How, HomeownerHow),
    ];

    /// <summary>The id of the words for what has to be so.</summary>
    public string FirstId => $"confirmation.{Id}.first";

    /// <summary>The id of the sentence that answers who has done less.</summary>
    /// <param name="at">Which of <see cref="Short"/>.</param>
    public string ShortId(int at) => $"confirmation.{Id}.short-{at + 1}";
}

/// <summary>Something that people take for a confirmation and that is less: "it's off at the switch".</summary>
public sealed record ShortOfEnough
{
    /// <summary>Words that say it, as phrases.</summary>
    public required IReadOnlyList<string> Heard { get; init; }

    /// <summary>Words that say so even beside words that it is done: "discharged with a screwdriver".</summary>
    public IReadOnlyList<string> Always { get; init; } = [];

    /// <summary>Whether it is a part of what is asked, so that a yes beside it says the rest: "yes, locked off".</summary>
    public bool IsPart { get; init; }

    /// <summary>Why it is not enough, and what is.</summary>
    public required string Text { get; init; }

    /// <summary>The same in plainer words.</summary>
    public string? Homeowner { get; init; }
}

/// <summary>A caution.</summary>
public sealed record CautionNote
{
    /// <summary>A caution id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary><c>take-care</c>, <c>stop-and-fix</c> or <c>stop-get-qualified-person</c>.</summary>
    public required string Level { get; init; }

    /// <summary>What to do or not to do.</summary>
    public required string What { get; init; }

    /// <summary>Why.</summary>
    public required string Why { get; init; }

    /// <summary>Who does it.</summary>
    public required string Who { get; init; }

    /// <summary>How soon.</summary>
    public required string HowSoon { get; init; }

    /// <summary>What, in plainer words.</summary>
    public string? Homeowner { get; init; }

    /// <summary>Why, where <see cref="Why"/> speaks of what nobody has at home.</summary>
    public string? HomeownerWhy { get; init; }

    /// <summary>Whether no other caution is said beside it: what they tell to do would be wrong there.</summary>
    public bool Alone { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>Whether it tells of a danger to life that is there now.</summary>
    public bool IsDangerNow => Level == "stop-get-qualified-person" && HowSoon == "now";

    /// <summary>Greater is said earlier: a danger to life that is there now comes before a referral.</summary>
    public int Weight => Level switch
    {
        _ when IsDangerNow => 4,
        "stop-and-fix" when HowSoon == "now" => 3,
        "stop-get-qualified-person" => 2,
        "stop-and-fix" => 1,
        _ => 0,
    };

    /// <summary>Its words as a sentence of the book: <c>caution.ID</c>, what and why.</summary>
    public Sentence Sentence() => new() { Id = $"caution.{Id}", Text = $"{What} {Why}", Homeowner = Homeowner is null && HomeownerWhy is null ? null : $"{Homeowner ?? What} {HomeownerWhy ?? Why}" };
}
