namespace WireCoach.Rules.Language;

/// <summary>
/// Words that do not speak of this motor as it is now: "could a bad capacitor make it hum?", "it hummed until we changed the switch", "the fridge hums".
/// No symptom is concluded from them; what warns of danger hears them still. What was looked for and not found is denied.
/// </summary>
internal static class Asides
{
    private const string Supposed = "supposed";
    private const string Cured = "cured";
    private const string Planned = "planned";
    private const string Other = "other-thing";
    private const string Sought = "sought";
    private const string NotFound = "none-found";
    private const string Elsewhere = "of-another";
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
                case Sought when hits.Find(other => other.Concept == NotFound && other.First > hit.Last && other.First - hit.Last <= ReachOfSearch && tokens[other.First].Sentence == tokens[hit.First].Sentence) is { } none:
                    for (var at = hit.Last + 1; at < none.First; at++)
                    {
                        tokens[at].DeniedFrom = hit.First;
                    }

                    break;
                case Sought or Planned:
                    var turn = hits.Where(other => other.Concept == Turn && other.First > hit.Last).Select(other => other.First).DefaultIfEmpty(tokens.Count).Min();
                    Mark(tokens, hit.First, token => token.Clause == tokens[hit.First].Clause && token.Start < (turn < tokens.Count ? tokens[turn].Start : int.MaxValue));
                    break;
                case Cured or Elsewhere:
                    Mark(tokens, tokens.FindIndex(token => token.Sentence == tokens[hit.First].Sentence), token => token.Start < tokens[hit.First].Start);
                    break;
                case Other when Opens(tokens, hit) && !hits.Exists(back => back.Concept == Back && back.First > hit.Last && tokens[back.First].Clause == tokens[hit.First].Clause):
                    Mark(tokens, hit.First, token => token.Clause == tokens[hit.First].Clause);
                    break;
            }
        }
    }

    private static bool Opens(List<Token> tokens, Hit hit) =>
        hit.First <= Opening || tokens[hit.First - 1 - Opening].Clause != tokens[hit.First].Clause || tokens[hit.First - 1].Clause != tokens[hit.First].Clause;

    private static void Mark(List<Token> tokens, int from, Func<Token, bool> reaches)
    {
        for (var at = from; at < tokens.Count && reaches(tokens[at]); at++)
        {
            tokens[at].Aside = true;
        }
    }
}
