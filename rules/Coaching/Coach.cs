using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching.Steps;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>What to ask and say next: calls the other rooms and puts their answers in order. Pure.</summary>
public sealed class Coach
{
    private readonly Rooms _rooms;
    private readonly AnswerReader _answers;

    /// <summary>A coach with this knowledge.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public Coach(TradeKnowledge knowledge) => (_rooms, _answers) = (new Rooms(knowledge), new AnswerReader(knowledge));

    /// <summary>Everything that the rules say of a case.</summary>
    /// <param name="file">The case.</param>
    public Assessment Assess(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var work = new Workup(file, _rooms);
        var wanted = work.Gate.Stop ? work.Ask.Confirmation(MakeSafe.Isolated) : work.Gate.KeptFor is null ? Job.Wanted(work) : null;
        var next = Guarded(work, wanted);
        var refused = next is null && wanted is not null ? work.Gate.Closed.FirstOrDefault(closed => closed.Task == wanted.Task) : null;
        var beyond = next is null && work.Plan is not { IsGiven: true } && (FindWindings.HandsOn(work) || FindEnds.HandsOn(work));
        return new Assessment
        {
            Status = refused is not null ? "referred" : StatusOf(work, beyond),
            Goal = work.Goal,
            Gate = work.Gate,
            Identification = work.Identification,
            Ends = work.Ends,
            Plan = work.Plan?.Value,
            PlanMissing = [.. work.Plan?.Problems.SelectMany(problem => problem.Missing) ?? []],
            NoPlan = work.Plan?.Problems.FirstOrDefault(problem => problem is { Id: "not-ready", Field: "layout" })?.Advice,
            Causes = work.LooksForFault && FindFault.HasSigns(work) ? work.Faults.Causes : [],
            Found = work.FoundConnection,
            Checks = [.. BeforePower.Checks(work)],
            Next = next,
            // several faults may call for the same thing: it is said once
            Say = [.. Say(work, refused, beyond).Concat(next?.Id == FirstStart.Asked ? FirstStart.Expected(work) : next?.Id == BeforePower.Protected ? SideFigures.Supply(work) : []).DistinctBy(said => said.ToString(), StringComparer.Ordinal)],
            Cautions = [.. work.Gate.Cautions, .. Standing(work, next)],
        };
    }

