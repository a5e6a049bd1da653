using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>Whole jobs with all that is asked, said back and said, as they were looked at.</summary>
public sealed class WrittenJobsTest
{
    private const string Wiring = "which wire goes where, help me hook it up";

    private static readonly Coach Coach = new(Trade.Knowledge);
    private static readonly Listener Listener = new(Trade.Knowledge);

    /// <summary>Who, the simulated motor, what is said at first, and what is answered otherwise: the start of a question's id, then its answers in turn; the rest is answered by the motor.</summary>
    private static readonly (Role Role, Region Region, string Layout, string? Fault, string Said, string Answers)[] Jobs =
    [
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, Wiring, "probe-zero 0.3; run-current 4; run-direction wrong"),
        (Role.Technician, Region.NorthAmerica, "psc-3", null, Wiring, "insulation-temperature 50; insulation 4 300; capacitor-refitted no; joint-ohms open; earth-continuity 4"),
        (Role.Technician, Region.Iec, "three-phase-6", null, Wiring, "supply-voltage 380 400 410; run-current 3"),
        (Role.Technician, Region.NorthAmerica, "three-phase-9-star", null, Wiring, "joints-to-frame 3; first-start hummed"),
        (Role.Technician, Region.NorthAmerica, "capacitor-start-dual-6", null, Wiring, "first-start nothing"),
        (Role.Technician, Region.NorthAmerica, "dc-shunt", null, Wiring, "first-start tripped"),
        (Role.Technician, Region.NorthAmerica, "series-commutator", null, Wiring, "run-speed ?"),
        (Role.Technician, Region.Iec, "psc-tapped", null, Wiring, "run-volts ?; run-direction ?"),
        (Role.Technician, Region.Iec, "two-speed-6", null, Wiring, "protected-supply no"),
        (Role.Homeowner, Region.NorthAmerica, "split-phase-4", null, Wiring, ""),
        (Role.Homeowner, Region.Iec, "psc-3", null, "it hums and does not start", ""),
        (Role.Apprentice, Region.NorthAmerica, "psc-4", null, Wiring, "earth-continuity ?"),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", "open-start-winding", Wiring, ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "it hums and does not start", ""),
        (Role.Technician, Region.NorthAmerica, "capacitor-start-4", null, "it runs hot and trips after ten minutes", "run-current 14"),
        (Role.Technician, Region.NorthAmerica, "three-phase-3", null, "I need it to spin the other way", ""),
        (Role.Technician, Region.NorthAmerica, "capacitor-start-dual-6", null, "how do I change it over from 115 to 230", ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "the ground prong has been cut off the plug", "earth-continuity 14 0.2"),
        (Role.Technician, Region.NorthAmerica, "capacitor-start-4", null, "which capacitor do I need, the start cap is gone, it says 161-193 uF 250 VAC", ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "is it worth repairing? it smoked and stinks of burnt varnish", ""),
        (Role.Technician, Region.NorthAmerica, "three-phase-6", null, "check the numbers on the plate, do they agree", ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "I want to fit a new motor on the bandsaw", ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "somebody wired it, check the joints: 1 and 3 to L1, 2 and 4 to L2", ""),
        (Role.Technician, Region.Iec, "three-phase-6", null, "somebody wired it, check the joints: 1 to L1, 2 to L2, 3 to L3, 4 5 6 together", ""),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, "it gets too hot under load, 4.1 ohms cold and 5.2 ohms hot", ""),
        (Role.Technician, Region.NorthAmerica, "dual-voltage-4", null, Wiring, "ends-instrument none; supply ?"),
        (Role.Technician, Region.NorthAmerica, "capacitor-start-dual-6", null, Wiring, "ends-instrument battery; insulation ?"),
        (Role.Technician, Region.Iec, "three-phase-3", null, Wiring, "supply-voltage.l2 300; run-current 2.7; run-current. 2.6 1.2"),
        (Role.Technician, Region.NorthAmerica, "shaded-pole-2", null, Wiring, "run-direction wrong"),
        (Role.Technician, Region.NorthAmerica, "split-phase-4", null, Wiring, "joints-to-frame ?; joint-ohms ?"),
    ];

    [Fact]
    public void Each_job_goes_as_it_was_looked_at() =>
        Sheets.Hold("jobs.txt", Jobs.Select(job => ($"{job.Role} in {job.Region}, {job.Layout}{(job.Fault is { } fault ? $" with {fault}" : "")}: {job.Said}; {job.Answers}", (object)Turns(job).ToList())));

    private static IEnumerable<Turn> Turns((Role Role, Region Region, string Layout, string? Fault, string Said, string Answers) job)
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, job.Layout, job.Fault, 4).Value!;
        var answers = job.Answers.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(one => one.Split(' ')).ToDictionary(one => one[0], one => new Queue<string>(one[1..]));
        IReadOnlyList<Fact> facts = [.. motor.Opening(), .. Listener.Understand(job.Said).Facts];
        var file = CaseFile.From(new CaseOpening(job.Role, job.Region), []);
        HashSet<string> said = [];
        for (var turn = 0; turn < 60 && facts.Count > 0; turn++)
        {
            file = PracticeAnswers.Add(file, facts);
            var assessed = Coach.Assess(file);
            yield return new Turn
            {
                SaidBack = [.. Echo.Of(facts).Select(one => Trade.Knowledge.Sentences.Render(one))],
                Says = [.. assessed.Say.Select(one => $"{one}").Where(said.Add)],
                Checked = [.. assessed.Checks.Select(check => string.Join(", ", [check.Id, check.Expect, check.Got, check.Verdict, $"{check.Says}", .. check.DoNext.Select(next => $"{next}"), $"{check.Also}"])).Where(said.Add)],
                Cautions = [.. assessed.Cautions.Select(caution => caution.Id).Where(id => said.Add($"caution {id}"))],
                Stands = $"{assessed.Goal} {assessed.Status}{(assessed.Plan is { } plan ? $", {plan.Layout.Id} {plan.Row.Id}" : "")}{string.Concat(assessed.PlanMissing.Select(missing => $", no {missing}"))}",
                Asks = assessed.Next is { } next ? Asked(next) : "nothing",
            };
            facts = assessed.Next is not { } asked ? []
                : answers.FirstOrDefault(answer => asked.Id.StartsWith(answer.Key, StringComparison.Ordinal) && answer.Value.Count > 0).Value is { } other ? PracticeAnswers.Of(file, asked, other.Dequeue())
                : PracticeAnswers.Of(file, asked, motor);
            facts = facts.Count == 0 && assessed.Next is { CanBeUnknown: true } left ? [new Fact.Unknown { Question = left.Id }] : facts;
        }
    }

    private static string Asked(Question asked) => string.Join("; ",
    [
        $"{asked.Id} for {asked.Task}, {asked.Kind} of {asked.About}{(asked.Unit is { } unit ? $" in {unit}" : "")}{(asked.CanBeOpen ? " or open" : "")}{(asked.CanBeUnknown ? "" : ", to be answered")}",
        $"{asked.Text}", $"{asked.Why}", .. asked.How.Select(how => how.Id), .. asked.Between ?? [],
        .. asked.Options.Select(option => option.Id), .. asked.Expect.Select(expect => $"{expect.When} means {expect.Means}"),
    ]);

    private sealed record Turn
    {
        public required IReadOnlyList<string> SaidBack { get; init; }

        public required IReadOnlyList<string> Says { get; init; }

        public required IReadOnlyList<string> Checked { get; init; }

        public required IReadOnlyList<string> Cautions { get; init; }

        public required string Stands { get; init; }

        public required string Asks { get; init; }
    }
}
