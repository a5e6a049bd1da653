using System.Collections.Concurrent;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>The simulated motors of practice sessions: what they show at first sight, and what a meter shows on them.</summary>
internal sealed class PracticeBench(TradeKnowledge knowledge)
{
    private const int Most = 64;

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

        var wanted = asked is { Kind: QuestionKind.Reading, Between: { } between } && ((between[0] == from && between[1] == to) || (between[0] == to && between[1] == from));
        return wanted ? Measured(motor.Value, live, asked!) : Touched(motor.Value.Touch(from, to, capacitorsBridged: Bridged(live.Case)), live, null);
    }

    private static Answer<Given> Measured(PracticeMotor motor, LiveSession live, Question asked)
    {
        if (asked is { Kind: QuestionKind.Reading, Between: [var from, var to] })
        {
            IReadOnlyList<string> together = asked.Setup is { Tie: [var held, ..] } ? [.. held.Where(lead => lead != from)] : [];
            return Touched(motor.Touch(from, to, together, Bridged(live.Case)), live, asked.Id);
        }

        if (asked.About == "insulation")
        {
            return new Given { Facts = [motor.Insulation()], Question = asked.Id };
        }

        if (asked.Setup is not { } setup)
        {
            return new Problem("invalid-fact", "from", Statement.Of("session.nothing-to-probe"));
        }

        var test = motor.Test(asked.About, setup);
        return test.IsGiven ? new Given { Facts = [test.Value], Question = asked.Id } : Answer<Given>.Refused(test.Problems);
    }

    /// <summary>A pair that was read before is read anew: the later reading takes the place of the earlier.</summary>
    private static Answer<Given> Touched(Answer<Fact.Reading> touched, LiveSession live, string? question)
    {
        if (!touched.IsGiven)
        {
            return Answer<Given>.Refused(touched.Problems);
        }

        var reading = touched.Value;
        var before = live.Case.Readings.FindLast(known => known.Together.Count == reading.Together.Count
            && ((known.From == reading.From && known.To == reading.To) || (known.From == reading.To && known.To == reading.From)));
        return new Given { Facts = [reading with { Replaces = before?.FactId }], Question = question };
    }

    private static bool Bridged(CaseFile file) => file.Choices.GetValueOrDefault("capacitor-bridged") == "bridged";

    private Answer<PracticeMotor> Motor(PracticeChoice chosen)
    {
        if (_motors.TryGetValue(chosen, out var known))
        {
            return known;
        }

        var made = PracticeMotor.Make(knowledge, chosen.Layout, chosen.Fault, chosen.Seed ?? 0);
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
