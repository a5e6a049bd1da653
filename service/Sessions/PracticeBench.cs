using System.Collections.Concurrent;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>The simulated motors of practice sessions: what they show at first sight, and what a meter shows on them.</summary>
internal sealed class PracticeBench(TradeKnowledge knowledge, Coach coach)
{
    private const int Most = 64;
    private const string FirstStart = "first-start";
    private const string SupplyTest = "supply-voltage";

    private readonly ConcurrentDictionary<PracticeChoice, PracticeMotor> _motors = new();

    /// <summary>The leads, plate and capacitor as a person sees them.</summary>
    public Answer<IReadOnlyList<Fact>> FirstSight(PracticeChoice chosen)
    {
        var motor = Motor(chosen);
        return motor.IsGiven
            ? Answer<IReadOnlyList<Fact>>.Given(motor.Value.Opening())
            : Answer<IReadOnlyList<Fact>>.Refused([.. motor.Problems.Select(problem => problem with { Field = problem.Field.StartsWith("practice", StringComparison.Ordinal) ? problem.Field : $"practice.{problem.Field}" })]);
    }

    /// <summary>The probes on two points; without points, whatever the open question wants measured.</summary>
    public Answer<Given> Probe(LiveSession live, PracticeChoice chosen, string from, string to)
    {
        var motor = Motor(chosen);
        if (!motor.IsGiven)
        {
            return Answer<Given>.Refused(motor.Problems);
        }

        var asked = live.Assessment.Next;
        if (from.Length == 0 && to.Length == 0)
        {
            return asked is null ? Refusals.NothingAsked() : Measured(motor.Value, live, asked);
        }

        var wanted = asked is { Kind: QuestionKind.Reading, About: "resistance", Between: { } between } && ((between[0] == from && between[1] == to) || (between[0] == to && between[1] == from));
        return wanted ? Measured(motor.Value, live, asked!) : Touched(motor.Value, live, from, to);
    }

    private Answer<Given> Measured(PracticeMotor motor, LiveSession live, Question asked)
    {
        if (asked.Id == Fact.BenchTest.ProbeZero)
        {
            return new Given { Facts = [motor.Probes()], Question = asked.Id };
        }

        if (asked is { Kind: QuestionKind.Reading, About: "resistance", Between: [var from, var to] })
        {
            IReadOnlyList<string> together = asked.Setup is { Tie: [var held, ..] } ? [.. held.Where(lead => lead != from)] : [];
            return Read(motor.Touch(from, to, together, Bridged(live.Case), take: Before(live, from, to, together.Count).Count), live, asked);
        }

        if (asked is { Kind: QuestionKind.Reading, About: Fact.BenchTest.JointResistance, Between: [var first, var second] } && live.Assessment.Plan is { } plan)
        {
            return Read(Joined(motor, live.Case, plan, first, second), live, asked);
        }

        if (asked.About == Fact.BenchTest.EarthContinuity)
        {
            return new Given { Facts = [motor.Earth()], Question = asked.Id };
        }

        if (asked.About == SupplyTest && live.Case.Supply?.Volts is { } volts)
        {
            return Answered(live, asked, new QuestionAnswer { QuestionId = asked.Id, Quantity = new(volts, "volt") });
        }

        if (asked is { About: "armature", Between: [var one, var other] })
        {
            return Answered(live, asked, new QuestionAnswer { QuestionId = asked.Id, Choice = motor.Turned(one, other) });
        }

        if (asked.Id == "shaft-drag")
        {
            return Answered(live, asked, new QuestionAnswer { QuestionId = asked.Id, Choice = motor.Dragged() });
        }

        if (asked is { About: "slip-rings", Between: [var ring, _] })
        {
            return Answered(live, asked, new QuestionAnswer { QuestionId = asked.Id, Choice = motor.FromRings(ring) });
        }

        if (asked.About == "insulation")
        {
            return new Given { Facts = [motor.Insulation()], Question = asked.Id };
        }

        if (asked.Id == FirstStart)
        {
            return Started(motor, live, asked);
        }

        if (asked.Setup is not { } setup || asked.Kind == QuestionKind.Reading)
        {
            return new Problem("invalid-fact", "from", Statement.Of("session.nothing-to-probe"));
        }

        var test = motor.Test(asked.About, setup);
        return test.IsGiven ? new Given { Facts = [test.Value], Question = asked.Id } : Answer<Given>.Refused(test.Problems);
    }

    /// <summary>The joints of the plan as they were made, to each other or all together to the frame; the capacitor is back by then.</summary>
    private static Answer<Fact.Reading> Joined(PracticeMotor motor, CaseFile file, Plan plan, string from, string to)
    {
        IReadOnlyList<IReadOnlyList<string>> joints = [.. plan.Joints.Select(joint => joint.Leads)];
        var before = file.BenchTests.Count(test => test.Test == Fact.BenchTest.JointResistance && test.Read.SequenceEqual([from, to], StringComparer.Ordinal));
        return motor.Joined(to == Fact.Reading.Frame ? [[.. joints.SelectMany(leads => leads)]] : joints, from, to, Bridged(file) && !file.Confirmed("capacitor-refitted"), before);
    }

