using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What a case says of the parts that not every motor has: its capacitors, its brushes, and coils that are wound alike.</summary>
/// <param name="model">The causes and kinds of motor.</param>
/// <param name="file">The case.</param>
internal sealed class StatedParts(CauseModel model, CaseFile file)
{
    private const int Lines = 3;

    /// <summary>The kinds of capacitors.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["start", "run"];

    /// <summary>Whether brushes were looked for and found; <see langword="null"/> where nobody looked.</summary>
    public bool? Brushes => file.Choices.GetValueOrDefault("brushes") switch { "yes" => true, "no" => false, _ => null };

    /// <summary>Whether like coils come out that can be joined one way round or the other; <see langword="null"/> where nobody knows how it is wound.</summary>
    public bool? LikeCoils => file.Choices.TryGetValue("layout", out var layout) && model.Knowledge.Layouts.TryGetValue(layout, out var wound)
        ? wound.Forms().Any(form => form.Leads.Count > Lines && form.Coils.GroupBy(coil => coil.Group, StringComparer.Ordinal).Any(alike => alike.Count() > 1))
        : null;

    /// <summary>Whether a cause can be on a motor without the parts that are said to be missing.</summary>
    /// <param name="cause">A cause.</param>
    public bool Allow(Cause cause) => cause.Needs switch
    {
        "start-capacitor" => !file.LacksCapacitor("start"),
        "run-capacitor" => !file.LacksCapacitor("run"),
        "capacitor" => !file.HasNoCapacitor,
        "brushes" => Brushes != false,
        "like-coils" => LikeCoils != false,
        _ => true,
    };

    /// <summary>The kind of a capacitor by what was said of it, or else by the size that only one kind has; <see langword="null"/> where it may be either.</summary>
    /// <param name="capacitor">A capacitor.</param>
    public string? KindOf(Fact.Capacitor capacitor) =>
        Kinds.Contains(capacitor.Use, StringComparer.Ordinal) ? capacitor.Use
        : file.Choices.GetValueOrDefault("capacitor-use") is { } said && Kinds.Contains(said, StringComparer.Ordinal) ? said
        : capacitor.MicrofaradsTo is not null || capacitor.Microfarads > model.CapacitorSizes["run-most"] ? "start"
        : capacitor.Microfarads < model.CapacitorSizes["start-least"] ? "run"
        : null;
}
