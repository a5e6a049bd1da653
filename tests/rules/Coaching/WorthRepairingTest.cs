using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>Whether a repair is worth it is said as firmly as it is known what is wrong.</summary>
public sealed class WorthRepairingTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Coach Coach = new(Knowledge);

    public static TheoryData<string, string, Fact[]> Motors() => new()
    {
        { "hot, of a hundred causes", "worth-open", [Seen("runs-hot")] },
        { "a fan that is most likely worn", "worth-open", [Seen("runs-slow"), Family("shaded-pole")] },
        { "a capacitor that was measured", "worth-part", [Seen("hums-no-start"), Family("psc"), Shown("capacitance", "open")] },
        { "a winding that was measured", "worth-power-missing", [Seen("hums-no-start"), Family("three-phase"), Shown("resistance", "phase-open")] },
        { "a winding that was seen burnt", "worth-burnt worth-power-missing", [Seen("runs-hot"), Shown("look-and-smell", "burnt-winding")] },
        { "a shaft that is locked by this or that", "worth-part-whichever", [Seen("shaft-hard-to-turn"), Shown("turn-by-hand", "locked")] },
    };

    [Theory]
    [MemberData(nameof(Motors))]
    public void The_answer_is_no_firmer_than_the_cause(string motor, string said, Fact[] facts)
    {
        var ids = string.Join(' ', Said(facts).Where(id => id.StartsWith("faq.worth-", StringComparison.Ordinal)).Select(id => id["faq.".Length..]));
        Assert.True(said == ids, $"{motor}: {ids}");
    }

    [Fact]
    public void What_is_most_likely_is_said_once_in_a_turn()
    {
        var turns = Knowledge.Symptoms.Keys.SelectMany(id => Enum.GetValues<Role>().Select(role => Coach.Assess(File(role, [Seen(id)])))).ToList();
        Assert.All(turns, turn => Assert.InRange(turn.Say.Count(one => Knowledge.Sentences.Render(one).Contains("Most likely", StringComparison.Ordinal)), 0, 1));
        Assert.Contains(turns, turn => turn.Say.Any(one => one.Id == "diagnosis.most-likely"));
    }

    /// <summary>Nothing speaks of the cause where no complaint was told, and then the answer does.</summary>
    [Fact]
    public void The_cause_is_named_with_the_answer_where_nothing_else_names_it() =>
        Assert.Contains("faq.worth-likely", Said([Family("three-phase"), Shown("resistance", "phase-open"), Shown("move-lines-round", "follows-lead")]));

    private static List<string> Said(Fact[] facts) => [.. Coach.Assess(File(Role.Technician, facts)).Say.Select(one => one.Id)];

    private static CaseFile File(Role role, Fact[] facts) => CaseFile.From(new CaseOpening(role, Region.NorthAmerica), [new Fact.Goal { Id = "worth-repairing" }, .. facts]);

    private static Fact.Symptom Seen(string id) => new() { Id = id };

    private static Fact.Choice Family(string id) => new() { Question = "family", Option = id };

    private static Fact.BenchTest Shown(string test, string outcome) => new() { Test = test, Outcome = outcome };
}
