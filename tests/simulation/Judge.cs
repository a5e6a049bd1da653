using WireCoach.Rules.Windings;

namespace WireCoach.Simulation;

/// <summary>Compares what was found with what is.</summary>
internal static class Judge
{
    /// <summary>Whether every winding that was named is a true one with its true role, and none is missing.</summary>
    public static bool IsRight(SimulatedMotor motor, Identification found)
    {
        var truth = motor.Windings.Where(winding => winding.Tags.Length == 2).Select(winding => $"{winding.Role} {string.Join(' ', winding.Tags)}").ToHashSet(StringComparer.Ordinal);
        var named = found.Windings.Where(winding => !winding.Junction && winding.Taps is null)
            .Select(winding => $"{winding.Role} {string.Join(' ', winding.Leads.Order(StringComparer.Ordinal))}").ToHashSet(StringComparer.Ordinal);
        var groups = found.Windings.Where(winding => winding.Junction).All(winding => winding.Leads.All(one => winding.Leads.All(other => one == other || motor.Read(one, other).Ohms is not null)));
        return named.IsSubsetOf(truth) && groups && Rotor(motor, found) && Tapped(motor, found);
    }

    public static int Percentile(List<int> values, double share) => values.Order().ElementAt((int)Math.Min(values.Count - 1, Math.Ceiling(share * values.Count)));

    /// <summary>The leads of a rotor are called so, and no others.</summary>
    private static bool Rotor(SimulatedMotor motor, Identification found) => found.Windings.Where(winding => winding.Junction).All(winding =>
        winding.Leads.All(lead => motor.Windings.Exists(truth => truth.Role == "rotor" && truth.Tags.Contains(lead)) == (winding.Role == "rotor")));

    /// <summary>A tapped winding runs from the common lead over the taps in the order of rising ohms.</summary>
    private static bool Tapped(SimulatedMotor motor, Identification found) => found.Windings.Where(winding => winding.Taps is not null).All(winding =>
    {
        var way = (string[])[winding.Leads[0], .. winding.Taps!, winding.Leads[^1]];
        return way.Select(motor.NodeOf).SequenceEqual(new[] { "C", "H", "M", "N", "L" }.Where(motor.HasNode));
    });
}

/// <summary>The plain habit: one lead against the rest in order until it answers, then the next lead without a partner.</summary>
internal static class Habit
{
    public static int Touches(BenchPerson person, SimulatedMotor motor)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        for (var first = 0; first < motor.Tags.Count; first++)
        {
            for (var second = first + 1; second < motor.Tags.Count && !found.Contains(motor.Tags[first]); second++)
            {
                if (!found.Contains(motor.Tags[second]))
                {
                    person.Measure(motor.Tags[first], motor.Tags[second]);
                    if (!person.Readings[^1].Open)
                    {
                        found.Add(motor.Tags[first]);
                        found.Add(motor.Tags[second]);
                    }
                }
            }
        }

        return person.Touches;
    }

    /// <summary>The habit made to settle as much: whoever has gone through the leads in order goes on until the same certainty is reached.</summary>
    public static int ToTheSameCertainty(BenchPerson person, SimulatedMotor motor, Identifier identifier, IdentificationInput input)
    {
        Touches(person, motor);
        person.Follow(identifier, input);
        return person.Touches;
    }
}