    /// <summary>What the motor shows, taken as the answer that a person would give.</summary>
    private Answer<Given> Answered(LiveSession live, Question asked, QuestionAnswer answer)
    {
        var read = coach.Read(live.Case, asked, answer);
        return read.IsGiven
            ? new Given { Facts = [.. read.Value.Select(fact => fact with { How = FactEntry.Probe })], Question = asked.Id }
            : Answer<Given>.Refused(read.Problems);
    }

    /// <summary>Power on the joints as they are: what the motor does follows from its own circuit, not from what was expected.</summary>
    private Answer<Given> Started(PracticeMotor motor, LiveSession live, Question asked)
    {
        if (Joints(live) is not { } joints || live.Case.Supply is not { } supply)
        {
            return new Problem("invalid-fact", "from", Statement.Of("session.nothing-to-probe"));
        }

        var run = motor.Power(joints, supply);
        var read = coach.Read(live.Case, asked, new QuestionAnswer { QuestionId = asked.Id, Choice = run.Outcome });
        return read.IsGiven
            ? new Given { Facts = [run with { Direction = Seen(run.Direction) }, .. read.Value.Where(fact => fact is not Fact.Running)], Question = asked.Id }
            : Answer<Given>.Refused(read.Problems);
    }

    /// <summary>The arrow of a practice machine points clockwise, seen from the shaft end.</summary>
    private static string? Seen(string? direction) => direction switch { null => null, "clockwise" => "right", _ => "wrong" };

    /// <summary>The joints of the plan, which follows every exchange of leads, with the exchanges of lines that were confirmed; without a plan those that the person told.</summary>
    private static List<Fact.Joint>? Joints(LiveSession live)
    {
        if (live.Assessment.Plan is not { } plan)
        {
            return live.Case.Joints.IsEmpty ? null : [.. live.Case.Joints];
        }

        var exchanged = live.Case.Facts.Count(fact => fact is Fact.Confirm { Id: "reversed", Confirmed: true }) % 2 == 1;
        var lines = exchanged && plan.Reverse.Swap is [[var one, var other]] && plan.Joints.Any(joint => joint.Conductor == one) ? (one, other) : default;
        return [.. plan.Joints.Select(joint => new Fact.Joint { Leads = joint.Leads, Conductor = joint.Conductor == lines.one ? lines.other : joint.Conductor == lines.other ? lines.one : joint.Conductor })];
    }

    /// <summary>What the meter shows, taken as the answer that a person would give: whether it stands beside an earlier reading or in its place is decided in one way for both.</summary>
    private Answer<Given> Read(Answer<Fact.Reading> touched, LiveSession live, Question asked)
    {
        if (!touched.IsGiven)
        {
            return Answer<Given>.Refused(touched.Problems);
        }

        var shown = touched.Value;
        return Answered(live, asked, new QuestionAnswer
        {
            QuestionId = asked.Id,
            Reading = new AnsweredReading { Ohms = shown.Ohms, Open = shown.Open ? true : null, Short = shown.Short ? true : null, Kick = shown.Kick ? true : null },
        });
    }

    /// <summary>A pair that was read before is read anew: a second reading beside the first, or in its place where something has changed meanwhile.</summary>
    private static Answer<Given> Touched(PracticeMotor motor, LiveSession live, string from, string to)
    {
        var before = Before(live, from, to, together: 0);
        var touched = motor.Touch(from, to, capacitorsBridged: Bridged(live.Case), take: before.Count);
        return touched.IsGiven
            ? new Given { Facts = [touched.Value with { Replaces = before is [.., var last] && !motor.Agree(last, touched.Value) ? last.FactId : null }] }
            : Answer<Given>.Refused(touched.Problems);
    }

    /// <summary>What was read between these points before, with as many further leads held to the first.</summary>
    private static List<Fact.Reading> Before(LiveSession live, string from, string to, int together) =>
        [.. live.Case.Readings.Where(known => known.Together.Count == together && ((known.From == from && known.To == to) || (known.From == to && known.To == from)))];

    private static bool Bridged(CaseFile file) => file.Choices.GetValueOrDefault("capacitor-bridged") == "bridged";

    private Answer<PracticeMotor> Motor(PracticeChoice chosen)
    {
        if (_motors.TryGetValue(chosen, out var known))
        {
            return known;
        }

        var made = PracticeMotor.Make(knowledge, chosen.Layout, chosen.Fault, chosen.Seed ?? 0, chosen.Meter);
        if (made.IsGiven)
        {
            if (_motors.Count >= Most)
            {
                _motors.Clear(); // the seed makes each of them again
            }

            _motors[chosen] = made.Value;
        }

        return made;
    }
}
