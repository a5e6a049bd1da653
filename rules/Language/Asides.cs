namespace WireCoach.Rules.Language;

/// <summary>
/// Words that do not speak of this motor as it is now: "could a bad capacitor make it hum?", "it hummed until we changed the switch", "the fridge hums".
/// No symptom is concluded from them; what warns of danger hears them still. What was looked for and not found is denied.
/// </summary>
internal static class Asides
{
    private const string Supposed = "supposed";
    private const string Cured = "cured";
    private const string CuredNow = "cured-now";
    private const string Mended = "mended";
    private const string Planned = "planned";
    private const string Other = "other-thing";
    private const string Sought = "sought";
    private const string NotFound = "none-found";
    private const string OfAnother = "of-another";
    private const string Back = "back-to-motor";
    private const string Turn = "turn-of-speech";
    private const int Opening = 1;
    private const int ReachOfSearch = 12;

    /// <summary>Marks them.</summary>
    public static void Mark(List<Token> tokens, List<Hit> hits)
    {
        foreach (var hit in hits)
        {
            switch (hit.Concept)
            {
                case Supposed:
                    Mark(tokens, hit.First, token => token.Sentence == tokens[hit.First].Sentence);
                    break;
                case Sought when NotFoundAfter(tokens, hits, hit) is { } none:
                    tokens.GetRange(hit.Last + 1, none.First - hit.Last - 1).ForEach(token => token.DeniedFrom = hit.First);
                    break;
                case Sought or Planned:
                    var turn = hits.Find(other => other.Concept == Turn && other.First > hit.Last);
                    Mark(tokens, hit.First, token => token.Clause == tokens[hit.First].Clause && (turn is null || token.Start < tokens[turn.First].Start));
                    break;
                case Cured or OfAnother:
                    Mark(tokens, tokens.FindIndex(token => token.Sentence == tokens[hit.First].Sentence), token => token.Start < tokens[hit.First].Start);
                    break;
                case CuredNow when Before(tokens, hits, hit) is { } mended:
                    Mark(tokens, tokens.FindIndex(token => token.Sentence == tokens[mended.First].Sentence), token => token.Sentence == tokens[mended.First].Sentence && token.Start < tokens[hit.First].Start);
                    break;
                case Other when Opens(tokens, hit) && !ComesBack(tokens, hits, hit):
                    Mark(tokens, hit.First, token => token.Clause == tokens[hit.First].Clause);
                    break;
            }
        }
    }

    /// <summary>What was mended in the same sentence or the one before: "I replaced the capacitor because it only hummed. Now it starts right up".</summary>
    private static Hit? Before(List<Token> tokens, List<Hit> hits, Hit cured) => hits.FindLast(other =>
        other.Concept == Mended && other.First < cured.First && tokens[cured.First].Sentence - tokens[other.First].Sentence is 0 or 1);

    private static Hit? NotFoundAfter(List<Token> tokens, List<Hit> hits, Hit sought) => hits.Find(other =>
        other.Concept == NotFound && other.First > sought.Last && other.First - sought.Last <= ReachOfSearch && tokens[other.First].Sentence == tokens[sought.First].Sentence);

    /// <summary>Whether it is the subject of its clause.</summary>
    private static bool Opens(List<Token> tokens, Hit hit) => tokens[Math.Max(0, hit.First - 1 - Opening)].Clause != tokens[hit.First].Clause || hit.First <= Opening;

    private static bool ComesBack(List<Token> tokens, List<Hit> hits, Hit other) =>
        hits.Exists(back => back.Concept == Back && back.First > other.Last && tokens[back.First].Clause == tokens[other.First].Clause);

    private static void Mark(List<Token> tokens, int from, Func<Token, bool> reaches)
    {
        for (var at = from; at < tokens.Count && reaches(tokens[at]); at++)
        {
            tokens[at].Aside = true;
        }
    }
}
