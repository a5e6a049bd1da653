using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What a request makes of a session: the events to store, the session after them, and the reply. Stores nothing itself.</summary>
internal sealed class Turning(Coach coach, SentenceBook sentences)
{
    /// <summary>A new session.</summary>
    public Turned Open(string id, SessionEvent.Opened opened, Given given, DateTimeOffset at)
    {
        var first = new StoredEvent(id, 1, at, opened) { Key = given.Key, Print = given.Print };
        return Turn(SessionState.From([first]), null, given with { Key = null, Print = null }, at, [first]);
    }

    /// <summary>A turn of a session.</summary>
    public Turned Turn(LiveSession before, Given given, DateTimeOffset at) => Turn(before.State, before.Assessment, given, at, []);

    /// <summary>A finished sentence.</summary>
    public Said Say(Statement statement, Role role) => new(statement.Id, sentences.Render(statement, role), false, statement.Quotes);

    private Turned Turn(SessionState state, Assessment? before, Given given, DateTimeOffset at, IReadOnlyList<StoredEvent> begun)
    {
        var events = new Recorder(state, at, given, begun);
        var facts = Numbered(given.Facts, state.Taken, at);
        if (facts.Count > 0 || given.Words is not null)
        {
            events.Add(new SessionEvent.FactsTaken(facts, given.Words, given.NotUnderstood.Count == 0 ? null : given.NotUnderstood, given.Question));
        }

        foreach (var retracted in given.Retracted)
        {
            events.Add(new SessionEvent.Retracted(retracted));
        }

        var file = events.State.Case;
        var now = coach.Assess(file);
        var role = file.Role;
        var said = SaidBack(given, facts, role).Concat(TakenBack(given, state, role)).Concat(Wanted(before?.Next, given, role)).Concat(given.Answers).Concat(Judged(state, before, now, given, role)).Select(statement => Say(statement, role)).ToList();
        foreach (var sentence in said)
        {
            events.Add(new SessionEvent.Said(sentence.Id, sentence.Text, Rules(sentence.Quotes.Select(quote => quote.Rule))));
        }

        var known = (before?.Cautions ?? []).Select(caution => caution.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var caution in now.Cautions.Where(caution => known.Add(caution.Id)))
        {
            events.Add(new SessionEvent.CautionShown(
                caution.Id, sentences.Render(caution.Text, role), Rules(caution.Text.Quotes.Select(quote => quote.Rule))));
        }

        Conclude(events, now, given, role);
        var reply = new Reply
        {
            Role = role,
            Understood = facts,
            NotUnderstood = [.. given.NotUnderstood.Select(text => new Unheard(text))],
            Say = said,
            Ask = now.Next,
            Assessment = now,
            Sequence = events.State.Sequence,
        };
        return new(new LiveSession(events.State, file, now, reply), events.Events, reply);
    }

    /// <summary>Typed words are said back as they were understood, and what was not is named: nothing is dropped.</summary>
    private List<Statement> SaidBack(Given given, List<Fact> facts, Role role)
    {
        if (given.Words is null)
        {
            return [];
        }

        var read = Echo.Of([.. facts.Where(fact => !IsMark(fact))]).Select(said => sentences.Render(said, role)).Distinct(StringComparer.Ordinal).ToList();
        return
        [
            .. read.Count == 0 ? Array.Empty<Statement>() : [Statement.Of("reply.read", ("facts", string.Join(" · ", read)))],
            .. given.Doubtful.Select(doubt => Statement.Of(Reply(doubt), ("text", doubt.Text), ("readings", string.Join(" · ", doubt.Reads.Select(read => sentences.Render(Reading(read), role)))))),
            .. given.NotUnderstood.Except(given.Doubtful.Select(doubt => doubt.Text), StringComparer.Ordinal).Select(text => Statement.Of("reply.not-understood", ("text", text))),
        ];
    }

    /// <summary>What doubtful words may mean: a symptom by its name, a figure by what it is of.</summary>
    private static Statement Reading(string read) => Kind(read) is "symptom" or "aside" or "likely" or "likely-not" or "doubt" or "maybe"
        ? Statement.Named($"symptom.{read[(read.IndexOf('/', StringComparison.Ordinal) + 1)..]}")
        : Statement.Named($"reading.{read.Replace('/', '-')}");

    /// <summary>A symptom that was named and not told of this motor, one that is taken for told or for denied, one that is not; a part of what has to be confirmed; or what has to be chosen from.</summary>
    private static string Reply(Leftover doubt) => Kind(doubt.Reads[0]) switch
    {
        "aside" => "reply.aside",
        "likely" => "reply.likely",
        "likely-not" => "reply.likely-not",
        "doubt" => "reply.doubt",
        "maybe" => "reply.maybe",
        "part" => "reply.part",
        _ when doubt.Reads.Count == 1 => "reply.open",
        _ => "reply.which",
    };

