using WireCoach.Rules.Cases;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.WebUi.Desk;

/// <summary>What a practice motor hides beside what the rules find on it with what its person has.</summary>
public sealed record PracticeScore
{
    private static readonly string[] BetweenWindings = ["induced-voltage", "battery-flick"];

    /// <summary>What the motor hides.</summary>
    public required PracticeTruth Truth { get; init; }

    /// <summary>How often the rules put the meter on this motor, tests from winding to winding included.</summary>
    public required int EngineTouches { get; init; }

    /// <summary>The layouts that the rules are left with, the likeliest first.</summary>
    public required IReadOnlyList<string> EngineLayouts { get; init; }

    /// <summary>The faults that the rules see in the readings, with the reason: ohms alone may leave more than one cause.</summary>
    public required IReadOnlyList<WindingFault> EngineFaults { get; init; }

    /// <summary>The rules on the motor of a session, reading by reading, from the same start.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="chosen">The motor.</param>
    /// <param name="tests">The tests from winding to winding that the person could have done as well; <see cref="TestsOf"/> says them.</param>
    /// <returns>The score, or <see langword="null"/> where the motor cannot be made any more.</returns>
    public static PracticeScore? Of(TradeKnowledge knowledge, PracticeChoice chosen, IReadOnlyList<string> tests)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        if (PracticeMotor.Make(knowledge, chosen.Layout, chosen.Fault, chosen.Seed ?? 0, chosen.Meter).Value is not { } motor)
        {
            return null;
        }

        var (found, touches) = Find(knowledge, motor, tests);
        return new PracticeScore
        {
            Truth = motor.Truth,
            EngineTouches = touches,
            EngineLayouts = [.. found?.Layouts.OrderByDescending(layout => layout.Probability).Select(layout => layout.Id).Distinct() ?? []],
            EngineFaults = found?.Faults ?? [],
        };
    }

    /// <summary>The tests from winding to winding that somebody may do with what is at hand.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="role">Who it is.</param>
    /// <param name="facts">What was said so far, the instruments in it.</param>
    public static IReadOnlyList<string> TestsOf(TradeKnowledge knowledge, Role role, IEnumerable<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        var atHand = facts.OfType<Fact.Instrument>().GroupBy(instrument => instrument.Id, StringComparer.Ordinal).Where(said => said.Last().Present).Select(said => said.Key).ToHashSet(StringComparer.Ordinal);
        return role is Role.Homeowner or Role.Manager ? [] : [.. BetweenWindings.Where(test => knowledge.Tests[test].Instruments.Any(atHand.Contains))];
    }

    /// <summary>Whether a fact is one for which the meter was put on the windings.</summary>
    /// <param name="fact">A fact.</param>
    public static bool IsTouch(Fact fact) => fact is Fact.Reading || (fact is Fact.BenchTest test && BetweenWindings.Contains(test.Test, StringComparer.Ordinal));

    private static (Identification? Found, int Touches) Find(TradeKnowledge knowledge, PracticeMotor motor, IReadOnlyList<string> tests)
    {
        var identifier = new Identifier(knowledge);
        var seen = motor.Opening();
        var capacitors = seen.OfType<Fact.Capacitor>().ToList();
        var input = new IdentificationInput
        {
            Leads = motor.Tags,
            Markings = seen.OfType<Fact.Lead>().Where(lead => lead.Marking is not null).ToDictionary(lead => lead.Tag, lead => lead.Marking!, StringComparer.Ordinal),
            Plate = seen.OfType<Fact.Plate>().Aggregate(PlateFields.Empty, (plate, fact) => plate.With(fact.Field, fact.Value)),
            HasCapacitor = capacitors.Count > 0,
            CapacitorUse = capacitors is [{ Use: "start" or "run" } only] ? only.Use : null,
            CapacitorBridged = false,
            TestsAllowed = tests,
        };

        // no motor takes more readings than it has pairs and leads to the frame
        for (var most = motor.Tags.Count * motor.Tags.Count; ; most--)
        {
            var found = identifier.Identify(input).Value;
            if (found?.Next is not { } next || most <= 0 || Measured(motor, input, next) is not { } more)
            {
                return (found, input.Readings.Count + input.Tests.Count);
            }

            input = more;
        }
    }

    private static IdentificationInput? Measured(PracticeMotor motor, IdentificationInput input, NextReading next) => next.Setup is { } setup
        ? motor.Test(next.Kind, setup).Value is { } test ? input with { Tests = [.. input.Tests, test] } : null
        : motor.Touch(next.From, next.To, next.Together, take: input.Readings.Count(known => Same(known, next))).Value is { } reading ? input with { Readings = [.. input.Readings, reading] } : null;

    private static bool Same(Fact.Reading known, NextReading next) => known.Together.Count == next.Together.Count
        && ((known.From == next.From && known.To == next.To) || (known.From == next.To && known.To == next.From));
}
