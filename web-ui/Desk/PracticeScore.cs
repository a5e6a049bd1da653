using WireCoach.Rules.Cases;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.WebUi.Desk;

/// <summary>What a practice motor hides beside what the rules find on it with the meter alone.</summary>
public sealed record PracticeScore
{
    /// <summary>What the motor hides.</summary>
    public required PracticeTruth Truth { get; init; }

    /// <summary>How often the rules put the meter on this motor.</summary>
    public required int EngineTouches { get; init; }

    /// <summary>The layouts that the rules are left with, the likeliest first.</summary>
    public required IReadOnlyList<string> EngineLayouts { get; init; }

    /// <summary>The faults that the rules see in the readings, with the reason: ohms alone may leave more than one cause.</summary>
    public required IReadOnlyList<WindingFault> EngineFaults { get; init; }

    /// <summary>The rules on the motor of a session, reading by reading, from the same start.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="chosen">The motor.</param>
    /// <returns>The score, or <see langword="null"/> where the motor cannot be made any more.</returns>
    public static PracticeScore? Of(TradeKnowledge knowledge, PracticeChoice chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        if (PracticeMotor.Make(knowledge, chosen.Layout, chosen.Fault, chosen.Seed ?? 0, chosen.Meter).Value is not { } motor)
        {
            return null;
        }

        var found = Find(knowledge, motor);
        return new PracticeScore
        {
            Truth = motor.Truth,
            EngineTouches = found?.TouchesSoFar ?? 0,
            EngineLayouts = [.. found?.Layouts.OrderByDescending(layout => layout.Probability).Select(layout => layout.Id).Distinct() ?? []],
            EngineFaults = found?.Faults ?? [],
        };
    }

    private static Identification? Find(TradeKnowledge knowledge, PracticeMotor motor)
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
        };

        // no motor takes more readings than it has pairs and leads to the frame
        for (var most = motor.Tags.Count * motor.Tags.Count; ; most--)
        {
            var found = identifier.Identify(input).Value;
            if (found?.Next is not { } next || most <= 0 || motor.Touch(next.From, next.To, next.Together, take: input.Readings.Count(known => Same(known, next))).Value is not { } reading)
            {
                return found;
            }

            input = input with { Readings = [.. input.Readings, reading] };
        }
    }

    private static bool Same(Fact.Reading known, NextReading next) => known.Together.Count == next.Together.Count
        && ((known.From == next.From && known.To == next.To) || (known.From == next.To && known.To == next.From));
}