    private static string Kind(string read) => read[..read.IndexOf('/', StringComparison.Ordinal)];

    private IEnumerable<Statement> TakenBack(Given given, SessionState before, Role role)
    {
        var gone = before.Facts.Where(fact => given.Retracted.Contains(fact.FactId, StringComparer.Ordinal)).Select(fact => sentences.Render(Echo.Of(fact), role)).ToList();
        return gone.Count == 0 ? [] : [Statement.Of("reply.taken-back", ("facts", string.Join(" · ", gone)))];
    }

    /// <summary>Where nothing of a message was understood: which kind of answer the open question wants.</summary>
    private IEnumerable<Statement> Wanted(Question? asked, Given given, Role role) =>
        asked is null || given.NotUnderstood.Count == 0 || given.Facts.Count > 0 || given.Answers.Count > 0 || given.Retracted.Count > 0
            ? []
            : asked.Kind switch
            {
                QuestionKind.Quantity => [Statement.Of("reply.wants-number", ("unit", Units.Sign(asked.Unit ?? "count")))],
                QuestionKind.Reading => [Statement.Of("reply.wants-reading")],
                QuestionKind.Choice => [Statement.Of("reply.wants-choice", ("options", string.Join(" · ", asked.Options.Select(option => sentences.Render(option.Text, role)))))],
                QuestionKind.Confirm => [Statement.Of("reply.wants-done")],
                _ => [],
            };

    /// <summary>Danger words are answered by a caution, what is unsettled is said back as such: neither is said back as a choice.</summary>
    private static bool IsMark(Fact fact) => fact is Fact.Choice choice
        && (choice.Question.StartsWith(Fact.Choice.Danger, StringComparison.Ordinal) || choice.Question.StartsWith(Fact.Choice.Unsettled, StringComparison.Ordinal));

    private void Conclude(Recorder events, Assessment now, Given given, Role role)
    {
        var concluded = Conclusion.Of(now);
        if (!Conclusion.Same(concluded, events.State.Concluded))
        {
            events.Add(concluded);
        }

        if (now.Next?.Id != events.State.Asked || (given.Question is not null && given.Question == now.Next?.Id))
        {
            events.Add(now.Next is { } next
                ? new SessionEvent.Asked(next.Id, sentences.Render(next.Text, role), next.About)
                : new SessionEvent.Asked(null, null, null));
        }

        if (now.Status == "closed")
        {
            events.Add(new SessionEvent.Closed());
        }
    }

    private static List<Fact> Numbered(IReadOnlyList<Fact> facts, int taken, DateTimeOffset at) =>
        [.. facts.Select((fact, place) => fact with { FactId = string.Create(CultureInfo.InvariantCulture, $"f{taken + place + 1}"), At = at })];

    /// <summary>What is new; where an answer left its own question open and nothing is new, what stood against the answer before stands against this one too.</summary>
    private IEnumerable<Statement> Judged(SessionState before, Assessment? earlier, Assessment now, Given given, Role role)
    {
        var fresh = Fresh(earlier?.Say ?? [], now.Say).ToList();
        if (fresh.Count > 0 || given.Question is null || given.Question != now.Next?.Id || before.Turns.IsEmpty)
        {
            return fresh;
        }

        var last = before.Turns[^1].Say.Select(said => said.Text).ToHashSet(StringComparer.Ordinal);
        return now.Say.Where(statement => last.Contains(sentences.Render(statement, role)));
    }

    /// <summary>What is said now and was not said before, by its words.</summary>
    private static IEnumerable<Statement> Fresh(IReadOnlyList<Statement> before, IReadOnlyList<Statement> now)
    {
        var known = before.Select(statement => statement.ToString()).ToHashSet(StringComparer.Ordinal);
        return now.Where(statement => known.Add(statement.ToString()));
    }

    private static List<string> Rules(IEnumerable<string> rules) => [.. rules.Distinct(StringComparer.Ordinal)];

    /// <summary>Gives events their places and folds them.</summary>
    private sealed class Recorder(SessionState state, DateTimeOffset at, Given given, IReadOnlyList<StoredEvent> begun)
    {
        private readonly List<StoredEvent> _events = [.. begun];

        public SessionState State { get; private set; } = state;

        public IReadOnlyList<StoredEvent> Events => _events;

        public void Add(SessionEvent happened)
        {
            var first = _events.Count == 0;
            var stored = new StoredEvent(State.Id, State.Sequence + 1, at, happened)
            {
                Key = first ? given.Key : null,
                Print = first ? given.Print : null,
            };
            _events.Add(stored);
            State = State.With(stored);
        }
    }
}

/// <summary>What a request makes of a session.</summary>
/// <param name="After">The session after it.</param>
/// <param name="Events">What to store before it is acknowledged.</param>
/// <param name="Reply">What is answered.</param>
internal sealed record Turned(LiveSession After, IReadOnlyList<StoredEvent> Events, Reply Reply);
