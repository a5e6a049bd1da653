using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>From what it does to what is wrong with it, by the test that tells most of what to do.</summary>
internal static class FindFault
{
    private const string Symptoms = "symptoms";
    private const string Layout = "layout";

    private static readonly HashSet<string> Tests = new(StringComparer.Ordinal) { "diagnosis.next", "diagnosis.this-decides" };

    public static Question? Next(Workup work)
    {
        if (MakeSafe.Isolate(work) is { } isolate)
        {
            return isolate;
        }

        // what is read dead costs little once it is off, and would be put behind what is read live while it is not
        if (FirstStart.Fault(work) is not null && !work.File.ConfirmedSincePower(MakeSafe.Isolated) && MakeSafe.IsolateAgain(work) is { } off)
        {
            return off;
        }

        if (!HasSigns(work) && work.File.BenchTests.Count == 0 && !work.Skipped(Symptoms))
        {
            return work.Ask.Of(Symptoms);
        }

        return work.Faults.Next is not { } next ? Phases(work) ?? Mend(work)
            : work.Knowledge.GateTasks[next.Task].Group != "powered" && MakeSafe.IsolateAgain(work) is { } dead ? dead
            : Test(work, next);
    }

    /// <summary>Whether anything is known of what it does: told, or seen at a start.</summary>
    public static bool HasSigns(Workup work) => work.File.Symptoms.Count > 0 || FirstStart.Fault(work) is not (null or "smoke");

    /// <summary>Whether a fault is handed on: what is open here tells no more, nor does what can be read off the plate.</summary>
    public static bool HandsOn(Workup work) => work.LooksForFault && work.Faults.ReferTo is not null && Phases(work) is null;

    /// <summary>Before two causes are handed on undecided: the phases, where one of them is of single-phase motors and the other of three-phase ones; asked of those alone who may make it good.</summary>
    private static Question? Phases(Workup work) =>
        work.Faults is { Status: "refer", Causes: [var first, var second, ..] } && !work.File.MadeGoodInVain(first.Id)
        && work.Gate.CouldOpen(work.Knowledge.Questions[Fact.Choice.RepairMade].Task) && !PhasesOf(work, first).Intersect(PhasesOf(work, second)).Any()
            ? KnowMotor.Phases(work) : null;

    private static IEnumerable<int> PhasesOf(Workup work, RankedCause cause) =>
        work.Knowledge.Causes[cause.Id].Families.Keys.Select(family => work.Knowledge.Families[family].Phases);

    /// <summary>Once one cause is left: that it is made good, and what the motor does then; asked of those alone who may do both.</summary>
    private static Question? Mend(Workup work)
    {
        if (work.Faults is not { Status: "settled", ReferTo: null, Causes: [var found, ..] } || !work.Gate.CouldOpen(work.Knowledge.Questions[Fact.Choice.RepairMade].Task) || !work.Gate.CouldOpen(work.Knowledge.Questions[Fact.Choice.AfterRepair].Task))
        {
            return null;
        }

        return Asked(work, Fact.Choice.RepairMade, found.Id) ?? (work.File.Choices.GetValueOrDefault($"{Fact.Choice.RepairMade}.{found.Id}") == "done" ? Asked(work, Fact.Choice.AfterRepair, found.Id) : null);
    }

    private static Question? Asked(Workup work, string card, string cause) =>
        $"{card}.{cause}" is var id && work.Chosen(id) ? null : work.Ask.Of(card) with { Id = id };

    public static FaultReport Examine(Workup work) =>
        work.Rooms.Diagnostician.Examine(Known(work), Access(work), work.Gate.Holding.Contains("sealed-circuit", StringComparer.Ordinal), work.Gate.KeptFor, ShownBefore.Outcomes(work));

    /// <summary>The case with the kind of motor that the job found before the start that went wrong, where nobody named one.</summary>
    private static CaseFile Known(Workup work) => FirstStart.Fault(work) is not null && work.Plan?.Value is { } plan && !work.File.Choices.ContainsKey(Layout)
        ? work.File.With(new Fact.Choice { Question = Layout, Option = plan.Layout.Id })
        : work.File;

    /// <param name="work">The case.</param>
    /// <param name="shut">Whether no test may be done as it stands: then none is spoken of.</param>
    public static IEnumerable<Statement> Say(Workup work, bool shut) =>
        work.Repaired ? [Statement.Of("coach.runs-again")]
        : !work.LooksForFault || !HasSigns(work) ? []
        : Phases(work) is null ? work.Faults.Say.Where(said => !shut || !Tests.Contains(said.Id))
        : [Statement.Of("diagnosis.phases-decide").With("first", work.Faults.Causes[0].Name).With("second", work.Faults.Causes[1].Name)];

    private static Question Test(Workup work, NextTest next)
    {
        // several values of one test are compared by the person; a single one is judged here
        var measured = next.Unit is not null && work.Knowledge.Tests[next.Test].Value is { SpreadOver: null, Against: not "spread" };
        return new Question
        {
            Id = TestGuide.QuestionPrefix + next.Test,
            Kind = measured ? QuestionKind.Quantity : QuestionKind.Choice,
            Text = Statement.Named($"test.{next.Test}.ask"),
            Why = next.Why,
            How = next.How,
            About = next.Test,
            Task = next.Task,
            Unit = measured ? next.Unit : null,
            CanBeOpen = measured && next.Unit == "ohm" && work.Knowledge.Tests[next.Test].Outcomes.Any(outcome => outcome.Id == Fact.BenchTest.NoPath),
            Options = measured ? [] : [.. next.Outcomes.Select(outcome => new QuestionOption(outcome.Id, outcome.Reading))],
            Expect = [.. next.Outcomes.Select(outcome => new Expectation(outcome.Reading, outcome.Means))],
        };
    }

    private static Dictionary<string, TaskAccess> Access(Workup work) => work.Knowledge.GateTasks.Keys.ToDictionary(
        task => task,
        task => work.Gate.Opens(task) ? TaskAccess.Open : new TaskAccess(!work.Gate.CouldOpen(task), work.Gate.WaitsFor(task)),
        StringComparer.Ordinal);
}
