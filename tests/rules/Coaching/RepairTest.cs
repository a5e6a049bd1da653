using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>From the one cause that is left over the repair to what the motor does then.</summary>
public sealed class RepairTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
    private static readonly Coach Coach = new(Knowledge);

    [Fact]
    public void What_is_found_is_made_good_dead_and_started_under_control()
    {
        var file = Found(Role.Technician);
        Assert.Equal(["isolated", "capacitor-discharged", "repair-made.start-leads-swapped", "shaft-free-guarded", "after-repair.start-leads-swapped"], Asked(ref file, "runs"));
        var assessed = Coach.Assess(file);
        Assert.Null(assessed.Next);
        Assert.Equal("ready", assessed.Status);
        Assert.Contains(assessed.Say, line => line.Id == "coach.runs-again");
    }

    [Fact]
    public void A_repair_that_cures_nothing_speaks_against_its_cause()
    {
        var file = Found(Role.Technician);
        var before = Coach.Assess(file).Causes.First(cause => cause.Id == "start-leads-swapped").Probability;
        _ = Asked(ref file, "same");
        var assessed = Coach.Assess(file);
        Assert.True(assessed.Causes.First(cause => cause.Id == "start-leads-swapped").Probability < before);
        Assert.Equal("isolated", assessed.Next?.Id); // it was started to see what it does
        Assert.StartsWith("test.", Coach.Assess(file.With(new Fact.Confirm { Id = "isolated" })).Next?.Id, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Role.Homeowner)]
    [InlineData(Role.Manager)]
    public void Nobody_is_asked_to_mend_or_start_what_is_not_theirs(Role role)
    {
        var file = Found(role);
        Assert.DoesNotContain(Asked(ref file, "runs"), id => id.StartsWith("repair-made", StringComparison.Ordinal) || id.StartsWith("after-repair", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("done", "done")]
    [InlineData("swapped them", "done")]
    [InlineData("not today", "not-here")]
    public void What_was_made_good_is_said_in_ones_own_words(string text, string option)
    {
        var asked = new OpenQuestion { Id = "repair-made.worn-bearing", Kind = QuestionKind.Choice, About = "repair", Options = [new("done", "It is made good"), new("not-here", "It is not done here, or not today")] };
        Assert.Equal(option, new Listener(Knowledge).Understand(text, asked: asked).Answer?.Choice);
    }

    private static CaseFile Found(Role role) => CaseFile.From(new CaseOpening(role, Region.NorthAmerica),
    [
        new Fact.Goal { Id = "diagnose" },
        new Fact.Symptom { Id = "wrong-direction" },
        new Fact.Symptom { Id = "just-rewired" },
        new Fact.Choice { Question = "family", Option = "capacitor-start" },
        new Fact.Capacitor { Present = true },
        new Fact.Plate { Field = "phases", Value = PlateValue.Of([1]) },
    ]);

    /// <summary>The questions asked up to what came of it, all confirmed and done.</summary>
    private static List<string> Asked(ref CaseFile file, string after)
    {
        var asked = new List<string>();
        while (Spoken.Whole(Coach.Assess(file)).Next is { } next && asked.Count < 10)
        {
            asked.Add(next.Id);
            var answer = next.Kind == QuestionKind.Confirm ? new QuestionAnswer { QuestionId = next.Id, Confirmed = true }
                : new QuestionAnswer { QuestionId = next.Id, Choice = next.Id.StartsWith("after-repair", StringComparison.Ordinal) ? after : next.Options[0].Id };
            file = Coach.Read(file, next, answer).Value!.Aggregate(file, (known, fact) => known.With(fact));
            if (next.Id.StartsWith("after-repair", StringComparison.Ordinal))
            {
                break;
            }
        }

        return asked;
    }
}