    /// <summary>The facts that an answer to the open question amounts to; empty for free words, which the listener reads.</summary>
    /// <param name="file">The case.</param>
    /// <param name="asked">The open question.</param>
    /// <param name="given">The answer.</param>
    public Answer<IReadOnlyList<Fact>> Read(CaseFile file, Question asked, QuestionAnswer given)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(given);
        return _answers.Read(file, asked, given);
    }

    /// <summary>What the person wants: said, or shown by what they brought; <see langword="null"/> where neither tells.</summary>
    /// <param name="file">The case.</param>
    public static string? GoalOf(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return Goals.Of(file);
    }

    /// <summary>Whether a start has been made since the motor was last made safe.</summary>
    /// <param name="file">The case.</param>
    public static bool IsRunning(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return file.Facts.LastOrDefault(fact => fact is Fact.Running or Fact.Confirm { Id: MakeSafe.Isolated, Confirmed: true }) is Fact.Running;
    }

    /// <summary>What wire, protection and overload the motor wants, asked beside another job; what is missing for it, where it cannot be said yet.</summary>
    /// <param name="file">The case.</param>
    public IReadOnlyList<Statement> Sizes(CaseFile file)
    {
        var work = new Workup(file, _rooms);
        return work.Goal == Goals.CheckNumbers ? [] // the job says it
            : SideFigures.Supply(work) is { } figures && figures.Any() ? [.. figures]
            : [Statement.Of("coach.sizes-wanted")];
    }

    /// <summary>A fact with what follows from it and the case: volts across a capacitor and amps through it are microfarads at the supply's frequency.</summary>
    /// <param name="file">The case before the fact.</param>
    /// <param name="fact">The fact.</param>
    public Fact Completed(CaseFile file, Fact fact)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (fact is not Fact.Capacitor { AcrossVolts: { } volts, ThroughAmps: { } amps, MeasuredMicrofarads: null } capacitor)
        {
            return fact;
        }

        var usual = _rooms.Knowledge.Rules["supply-frequencies"][file.Region == Region.Iec ? "iec-hertz" : "na-hertz"];
        var report = CapacitorCalculator.Calculate(_rooms.Knowledge, new CapacitorInput
        {
            Measured = new CapacitorMeasured { Volts = volts, Amps = amps, Hertz = file.Supply?.Hertz is > 0 and var hertz ? hertz : usual },
        }).Value;
        return report?.MeasuredMicrofarads?.Value is { } microfarads ? capacitor with { MeasuredMicrofarads = Math.Round(microfarads, 2) } : fact;
    }

    /// <summary>Leads that the facts speak of although nobody has named them yet, where it is certain which leads there are.</summary>
    /// <param name="file">The case before the facts.</param>
    /// <param name="facts">The facts that enter it.</param>
    public static IReadOnlyList<Fact> Implied(CaseFile file, IReadOnlyList<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(facts);
        return KnowMotor.Implied(file, facts);
    }

    /// <summary>The question that may be asked: the wanted one, what its task still waits for, or none where the gate refuses it.</summary>
    private static Question? Guarded(Workup work, Question? wanted)
    {
        if (wanted is null || work.Gate.Opens(wanted.Task))
        {
            return wanted;
        }

        if (wanted.Id == MakeSafe.Isolated && work.Gate.Stop && !work.Gate.ReferOut)
        {
            return wanted;
        }

        var waits = work.Gate.WaitsFor(wanted.Task);
        return waits.Count == 0 || work.File.Confirmations.TryGetValue(waits[0], out var said) && !said.Confirmed
            ? null
            : waits[0] switch
            {
                "insulation-passed" => (BeforePower.Insulation(work) ?? BeforePower.NotYetPassed(work)) is { } insulation ? Guarded(work, insulation) : null,
                "earth-proved" => BeforePower.EarthAgain(work) is { } earth ? Guarded(work, earth) : null,
                _ => work.Ask.Confirmation(waits[0]),
            };
    }

    private static string StatusOf(Workup work, bool beyond) =>
        work.Gate.ReferOut || work.Gate.KeptFor is not null || work.Identification is { Status: IdentificationStatus.Faulty } ? "referred"
        : FirstStart.Verified(work) ? "verified"
        : beyond || OtherJobs.HandsOn(work) || FindFault.HandsOn(work) ? "referred"
        : OtherJobs.Settled(work) || work.Repaired ? "ready"
        : work.Plan is { IsGiven: true } && !BeforePower.Stops(work) && !FirstStart.Stops(work) ? "ready"
        : "open";

    /// <summary>Whoever is kept off a machine is told why, what it may be and whose it is, and nothing that could be done to it.</summary>
    private static IEnumerable<Statement> Say(Workup work, ClosedTask? refused, bool beyond) => work.Gate.KeptFor is not null
        ? [work.Gate.Reason!, .. StillCounts(work), .. FindFault.Say(work, shut: true), .. work.Gate.TellThem]
        : SayAll(work, refused, beyond);

    private static IEnumerable<Statement> SayAll(Workup work, ClosedTask? refused, bool beyond) =>
    [
        .. work.Gate is { Reason: { } reason } && (work.Gate.Stop || work.Gate.ReferOut) ? [reason] : Array.Empty<Statement>(),
        .. StillCounts(work),
        .. refused is null ? Array.Empty<Statement>() : [refused.Reason],
        .. BeforePower.SayUnproved(work),
        .. BeforePower.SayFailed(work),
        .. FirstStart.WentWrong(work) ? FirstStart.Say(work) : [],
        .. FindFault.Say(work, shut: work.Gate.Stop || refused is not null),
        .. work.Gate.ReferOut || refused is not null || OtherJobs.HandsOn(work) || FindFault.HandsOn(work) ? work.Gate.TellThem : [],
        .. KnowMotor.Say(work),
        .. SideFigures.Say(work),
        .. FindWindings.Say(work),
        .. FindEnds.Say(work),
        .. beyond ? work.Gate.TellThem : [],
        .. CheckFound.Say(work),
        .. ChooseConnection.Say(work),
        .. BeforePower.SayPassed(work),
        .. FirstStart.WentWrong(work) ? [] : FirstStart.Say(work),
        .. HeatUnderLoad.Say(work),
        .. OtherJobs.Say(work),
    ];

    /// <summary>A danger that was told ends when it is taken back, not when the opposite is said: whoever says that is told how.</summary>
    private static IEnumerable<Statement> StillCounts(Workup work) => work.Gate.DeniedSince.Select(symptom => Statement.Of("coach.still-counts").With("symptom", Statement.Named($"symptom.{symptom}")));

    private static IEnumerable<Caution> Standing(Workup work, Question? next) => (next?.Cautions ?? [])
        .Where(id => !work.Gate.Cautions.Any(caution => caution.Id == id))
        .Select(id => new Caution(id, Statement.Named($"caution.{id}")));
}
