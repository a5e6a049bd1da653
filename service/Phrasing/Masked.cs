using System.Globalization;
using System.Text.RegularExpressions;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Phrasing;

/// <summary>A sentence whose gaps and numbers are hidden behind tokens: neither a value, nor a lead, nor a person's own word leaves.</summary>
/// <param name="Exact">The engine's sentence.</param>
/// <param name="Text">What may be shown to a model.</param>
/// <param name="Hidden">What the tokens stand for, in order.</param>
internal sealed partial record Masked(string Exact, string Text, IReadOnlyList<string> Hidden)
{
    public static Masked Of(Statement statement, SentenceBook sentences, Role role)
    {
        var gaps = statement.Gaps.Keys.ToList();
        var open = gaps.Select((gap, at) => (gap, at)).Aggregate(statement, (said, gap) => said.With(gap.gap, $"⟦g{gap.at}⟧"));
        var hidden = new List<string>();
        var text = HideRegex().Replace(sentences.Render(open, role), found =>
        {
            hidden.Add(found.Groups["gap"].Success ? statement.Gaps[gaps[int.Parse(found.Groups["gap"].Value, CultureInfo.InvariantCulture)]] : found.Value);
            return $"⟦{hidden.Count}⟧";
        });
        return new(sentences.Render(statement, role), text, hidden);
    }

    /// <summary>The answer with everything put back, or <see langword="null"/> unless each token came back once. Whether one may stand elsewhere is for the guard to say.</summary>
    public string? Restore(string answer)
    {
        var tokens = TokenRegex().Matches(answer);
        if (!tokens.Select(token => token.Value).Order(StringComparer.Ordinal).SequenceEqual(Enumerable.Range(1, Hidden.Count).Select(at => $"⟦{at}⟧").Order(StringComparer.Ordinal)))
        {
            return null;
        }

        var restored = TokenRegex().Replace(answer, token => Hidden[int.Parse(token.ValueSpan[1..^1], CultureInfo.InvariantCulture) - 1]);
        return answer.Count(sign => sign is '⟦' or '⟧') == 2 * Hidden.Count ? restored : null;
    }

    [GeneratedRegex(@"⟦g(?<gap>[0-9]+)⟧|[0-9]+(?:[.,][0-9]+)*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HideRegex();

    [GeneratedRegex("⟦[0-9]+⟧", RegexOptions.None, 1000)]
    private static partial Regex TokenRegex();
}
