namespace WireCoach.Rules.Language;

/// <summary>Finds the words that nothing was made of, so that they can be said back.</summary>
internal sealed class Leftovers(Scene scene, HashSet<string> smallTalk)
{
    private const int Noteworthy = 4;

    public List<Leftover> Find()
    {
        var found = new List<(int At, Leftover Left)>();
        foreach (var clause in Enumerable.Range(0, scene.Tokens.Count).GroupBy(at => scene.Tokens[at].Clause))
        {
            var places = clause.Where(at => scene.Tokens[at].Kind != TokenKind.Mark).ToList();
            if (places.Count == 0)
            {
                continue;
            }

            if (places.Exists(at => scene.Tokens[at].Used))
            {
                Parts(places, found);
            }
            else if (places.Exists(IsContent))
            {
                found.Add((places[0], new Leftover(scene.Span(places[0], places[^1]))));
            }
        }

        return [.. found.Select(left => left.Left)];
    }

    /// <summary>In a clause that was understood, numbers and longer runs of words that were not.</summary>
    private void Parts(List<int> places, List<(int At, Leftover Left)> found)
    {
        for (var from = 0; from < places.Count;)
        {
            var to = from;
            while (to < places.Count && !scene.Tokens[places[to]].Used)
            {
                to++;
            }

            var run = places[from..to];
            if (run.Exists(at => scene.Tokens[at].Kind is TokenKind.Number or TokenKind.Tag) || run.Count(IsContent) >= Noteworthy)
            {
                found.Add((run[0], new Leftover(scene.Span(run[0], run[^1]))));
            }

            from = Math.Max(to, from) + 1;
        }
    }

    private bool IsContent(int at) => scene.Tokens[at] is var token && token.Kind != TokenKind.Mark && !smallTalk.Contains(token.Text);
}
