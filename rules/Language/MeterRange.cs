namespace WireCoach.Rules.Language;

/// <summary>The 200 of "4.4 ohm on the 200 ohm range" is what the meter was set to, and no figure of the motor or its supply; the volts of an insulation tester are what it tests with.</summary>
internal static class MeterRange
{
    /// <summary>Claims such figures with their words.</summary>
    public static void Claim(Scene scene, UnitBook units)
    {
        var tester = scene.Hits.Exists(hit => hit.Concept is "instrument.insulation-tester" or "insulation-noun" or "megohm-word");
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (scene[at] is not { Kind: TokenKind.Number, Used: false })
            {
                continue;
            }

            var unit = units.At(scene, at + 1, true);
            var last = unit?.Last ?? (scene.IsWord(at + 1, "k", "m") ? at + 1 : at);
            if (scene.IsWord(last + 1, "range", "scale") && !(tester && unit is { Unit.Unit: "volt" }))
            {
                scene.Use(scene.IsWord(at - 1, "the") ? at - 1 : at, last + 1);
            }
        }
    }
}
