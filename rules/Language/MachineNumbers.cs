namespace WireCoach.Rules.Language;

/// <summary>The 2 of "stirrer 2: hums" and "motor #2" says which machine it is, and names no lead; the 96 of "at the motor 96" may be volts.</summary>
internal static class MachineNumbers
{
    private const string Machine = "application.";
    private const string Plain = "any-machine";
    private const int Highest = 99;

    /// <summary>Claims them, and makes them part of the machine's name.</summary>
    public static void Claim(Scene scene, UnitBook units)
    {
        var atMotor = scene.Places("at-the-motor");
        for (var at = 0; at < scene.Hits.Count; at++)
        {
            var hit = scene.Hits[at];
            var named = hit.Concept.StartsWith(Machine, StringComparison.Ordinal);
            if ((named || hit.Concept == Plain) && Number(scene, hit.Last + 1, named, units) is { } last && !(scene.Tokens[last].Value >= RunFigures.LeastLineVolts && atMotor.Contains(hit.Last)))
            {
                scene.Use(hit.Last + 1, last);
                scene.Hits[at] = named ? hit with { Places = [.. hit.Places, .. Enumerable.Range(hit.Last + 1, last - hit.Last)] } : hit;
            }
        }
    }

    private static int? Number(Scene scene, int at, bool named, UnitBook units)
    {
        var marked = scene.IsWord(at, "#", "no", "nr", "number");
        var number = !marked ? at : scene.IsWord(at + 1, ".") ? at + 2 : at + 1;
        if (scene[number] is not { IsWhole: true, Value: >= 1 and <= Highest } || units.At(scene, number + 1, true) is not null)
        {
            return null;
        }

        return scene[number + 1] is not { } next || next.Is(":")
            || (next.Kind == TokenKind.Word && scene.At(number + 1, "lead-noun") is null && (marked || scene.At(number + 1, "counted-thing") is null)) ? number : null;
    }
}
