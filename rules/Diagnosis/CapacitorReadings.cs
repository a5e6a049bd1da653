using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What was measured of the capacitors, each by its kind: a run capacitor that has faded says nothing of the one for the start.</summary>
/// <param name="model">The causes and kinds of motor.</param>
internal sealed class CapacitorReadings(CauseModel model)
{
    /// <summary>The test that measures a capacitor.</summary>
    public const string Test = "capacitance";

    /// <summary>The latest result of each kind; one of a capacitor whose kind is not known takes the place of all before it.</summary>
    /// <param name="guide">The test.</param>
    /// <param name="file">The case.</param>
    public IReadOnlyList<CapacitorReading> Of(TestGuide guide, CaseFile file)
    {
        var parts = new StatedParts(model, file);
        var weights = CandidateFamilies.Weights(file, model, sealedCircuit: false);
        var read = new List<CapacitorReading>();
        foreach (var fact in file.Facts)
        {
            if (Read(guide, file, parts, fact) is { } told)
            {
                // of a kind that no such motor has it was called so by mistake
                var kind = told.Kind is { } named && model.Families.Where((_, at) => weights[at] > 0).Any(family => CandidateFamilies.Capacitor(family, named) != false) ? told.Kind : null;
                read.RemoveAll(one => one.Kind is null || kind is null || one.Kind == kind);
                read.Add(told with { Kind = kind });
            }
        }

        return read;
    }

    /// <summary>Microfarads that were read, or that follow from volts and amps where the hertz are known.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="capacitor">A capacitor.</param>
    /// <param name="file">The case.</param>
    public static double? Measured(TradeKnowledge knowledge, Fact.Capacitor capacitor, CaseFile file) => capacitor.MeasuredMicrofarads
        ?? (capacitor is { AcrossVolts: > 0, ThroughAmps: not null } ? CapacitorHealth.Measured(knowledge, new CapacitorInput
        {
            Hertz = file.Supply?.Hertz ?? file.Plate.Hertz,
            Measured = new CapacitorMeasured { Volts = capacitor.AcrossVolts, Amps = capacitor.ThroughAmps },
        })?.Value : null);

    private CapacitorReading? Read(TestGuide guide, CaseFile file, StatedParts parts, Fact fact) => fact switch
    {
        Fact.BenchTest { Test: Test, Outcome: { } outcome } when guide.Outcomes.Any(one => one.Id == outcome) => new(Only(file, parts), outcome),
        Fact.BenchTest { Test: Test, Value: { } value } => Judged(guide, file, value, file.Capacitors.FindLast(one => one.Microfarads is not null), Only(file, parts)),
        Fact.Capacitor { Spare: false } capacitor when Measured(model.Knowledge, capacitor, file) is { } microfarads =>
            Marked(file, parts, capacitor) is var mark && Judged(guide, file, microfarads, mark, parts.KindOf(capacitor) ?? (mark is null ? null : parts.KindOf(mark))) is { } judged ? judged : null,
        _ => null,
    };

    private static CapacitorReading? Judged(TestGuide guide, CaseFile file, double microfarads, Fact.Capacitor? mark, string? kind) =>
        mark is not null && Outcomes.Of(guide, [microfarads], file, mark) is { } outcome ? new(kind, outcome) : null;

    /// <summary>The marks of the very capacitor that was measured: its own, or else the latest that may be of its kind.</summary>
    private static Fact.Capacitor? Marked(CaseFile file, StatedParts parts, Fact.Capacitor measured) => measured.Microfarads is not null ? measured
        : file.Capacitors.FindLast(one => one.Microfarads is not null && (parts.KindOf(one) is not { } kind || (parts.KindOf(measured) ?? kind) == kind));

    /// <summary>The kind of the only capacitor that is known of this motor.</summary>
    private static string? Only(CaseFile file, StatedParts parts) =>
        file.Capacitors.FindAll(one => one.Present).Select(parts.KindOf).OfType<string>().Distinct(StringComparer.Ordinal).ToList() is [var only] && !file.Capacitors.Exists(one => one.Use == "both") ? only : null;
}

/// <summary>What a measured capacitor showed.</summary>
/// <param name="Kind">Its kind, as in <see cref="StatedParts.Kinds"/>; <see langword="null"/> where it is not known.</param>
/// <param name="Outcome">The outcome of the test.</param>
internal sealed record CapacitorReading(string? Kind, string Outcome);
