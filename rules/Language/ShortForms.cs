using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>The short ways of answering a question that its card gives: "bridged", "guard's on". What they mean holds for that question alone.</summary>
internal sealed class ShortForms
{
    private const string Consent = "+yes";
    private const string Refusal = "+no";
    private const int ShortClause = 7;

    private readonly Dictionary<string, IReadOnlyList<Form>> _done;
    private readonly Dictionary<string, IReadOnlyList<Less>> _less;
    private readonly Dictionary<string, IReadOnlyList<Form>> _options;

    public ShortForms(TradeKnowledge knowledge)
    {
        _done = knowledge.Questions.Values.Where(card => card.Heard.Count > 0).Select(card => (card.Id, card.Heard))
            .Concat(knowledge.Confirmations.Values.Where(wanted => wanted.Heard.Count > 0).Select(wanted => (wanted.Id, wanted.Heard)))
            .ToDictionary(one => one.Id, one => Forms(one.Id, one.Heard), StringComparer.Ordinal);
        _less = knowledge.Confirmations.Values.ToDictionary(
            wanted => wanted.Id,
            IReadOnlyList<Less> (wanted) => [.. wanted.Short.Select((less, at) => new Less(wanted.ShortId(at), less.IsPart, Forms(wanted.Id, less.Heard), Forms(wanted.Id, less.Always)))],
            StringComparer.Ordinal);
        _options = knowledge.Questions.Values.Select(card => (card.Id, Told: card.Options.Select(option => (option.Id, option.Heard))))
            .Concat(knowledge.Tests.Values.Select(test => (Id: TestGuide.QuestionPrefix + test.Id, Told: test.Outcomes.Select(outcome => (outcome.Id, outcome.Heard)))))
            .Where(one => one.Told.Any(option => option.Heard.Count > 0))
            .ToDictionary(one => one.Id, IReadOnlyList<Form> (one) => [.. one.Told.SelectMany(option => Forms(option.Id, option.Heard))], StringComparer.Ordinal);
    }

    /// <summary>The words that say that what a question wants is done; short clauses around such words are claimed whole.</summary>
    public (int First, int Last)? Done(string question, Scene scene)
    {
        var said = Said(_done.GetValueOrDefault(question, []), scene);
        foreach (var clause in said.Select(places => scene.Tokens[places.First].Clause).Distinct())
        {
            var tokens = scene.Tokens.FindAll(token => token.Clause == clause);
            tokens.ForEach(token => token.Used |= tokens.Count <= ShortClause);
        }

        return said.Count > 0 ? said[0] : null;
    }

    /// <summary>The words that say that something less than what a question wants is done, with the sentence that says what is missing; words that it is done go before them, but for some.</summary>
    /// <param name="question">The question's id.</param>
    /// <param name="scene">The message.</param>
    /// <param name="done">Whether it says that it is done.</param>
    /// <param name="consents">Whether it says yes.</param>
    public (string Missing, int First, int Last)? LessThan(string question, Scene scene, bool done, bool consents) =>
        _less.GetValueOrDefault(question, []).SelectMany(less => Said(less.Always, scene).Concat(done || (consents && less.IsPart) ? [] : Said(less.Heard, scene))
            .Select(place => ((string, int, int)?)(less.Missing, place.First, place.Last))).FirstOrDefault();

    /// <summary>Claims the words for parts of what is confirmed: "isolated, locked and proved dead" says one thing.</summary>
    public void ClaimParts(string question, Scene scene)
    {
        foreach (var (first, last) in _less.GetValueOrDefault(question, []).Where(less => less.IsPart).SelectMany(less => Said(less.Heard, scene)))
        {
            scene.Use(first, last);
        }
    }

    /// <summary>Takes words that answer what is to be confirmed out of what is read for symptoms: "the breaker is off" tells no trip then.</summary>
    public void Claim(Scene scene)
    {
        if (scene.Asked is { Kind: QuestionKind.Confirm } asked)
        {
            var answers = Said(_done.GetValueOrDefault(asked.Id, []), scene).Concat(_less.GetValueOrDefault(asked.Id, []).SelectMany(less => Said(less.Heard, scene))).ToList();
            scene.Hits.RemoveAll(hit => !hit.Concept.StartsWith("answer-", StringComparison.Ordinal) && answers.Exists(answer => hit.First >= answer.First && hit.First <= answer.Last));
        }
    }

    /// <summary>The option that the words name; the longest form wins, and two options that are named alike are none.</summary>
    /// <param name="question">The question's id.</param>
    /// <param name="scene">The message.</param>
    /// <param name="words">How many of its words say something.</param>
    /// <param name="consents">Whether it says yes.</param>
    /// <param name="refuses">Whether it says no.</param>
    public string? Option(string question, Scene scene, int words, bool consents, bool refuses)
    {
        if (!_options.TryGetValue(question, out var forms) && !_options.TryGetValue(Card(question), out forms))
        {
            return null;
        }

        var least = scene.HasFacts ? words : 0; // among facts a word by the way is no answer
        var named = forms.Where(form => form.Written is not (Consent or Refusal) && form.Phrase.Length * 2 >= least && form.In(scene) is not null).ToList();
        var longest = named.Select(form => form.Phrase.Length).DefaultIfEmpty().Max();
        var best = named.Where(form => form.Phrase.Length == longest).Select(form => form.Option).Distinct(StringComparer.Ordinal).ToList();
        var bare = consents == refuses ? null : consents ? Consent : Refusal;
        return best is [var single] ? single
            : best.Count > 0 ? null
            : forms.FirstOrDefault(form => form.Written == bare)?.Option;
    }

    /// <summary>"repair-made.worn-bearing" is asked by the card of its first part.</summary>
    private static string Card(string question) => question.Split('.')[0];

    private static List<(int First, int Last)> Said(IReadOnlyList<Form> forms, Scene scene) => [.. forms.Select(form => form.In(scene)).OfType<(int First, int Last)>()];

    private static IReadOnlyList<Form> Forms(string option, IReadOnlyList<string> heard) =>
        [.. heard.Select(written => new Form(option, written, new Phrase(option, Swallowing.None, written)))];

    private sealed record Less(string Missing, bool IsPart, IReadOnlyList<Form> Heard, IReadOnlyList<Form> Always);

    private sealed record Form(string Option, string Written, Phrase Phrase)
    {
        /// <summary>Where it stands whole and undenied.</summary>
        public (int First, int Last)? In(Scene scene)
        {
            for (var at = 0; at < scene.Tokens.Count; at++)
            {
                if (!scene.Tokens[at].Denied && Phrase.Firsts.Any(first => Phrase.Fits(first, scene.Tokens[at])) && Phrase.At(scene.Tokens, at, [], []) is { } places)
                {
                    return (places[0], places[^1]);
                }
            }

            return null;
        }
    }
}
