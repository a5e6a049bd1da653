using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Whose plate a figure is of, where a person speaks of the motor that comes off and the one that goes on.</summary>
internal static class PlateOwner
{
    /// <summary>The question for the plate of the motor that comes off.</summary>
    public const string OldPlate = "plate-old";

    private const string OldCue = "old-motor";
    private const string OldPast = "old-past";
    private const string NewCue = "new-one";

    /// <summary>Marks each plate figure with the motor that was spoken of last before it.</summary>
    public static void Tell(Scene scene)
    {
        var cues = scene.Hits.Where(hit => hit.Concept is OldCue or OldPast or NewCue).OrderBy(hit => hit.First).ToList();
        var asked = scene.Asked?.Id == OldPlate;
        var replaced = cues.Exists(hit => hit.Concept == OldPast) || (cues.Exists(hit => hit.Concept == OldCue) && (cues.Exists(hit => hit.Concept == NewCue) || scene.Hits.Exists(hit => hit.Concept == "replacement-wish")));
        if (asked || replaced)
        {
            scene.Amend<Fact.Plate>((_, at) => IsOld(cues, at, asked), plate => plate with { Of = Fact.Plate.Old });
        }
    }

    private static bool IsOld(List<Hit> cues, int at, bool asked) => cues.FindLast(cue => cue.First <= at) is { } cue ? cue.Concept is OldCue or OldPast : asked;
}
