using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>After a danger nothing below it says otherwise: who is kept off a machine is asked for nothing at it, and while all stops no test is spoken of.</summary>
public sealed class DangerTest
{
    private const int Turns = 12;
    private const string Gas = "There is a smell of gas"; // keeps everybody off

    private static readonly Coach Coach = new(Trade.Knowledge);
    private static readonly Troubleshooting Bench = new(Trade.Knowledge);
    private static readonly Listener Listener = new(Trade.Knowledge);

    /// <summary>What is said, and who has to see the machine before somebody at home, a reader of records, an apprentice touches it again.</summary>
    private static readonly (string Said, string? Home, string? Office, string? Apprentice)[] Dangers =
    [
        ("It gave me a shock when I touched the case", "licensed-electrician", "licensed-electrician", null),
        ("I felt a tingle from the mixer", "licensed-electrician", "licensed-electrician", null),
        ("It smokes", null, null, null),
        ("Water got into it", null, null, null),
        ("Somebody put a bigger fuse in", "licensed-electrician", "licensed-electrician", null),
        ("I keep resetting the breaker", "licensed-electrician", "licensed-electrician", null),
        ("It stands in the paint booth", "qualified-hazardous-place-person", "qualified-hazardous-place-person", "qualified-hazardous-place-person"),
        (Gas, "qualified-hazardous-place-person", "qualified-hazardous-place-person", "qualified-hazardous-place-person"),
        ("It is the passenger lift", "equipment-service-firm", "equipment-service-firm", "equipment-service-firm"),
        ("It is a 2300 V motor", "qualified-high-voltage-person", "qualified-high-voltage-person", "qualified-high-voltage-person"),
        ("I felt a tingle from the mixer and water got into it", "licensed-electrician", "licensed-electrician", null),
    ];

    private static readonly string[] Jobs = ["and it hums and does not start.", "and now which wire goes where?", "and there is no earth wire."];

    private static readonly string[] SpeakOfTests = ["diagnosis.next", "diagnosis.this-decides"];

    public static TheoryData<Role, string, string> Table => [.. Enum.GetValues<Role>().SelectMany(role => Dangers.SelectMany(danger => Jobs.Select(job => (role, danger.Said, job))))];

    [Theory]
    [MemberData(nameof(Table))]
    public void What_stands_below_a_danger_never_contradicts_it(Role role, string danger, string job)
    {
        var (_, home, office, apprentice) = Dangers.Single(one => one.Said == danger);
        var keptFor = role switch { Role.Homeowner => home, Role.Manager => office, Role.Apprentice => apprentice, _ => danger == Gas ? home : null };
        var heard = Listener.Hear($"{danger} {job}").Value!;
        var file = CaseFile.From(new CaseOpening(role, Region.NorthAmerica), [.. heard.Facts, .. heard.Dangers.Select(one => SafetyGate.Heard(one.Id, one.Span))]);
        for (var turn = 0; turn < Turns; turn++)
        {
            var assessed = Spoken.Whole(Coach.Assess(file));
            var said = assessed.Say.Select(one => one.Id).ToList();
            Assert.Equal(keptFor, assessed.Gate.KeptFor);
            if (assessed.Gate.Stop || assessed.Next is null)
            {
                Assert.Empty(said.Intersect(SpeakOfTests));
            }

            if (keptFor is not null)
            {
                Assert.Equal("referred", assessed.Status);
                Assert.Equal(assessed.Gate.Stop ? "isolated" : null, assessed.Next?.Id);
                Assert.All(assessed.Say.Where(one => one.Id == "diagnosis.take-it-to"), one => Assert.Contains(Trade.Knowledge.Sentences.Render(Person.Named(keptFor)), Trade.Knowledge.Sentences.Render(one, role), StringComparison.Ordinal));
                Assert.DoesNotContain(said, id => id.EndsWith(".repair", StringComparison.Ordinal));
            }

            if (assessed.Next is not { } asked)
            {
                return;
            }

            Assert.True(asked.Id == "isolated" || assessed.Gate.Opens(asked.Task), $"{asked.Id} is asked, {asked.Task} is shut.");
            var answer = asked.Kind == QuestionKind.Confirm ? new QuestionAnswer { QuestionId = asked.Id, Confirmed = true } : new QuestionAnswer { QuestionId = asked.Id, Unknown = true };
            if (Coach.Read(file, asked, answer).Value is not { } facts)
            {
                return; // a question that takes no "I can't tell"
            }

            file = facts.Aggregate(file, (known, fact) => known.With(fact));
        }
    }

    [Theory]
    [InlineData(Role.Homeowner, "shock-from-frame", "licensed-electrician")]
    [InlineData(Role.Homeowner, "protection-bypassed", "licensed-electrician")]
    public void Nor_does_what_is_computed_without_a_conversation(Role role, string symptom, string keptFor)
    {
        var report = Bench.Examine(CaseFile.From(new CaseOpening(role, Region.NorthAmerica), [new Fact.Symptom { Id = symptom }, new Fact.Symptom { Id = "hums-no-start" }, new Fact.Confirm { Id = "isolated", Confirmed = true }]));
        Assert.Null(report.Faults.Next);
        Assert.Equal((keptFor, keptFor, "refer"), (report.Faults.ReferTo, report.Gate.ReferTo, report.Faults.Status));
    }

    [Fact]
    public void In_practice_nothing_keeps_anybody_off() =>
        Assert.Null(Coach.Assess(CaseFile.From(new CaseOpening(Role.Homeowner, Region.NorthAmerica, Practice: true), [new Fact.Symptom { Id = "shock-from-frame" }])).Gate.KeptFor);

    [Theory]
    [InlineData(Role.Homeowner, "It smokes", "smoke-or-burnt-smell")]
    [InlineData(Role.Technician, "It smokes", "smoke-or-burnt-smell")]
    [InlineData(Role.Manager, "It gave me a shock when I touched the case", "shock-from-frame")]
    public void Who_denies_a_danger_afterwards_is_told_that_it_still_counts(Role role, string danger, string symptom)
    {
        var heard = Listener.Hear(danger).Value!;
        var file = CaseFile.From(new CaseOpening(role, Region.Iec), [.. heard.Facts, .. heard.Dangers.Select(one => SafetyGate.Heard(one.Id, one.Span))]);
        Assert.DoesNotContain(Coach.Assess(file).Say, one => one.Id == "coach.still-counts");

        var denied = Coach.Assess(file.With(new Fact.Symptom { Id = symptom, Present = false }));
        Assert.Single(denied.Say, one => one.Id == "coach.still-counts");
        Assert.Equal(Coach.Assess(file).Gate.Reason!.Id, denied.Gate.Reason!.Id);
    }

    /// <summary>A plug pulled where gas is smelled can light it: no other caution is said beside.</summary>
    [Fact]
    public void Where_gas_is_smelled_nothing_else_is_told_to_be_done()
    {
        var heard = Listener.Hear("The pump hums and does not start, it smokes, and there is a smell of gas in the cellar.").Value!;
        var assessed = Coach.Assess(CaseFile.From(new CaseOpening(Role.Homeowner, Region.Iec), [.. heard.Facts, .. heard.Dangers.Select(one => SafetyGate.Heard(one.Id, one.Span))]));
        Assert.Equal(["stop-gas"], assessed.Cautions.Select(caution => caution.Id));
        Assert.Null(assessed.Next);
    }
}
