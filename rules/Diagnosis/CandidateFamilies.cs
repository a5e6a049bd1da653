using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Which kinds of motor this one may be, by what is known of it.</summary>
internal static class CandidateFamilies
{
    /// <summary>The weight of each family, in the order given; families that the facts rule out weigh nothing.</summary>
    /// <remarks>Facts that contradict each other rule out all; then the family that was named, or else none of them, counts.</remarks>
    public static double[] Weights(CaseFile file, IReadOnlyList<MotorFamily> families, bool sealedCircuit)
    {
        double[] all = [.. families.Select(family => family.Weight)];
        var weights = Array.ConvertAll(all, weight => weight);
        foreach (var fits in Filters(file, sealedCircuit))
        {
            double[] kept = [.. families.Select((family, at) => fits(family) ? weights[at] : 0)];
            weights = kept.Sum() > 0 ? kept : weights;
        }

        return weights;
    }

    private static IEnumerable<Func<MotorFamily, bool>> Filters(CaseFile file, bool sealedCircuit)
    {
        if (file.Choices.TryGetValue("family", out var named))
        {
            yield return family => family.Id == named;
        }

        if (file.Choices.TryGetValue("layout", out var layout))
        {
            yield return family => family.Layouts.Contains(layout, StringComparer.Ordinal);
        }

        if (sealedCircuit)
        {
            yield return family => family.Id == "sealed";
        }

        if (file.Plate.Phases is { } phases)
        {
            yield return family => family.Phases == phases;
        }

        if (file.Supply is { } supply && (supply.Phases ?? (supply.System?.StartsWith("three-phase", StringComparison.Ordinal) == true ? 3 : null)) is { } lines)
        {
            yield return family => family.Phases == lines;
        }

        if (file.Capacitors.Count > 0)
        {
            var has = file.Capacitors.Any(capacitor => capacitor.Present);
            yield return family => family.HasCapacitor is not { } known || known == has;
        }

        if (Uses(file, "start") && !Uses(file, "run"))
        {
            yield return family => family.Id is not "psc";
        }

        if (Uses(file, "start") && Uses(file, "run"))
        {
            yield return family => family.Id is "two-value" or "sealed";
        }
    }

    private static bool Uses(CaseFile file, string use) => file.Capacitors.Any(capacitor => capacitor.Present && capacitor.Use == use);
}
