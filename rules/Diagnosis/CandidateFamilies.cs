using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Which kinds of motor this one may be, by what is known of it.</summary>
internal static class CandidateFamilies
{
    private const int Several = 3;

    /// <summary>The weight of each family, in the order given; families that the facts rule out weigh nothing.</summary>
    /// <param name="file">The case.</param>
    /// <param name="model">The families and what is known of them.</param>
    /// <param name="sealedCircuit">Whether the motor sits in a sealed circuit.</param>
    /// <remarks>Facts that contradict each other rule out all; then the family that was named, or else none of them, counts.</remarks>
    public static double[] Weights(CaseFile file, CauseModel model, bool sealedCircuit)
    {
        double[] all = [.. model.Families.Select(family => family.Weight * ByUse(family, file.Application?.ApplicationId, model.ByUse))];
        var weights = Array.ConvertAll(all, weight => weight);
        foreach (var fits in Filters(file, model, sealedCircuit))
        {
            double[] kept = [.. model.Families.Select((family, at) => fits(family) ? weights[at] : 0)];
            weights = Array.Exists(kept, weight => weight > 0) ? kept : weights;
        }

        return weights;
    }

    private static double ByUse(MotorFamily family, string? use, TradeRule byUse) =>
        family.OftenIn.Contains(use, StringComparer.Ordinal) ? byUse["often"]
        : family.SeldomIn.Contains(use, StringComparer.Ordinal) ? byUse["seldom"]
        : 1;

    private static IEnumerable<Func<MotorFamily, bool>> Filters(CaseFile file, CauseModel model, bool sealedCircuit)
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

        if (new MarkedLeads(model, file).Bearing is { Count: > 0 } bearing)
        {
            yield return family => bearing.Any(form => family.Layouts.Contains(form.Id, StringComparer.Ordinal));
        }

        if (HasThreeLines(file, model))
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

        if (file.Capacitors.Exists(capacitor => capacitor.Present) || file.HasNoCapacitor)
        {
            yield return family => family.HasCapacitor is not { } known || known != file.HasNoCapacitor;
        }

        foreach (var kind in StatedParts.Kinds)
        {
            if (file.HasCapacitor(kind) || file.LacksCapacitor(kind))
            {
                yield return family => Capacitor(family, kind) is not { } known || known == file.HasCapacitor(kind);
            }
        }

        if (new StatedParts(model, file).Brushes is { } brushes)
        {
            yield return family => family.Brushes is not { } known || known == brushes;
        }
    }

    /// <summary>Whether a kind of motor has a capacitor of a kind; <see langword="null"/> where some have.</summary>
    /// <param name="family">A kind of motor.</param>
    /// <param name="kind"><c>start</c> or <c>run</c>.</param>
    public static bool? Capacitor(MotorFamily family, string kind) => kind == "start" ? family.StartCapacitor : family.RunCapacitor;

    /// <summary>Three lines were read, or the volts are none that one phase has.</summary>
    private static bool HasThreeLines(CaseFile file, CauseModel model) =>
        file.BenchTests.Count(test => test.Test == "line-currents") >= Several || file.BenchTests.Count(test => test.Test == "supply-voltage" && test.Value is not null) >= Several
        || (file.Plate.Phases is null && file.Supply?.Phases is null && file.Plate.Volts.Concat(file.Supply?.Volts is { } fed ? [fed] : []).Any(volts => volts >= model.ThreePhaseVolts));
}
