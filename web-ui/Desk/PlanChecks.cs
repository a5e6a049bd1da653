using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Desk;

/// <summary>A line of the checks before power: what to read, what is expected, what was read.</summary>
/// <param name="Name">Between what, or the check's name.</param>
/// <param name="Expect">The expected figure, empty where none can be named.</param>
/// <param name="Got">What was read, empty until then.</param>
/// <param name="Notes">What stands below it.</param>
public sealed record PlanCheck(string Name, string Expect, string Got, IReadOnlyList<Statement> Notes);

/// <summary>The checks before power of a plan, the same on the screen and on paper.</summary>
public static class PlanChecks
{
    private const string Passed = "pass";
    private const string ToFrame = "joints-to-frame";
    private static readonly string[] AlwaysThere = ["insulation", Fact.BenchTest.EarthContinuity];

    /// <summary>The lines: the plan's own, then what else was checked, then what is still to be.</summary>
    public static IReadOnlyList<PlanCheck> Of(Plan plan, IReadOnlyList<Check> checks, Region region, PageWords words, TradeKnowledge knowledge)
    {
        var planned = plan.ExpectedOhms.Select(Id).ToList();
        return
        [
            .. plan.ExpectedOhms.Select(expected => Line(expected, checks.FirstOrDefault(check => check.Id == Id(expected)), words, knowledge)),
            .. checks.Where(check => !planned.Contains(check.Id)).Select(check => new PlanCheck(words.Term("check", check.Id), Bounded(check.Id, check.Expect, words), check.Got, Notes(check))),
            .. AlwaysThere.Where(id => checks.All(check => check.Id != id)).Select(id => new PlanCheck(words.Term("check", id), Bounded(id, Limit(id, region, knowledge), words), string.Empty, [])),
        ];
    }

    /// <summary>What has to be read where nobody has read yet: a sheet goes to the bench before the meter does.</summary>
    private static string Limit(string check, Region region, TradeKnowledge knowledge) => check == Fact.BenchTest.EarthContinuity
        ? EarthJudge.NoPath(knowledge, region).LimitOhms.Text
        : Units.Text(knowledge.Rules["insulation-gate"]["no-temperature-pass-megohms"], "megohm");

    /// <summary>What an insulation reading comes to at 40 °C, how it moved, and what did not pass: the figure alone does not say it.</summary>
    private static IReadOnlyList<Statement> Notes(Check check) =>
        [.. check.Id == "insulation" || check.Verdict != Passed ? [check.Says] : Array.Empty<Statement>(), .. check.Also is { } also ? [also] : Array.Empty<Statement>()];

    /// <summary>A figure that is a limit says on which side of it good readings lie.</summary>
    private static string Bounded(string check, string figure, PageWords words) => (figure.Length, check) switch
    {
        ( > 0, "insulation" or ToFrame) => words.Fill("page.at-least", ("figure", figure)),
        ( > 0, Fact.BenchTest.EarthContinuity) => words.Fill("page.at-most", ("figure", figure)),
        _ => figure,
    };

    private static PlanCheck Line(ExpectedOhms expected, Check? check, PageWords words, TradeKnowledge knowledge)
    {
        var frame = Id(expected) == ToFrame;
        var expect = check?.Expect ?? (frame ? Units.Text(knowledge.Rules[ToFrame]["least-megohms"], "megohm") : expected.Ohms?.Text);
        return new(frame ? words.Term("check", ToFrame) : string.Join(" – ", expected.Between), Bounded(Id(expected), expect ?? string.Empty, words), check?.Got ?? string.Empty, [expected.Note, .. check is null ? [] : Notes(check)]);
    }

    /// <summary>All joints are held to the frame together: one check, whichever joint the plan names.</summary>
    private static string Id(ExpectedOhms expected) => expected.Between.Contains(Fact.Reading.Frame, StringComparer.Ordinal) ? ToFrame : string.Join('-', expected.Between);
}
