using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What a person's words amount to in a session: facts, corrections, answers, undo, and what is answered to their questions.</summary>
internal sealed class Hearing(TradeKnowledge knowledge, Coach coach, FactCheck check)
{
    private readonly Listener _listener = new(knowledge);
    private readonly Faq _faq = new(knowledge);

    /// <summary>The words in a session as it stands.</summary>
    public Answer<Given> Hear(LiveSession live, string? text)
    {
        var heard = Hear(live.Case, live.Assessment.Next, text);
        return !heard.IsGiven ? Answer<Given>.Refused(heard.Problems)
            : heard.Value.Undo ? heard.Value.Given with { Retracted = Last(live.State) }
            : heard.Value.Given;
    }

    /// <summary>The words with a question open.</summary>
    public Answer<Heard> Hear(CaseFile file, Question? asked, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Refusals.Empty("text");
        }

        if (text.Length > FactCheck.TextLength)
        {
            return Refusals.TooLong("text", FactCheck.TextLength);
        }

        var understood = _listener.Hear(text, [.. file.SpokenLeads], Open(asked, file.Role), file.Region);
        return understood.IsGiven ? Sorted(file, asked, text, understood.Value) : Answer<Heard>.Refused(understood.Problems);
    }

    /// <summary>What to look for among the jobs where first words ask after earlier ones, or where somebody who reads records names a machine and nothing that is the matter with it.</summary>
    public string? Sought(NewSession opening)
    {
        if (string.IsNullOrWhiteSpace(opening.Text) || opening.Text.Length > FactCheck.TextLength
            || _listener.Hear(opening.Text, region: opening.Region).Value is not { Dangers.Count: 0 } understood || !understood.Facts.All(IsNoMatter))
        {
            return null;
        }

        var asked = understood.Questions.FirstOrDefault(question => question.Id == "records");
        var machine = understood.Facts.OfType<Fact.Application>().LastOrDefault()?.Text ?? asked?.Term;
        return asked is not null || (opening.Role == Role.Manager && machine is not null) ? machine ?? string.Empty : null;
    }

    /// <summary>The machine's name, and how it stopped: what one asks after an earlier job with.</summary>
    private static bool IsNoMatter(Fact fact) => fact is Fact.Application || (fact is Fact.Choice choice && choice.Question.StartsWith(Fact.Choice.Unsettled, StringComparison.Ordinal));

    private Answer<Heard> Sorted(CaseFile file, Question? asked, string text, Understood understood)
    {
        var answer = Answered(file, asked, understood);
        var running = Coach.IsRunning(file);
        var (measured, stray) = (running ? Measured(file, asked, understood).ToList() : [], running ? [] : Stray(file, asked, understood).ToList());
        var told = understood.Facts.Except(answer.Own ?? [], ReferenceEqualityComparer.Instance).Cast<Fact>().Where(fact => !stray.Contains(fact, ReferenceEqualityComparer.Instance)) // equal readings are two readings
            .Select(fact => fact is Fact.Plate figure && measured.Contains(figure) ? AsRun(figure) : fact)
            .Select(fact => coach.Completed(file, fact))
            .Where(fact => fact is not Fact.Capacitor || !AsksHow(understood))
            .Where(fact => Like(file, fact) is null || !understood.OtherPairs.Contains(fact, ReferenceEqualityComparer.Instance))
            .Where(fact => fact is not Fact.Goal || understood.Questions.Count == 0 || (Coach.GoalOf(file) is null && !understood.Symptoms.Any(symptom => symptom.Present))) // a question beside the job does not change the job
            .Select(fact => Denies(text) || understood.Corrections.Contains(fact, ReferenceEqualityComparer.Instance) ? fact with { Replaces = Like(file, fact) } : fact)
            .Where(fact => fact is not Fact.Lead named || !answer.Facts.OfType<Fact.Lead>().Any(lead => lead.Tag == named.Tag))
            .Concat(understood.Dangers.Select(danger => SafetyGate.Heard(danger.Id, danger.Span)).Where(danger => !Known(file, danger)));
        Fact[] facts = [.. answer.Facts.Select(fact => fact with { How = FactEntry.Typed, Span = fact.Span ?? text.Trim() }), .. told];
        var (taken, refused, why) = Taken(file, facts);
        Problem[] problems = [.. answer.Problems, .. why, .. stray.Select(figure => PlateStands(file, figure))];
        var after = taken.Aggregate(file, (known, fact) => known.With(fact));
        var replies = HearingReplies.To(understood, asked, knowledge, after, _faq, () => coach.Assess(after), () => coach.Sizes(after)).ToList();
        if (problems.Length > 0 && taken.Count == 0 && replies.Count == 0 && !understood.Undo)
        {
            return Answer<Heard>.Refused(problems);
        }

        string[] unheard = [.. understood.NotUnderstood.Select(leftover => leftover.Text), .. refused.Concat(stray).Select(fact => fact.Span ?? text.Trim())];
        var nothing = taken.Count == 0 && replies.Count == 0 && unheard.Length == 0 && !understood.Undo;
        return new Heard(
            new Given
            {
                Facts = [.. Coach.Implied(file, taken), .. taken],
                Words = text,
                NotUnderstood = nothing && !understood.IsCourtesy ? [text.Trim()] : unheard.Distinct(StringComparer.Ordinal).ToList(),
                Doubtful = [.. understood.NotUnderstood.Where(leftover => leftover.Reads.Count > 0)],
                Question = answer.Facts.Count > 0 ? asked?.Id : null,
                Answers = [.. replies, .. problems.Select(problem => problem.Advice)],
            },
            understood.Undo);
    }

    /// <summary>Figures that would change what the plate is known to say although nobody spoke of the plate: most likely they were measured.</summary>
    private static IEnumerable<Fact.Plate> Stray(CaseFile file, Question? asked, Understood understood) =>
        understood.SpeaksOfPlate || asked?.About == "plate"
            ? []
            : understood.Facts.Except(understood.Corrections, ReferenceEqualityComparer.Instance).OfType<Fact.Plate>()
                .Where(said => said.Of is null && file.Plate[said.Field] is { } known && known.Numbers.Count > 0 && !known.Numbers.SequenceEqual(said.Value.Numbers));

    /// <summary>While a start is being looked at, a single figure of speed, amps or volts that the plate does not give was measured.</summary>
    private static IEnumerable<Fact.Plate> Measured(CaseFile file, Question? asked, Understood understood) =>
        Stray(file, asked, understood).Where(figure => figure.Field is "rpm" or "amps" or "volts" && figure.Value.Numbers.Count == 1);

    private static Fact.Running AsRun(Fact.Plate figure) => new()
    {
        Volts = figure.Field == "volts" ? figure.Value.Numbers[0] : null,
        Amps = figure.Field == "amps" ? figure.Value.Numbers[0] : null,
        Rpm = figure.Field == "rpm" ? figure.Value.Numbers[0] : null,
        Span = figure.Span,
    };

    private static Problem PlateStands(CaseFile file, Fact.Plate figure) =>
        new("invalid-fact", "text", Statement.Of("hearing.plate-stands", ("known", file.Plate[figure.Field]!.Text), ("said", figure.Value.Text)));

    /// <summary>Whether a danger stands in the case already, so that saying it twice adds nothing.</summary>
    private static bool Known(CaseFile file, Fact danger) => danger is Fact.Choice choice && file.Choices.ContainsKey(choice.Question);

    /// <summary>The facts that the answer to the open question amounts to, and the heard facts in whose place they stand.</summary>
    private (IReadOnlyList<Fact> Facts, IReadOnlyList<Fact>? Own, IReadOnlyList<Problem> Problems) Answered(CaseFile file, Question? asked, Understood understood)
    {
        if (asked is null || understood.Answer is { Less: not null } || (understood.Answer is null && !(understood.Skip && understood.Facts.Count == 0)))
        {
            return ([], null, []);
        }

        if (understood.Answer is { Choice: not null } && AsksHow(understood))
        {
            return ([], understood.AnswerFacts, []);
        }

        var read = coach.Read(file, asked, understood.Answer is { } heard ? Answer(heard) : new QuestionAnswer { QuestionId = asked.Id, Unknown = true });
        return read switch
        {
            { IsGiven: false } => ([], understood.AnswerFacts, understood.Answer is { Unknown: true } && understood.Facts.Count > understood.AnswerFacts.Count ? [] : read.Problems), // "numbers worn off" among facts is no "I can't tell"
            { Value.Count: 0 } => ([], null, []), // free words: what was heard in them counts as it stands
            _ => (read.Value, understood.AnswerFacts, []),
        };
    }

    /// <summary>"How do I test a capacitor?" says neither that there is one nor what is wanted with it.</summary>
    private static bool AsksHow(Understood understood) => understood.Questions.Any(question => question.Id == "how-test")
        && understood.Facts.Except(understood.AnswerFacts, ReferenceEqualityComparer.Instance).All(fact => fact is Fact.Capacitor
        {
            Present: true, Spare: false, Use: "unknown", Microfarads: null, MicrofaradsTo: null, Volts: null, MeasuredMicrofarads: null, AcrossVolts: null, ThroughAmps: null,
        });

    private static QuestionAnswer Answer(HeardAnswer heard) => new()
    {
        QuestionId = heard.QuestionId,
        Choice = heard.Choice,
        Quantity = heard.Value is { } value ? new(value, heard.Unit) : null,
        Reading = heard.Reading is { } reading
            ? new AnsweredReading { Ohms = reading.Ohms, Open = reading.Open ? true : null, Short = reading.Short ? true : null, Kick = reading.Kick ? true : null }
            : null,
        Confirmed = heard.Confirmed,
        Text = heard.Text,
        Unknown = heard.Unknown ? true : null,
    };

    /// <summary>The facts that can be; one that cannot does not take the others with it.</summary>
    private (List<Fact> Taken, List<Fact> Refused, List<Problem> Why) Taken(CaseFile file, Fact[] facts)
    {
        var whole = check.Check(file, facts, "text");
        if (whole.IsGiven)
        {
            return ([.. whole.Value], [], []);
        }

        var (taken, refused, why) = (new List<Fact>(), new List<Fact>(), new List<Problem>());
        foreach (var fact in facts)
        {
            var one = check.Check(file, [.. taken.OfType<Fact.Lead>(), fact], "text");
            if (one.IsGiven)
            {
                taken.Add(one.Value[^1]);
            }
            else
            {
                refused.Add(fact);
                why.AddRange(one.Problems.Select(problem => problem with { Field = "text", Advice = Spoken(problem.Advice) }));
            }
        }

        return (taken, refused, why);
    }

    /// <summary>Who types knows no members of a body: a figure is named by itself.</summary>
    private static Statement Spoken(Statement advice) => advice.Id == "fact.out-of-range"
        ? Statement.Of("hearing.out-of-range", ("value", advice.Gaps["value"]), ("least", advice.Gaps["least"]), ("most", advice.Gaps["most"]))
        : advice;

    private OpenQuestion? Open(Question? asked, Role role) => asked is null ? null : new()
    {
        Id = asked.Id,
        Kind = asked.Kind,
        About = asked.About,
        Unit = asked.Unit,
        Between = asked.Between,
        CanBeOpen = asked.CanBeOpen,
        Options = [.. asked.Options.Select(option => new OpenOption(option.Id, knowledge.Sentences.Render(option.Text, role)))],
    };

    /// <summary>"No, red to blue was 5.1": what follows takes the place of what was said before.</summary>
    private static bool Denies(string text) => text.TrimStart().StartsWith("no,", StringComparison.OrdinalIgnoreCase);

    /// <summary>The latest fact in whose place a correction stands.</summary>
    private static string? Like(CaseFile file, Fact correction)
    {
        string Tag(string written) => file.Tag(written) ?? written;
        var like = file.Facts.FindLast(known => (known, correction) switch
        {
            (Fact.Reading before, Fact.Reading now) =>
                (before.From == Tag(now.From) && before.To == Tag(now.To)) || (before.From == Tag(now.To) && before.To == Tag(now.From)),
            (Fact.Plate before, Fact.Plate now) => before.Field == now.Field && before.Of == now.Of,
            (Fact.Joint before, Fact.Joint now) => before.Leads.Intersect(now.Leads, StringComparer.Ordinal).Any(),
            (Fact.Supply, Fact.Supply) or (Fact.Capacitor, Fact.Capacitor) or (Fact.Insulation, Fact.Insulation) or (Fact.Running, Fact.Running) => true,
            _ => false,
        });
        return like?.FactId is { Length: > 0 } id ? id : null;
    }

    /// <summary>What was taken last and still counts.</summary>
    private static List<string> Last(SessionState state)
    {
        var turn = state.Turns.FindLast(turn => turn.Facts.Any(fact => state.Facts.Exists(known => known.FactId == fact.FactId)));
        return [.. (turn?.Facts ?? []).Select(fact => fact.FactId).Where(id => state.Facts.Exists(known => known.FactId == id))];
    }

    /// <summary>What was heard.</summary>
    /// <param name="Given">What it amounts to.</param>
    /// <param name="Undo">Whether what was taken last goes back.</param>
    public sealed record Heard(Given Given, bool Undo);
}
