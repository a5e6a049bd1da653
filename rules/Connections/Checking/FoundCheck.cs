using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What is wrong with a question about a connection.</summary>
internal static class FoundCheck
{
    private const int MostCoils = 24;
    private const int MostJoints = 100;
    private const int MostParts = 8;
    private const double MostVolts = 1e5;
    private static readonly string[] Conductors = ["L1", "L2", "L3", "N", "PE", "+", "-"];
    private static readonly string[] Axes = ["main", "start", "a", "b", "c"];

    public static IReadOnlyList<Problem> Of(FoundConnection found)
    {
        var wrong = new List<Problem>();
        void Require(bool holds, string field, Statement why)
        {
            if (!holds)
            {
                wrong.Add(new Problem("invalid-fact", field, why));
            }
        }

        void Figure(bool holds, string field, double? value) =>
            Require(holds, field, Statement.Of("circuits.figure-out-of-range", ("field", field), ("value", $"{value}")));

        if (found.Coils.Count > MostCoils || found.Joints.Count > MostJoints || found.Joints.Sum(joint => joint.Leads.Count) > 4 * MostCoils)
        {
            return [new Problem("too-large", found.Coils.Count > MostCoils ? "coils" : "joints", Statement.Of("check.too-many", ("most", $"{MostCoils}")))];
        }

        Require(found.Coils.Count > 0, "coils", Statement.Of("problem.missing", ("field", "coils")));
        for (var index = 0; index < found.Coils.Count; index++)
        {
            var (coil, at) = (found.Coils[index], $"coils[{index}]");
            Require(found.Coils.Take(index).All(other => other.Id != coil.Id), $"{at}.id", Statement.Of("circuits.id-twice", ("id", coil.Id)));
            Require(coil.From != coil.To, $"{at}.leads", Statement.Of("problem.same-lead", ("lead", coil.From)));
            Figure(coil.RatedVolts is > 0 and <= MostVolts, $"{at}.ratedVolts", coil.RatedVolts);
            Figure(coil.Ohms is null or (> 0 and <= 1e9), $"{at}.ohms", coil.Ohms);
            Require(Axes.Contains(coil.Axis), $"{at}.axis", Statement.Of("check.axis", ("axis", coil.Axis)));
        }

        for (var index = 0; index < found.Joints.Count; index++)
        {
            Require(found.Joints[index].Conductor is null || Conductors.Contains(found.Joints[index].Conductor!), $"joints[{index}].conductor",
                Statement.Of("check.conductor", ("conductor", found.Joints[index].Conductor ?? string.Empty)));
        }

        Figure(found.SupplyVolts is > 0 and <= MostVolts, "supply.volts", found.SupplyVolts);
        Require(found.Phases is null or 1 or 3, "supply.phases", Statement.Of("check.phases"));
        Figure(found.Hertz is null or (> 0 and <= 1000) || (found.IsCommutator && found.Hertz == 0), "supply.hertz", found.Hertz);
        Require(found.Phases != 1 || found.Joints.All(joint => joint.Conductor != "L3"), "supply.phases", Statement.Of("check.third-line"));
        Require(!(found.Coils.Any(coil => coil.IsPhase) && found.Coils.Any(coil => !coil.IsPhase)), "coils", Statement.Of("check.mixed-axes"));
        Require(found.IsCommutator || found.Joints.All(joint => joint.Conductor is not ("+" or "-")), "joints", Statement.Of("check.direct-current"));
        Require(!found.IsCommutator || found.Coils.All(coil => coil.IsOfCommutator), "coils", Statement.Of("check.mixed-kinds"));
        foreach (var capacitor in found.Capacitors)
        {
            Figure(capacitor.Microfarads is null or (> 0 and <= 1e6), "capacitor.microfarads", capacitor.Microfarads);
        }

        Require(found.Capacitors.Count + found.Switches.Count <= MostParts, "capacitor", Statement.Of("check.too-many-parts", ("most", $"{MostParts}")));
        Figure(found.Slip is null or (> 0 and < 2), "slip", found.Slip);
        return wrong;
    }
}
