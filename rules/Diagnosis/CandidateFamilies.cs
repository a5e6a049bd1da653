using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Which kinds of motor this one may be, by what is known of it.</summary>
internal static class CandidateFamilies
{
    private const int Several = 3;
    private const double OnlyThreePhase = 370;

    /// <summary>The weight of each family, in the order given; families that the facts rule out weigh nothing.</summary>
    /// <param name="file">The case.</param>
    /// <param name="families">The families.</param>
    /// <param name="byUse">How much more often, or more seldom, a family is met where it is usual, or hardly ever met.</param>
    /// <param name="sealedCircuit">Whether the motor sits in a sealed circuit.</param>
    /// <remarks>Facts that contradict each other rule out all; then the family that was named, or else none of them, counts.</remarks>
    public static double[] Weights(CaseFile file, IReadOnlyList<MotorFamily> families, TradeRule byUse, bool sealedCircuit)
    {
        double[] all = [.. families.Select(family => family.Weight * ByUse(family, file.Application?.ApplicationId, byUse))];
        var weights = Array.ConvertAll(all, weight => weight);
        foreach (var fits in Filters(file, sealedCircuit))
        {
            double[] kept = [.. families.Select((family, at) => fits(family) ? weights[at] : 0)];
            weights = kept.Sum() > 0 ? kept : weights;
        }

        return weights;
    }

    private static double ByUse(MotorFamily family, string? use, TradeRule byUse) =>
        use is null ? 1
        : family.OftenIn.Contains(use, StringComparer.Ordinal) ? byUse["often"]
        : family.SeldomIn.Contains(use, StringComparer.Ordinal) ? byUse["seldom"]
        : 1;

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

        if (MarkedReadings.TellSealed(file))
        {
            yield return family => family.Id == "sealed";
        }

        if (MarkedReadings.TellDirectCurrent(file))
        {
            yield return family => family.Id == "dc";
        }

        if (HasThreeLines(file))
        {
            yield return family => family.Phases == 3;
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

    /// <summary>Three lines were read, the marks are those of three phases, or the volts are none that one phase has.</summary>
    private static bool HasThreeLines(CaseFile file) => MarkedReadings.TellThreePhases(file)
        || file.BenchTests.Count(test => test.Test == "line-currents") >= Several || file.BenchTests.Count(test => test.Test == "supply-voltage" && test.Value is not null) >= Several
        || (file.Plate.Phases is null && file.Supply?.Phases is null && file.Plate.Volts.Concat(file.Supply?.Volts is { } fed ? [fed] : []).Any(volts => volts >= OnlyThreePhase));

    private static bool Uses(CaseFile file, string use) => file.Capacitors.Any(capacitor => capacitor.Present && capacitor.Use == use);
}
