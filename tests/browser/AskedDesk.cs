using System.Reflection;
using System.Text.RegularExpressions;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Browser.Tests;

/// <summary>The service's own desk, on which a job stands for a while at a question of a test's choice: some come up once in a hundred jobs.</summary>
public class AskedDesk : DispatchProxy
{
    private ICoachDesk _desk = default!;
    private AskedQuestions _asked = default!;

    public static ICoachDesk Over(ICoachDesk desk, AskedQuestions asked)
    {
        var proxy = Create<ICoachDesk, AskedDesk>();
        (((AskedDesk)(object)proxy)._desk, ((AskedDesk)(object)proxy)._asked) = (desk, asked);
        return proxy;
    }

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        ArgumentNullException.ThrowIfNull(targetMethod);
        if (targetMethod.Name == nameof(ICoachDesk.Log) && args is [string logged, ..] && _asked.Decided(logged) is { } differences)
        {
            return Deciding((Task<Answer<SessionLog>>)targetMethod.Invoke(_desk, args)!, differences);
        }

        if (targetMethod.Name != nameof(ICoachDesk.Find) || args is not [string session, ..])
        {
            return targetMethod.Invoke(_desk, args);
        }

        if (session == AskedQuestions.Failing)
        {
            throw new InvalidOperationException("This job is there to fail.");
        }

        var answer = targetMethod.Invoke(_desk, args);
        return _asked.Of(session) is { } question
            ? Asking((Task<Answer<SessionView>>)answer!, question)
            : answer;
    }

    private static async Task<Answer<SessionLog>> Deciding(Task<Answer<SessionLog>> found, IReadOnlyList<Difference> differences) => (await found).Value! with { Differences = differences };

    private static async Task<Answer<SessionView>> Asking(Task<Answer<SessionView>> found, Question question)
    {
        var view = (await found).Value!;
        return view with
        {
            Assessment = view.Assessment with { Next = question, Cautions = [.. question.Cautions.Select(id => new Caution(id, Statement.Named($"caution.{id}")))] },
        };
    }
}

/// <summary>The question at which a job is shown.</summary>
public sealed class AskedQuestions
{
    private static readonly Regex Gaps = new(@"\{(\w+)\}", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    private static readonly Dictionary<string, string> Long = new(StringComparer.Ordinal)
    {
        ["count"] = "12", ["ohms"] = "12.5 Ω", ["volts"] = "500 V DC", ["seconds"] = "5", ["leads"] = "1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12", ["swap"] = "5 and 8",
    };

    /// <summary>A job whose pages fail.</summary>
    public const string Failing = "fails";

    private readonly System.Collections.Concurrent.ConcurrentDictionary<string, Question> _questions = new(StringComparer.Ordinal);

    /// <summary>What a job is shown asking, or <see langword="null"/> where it asks what it does.</summary>
    public Question? Of(string session) => _questions.GetValueOrDefault(session);

    private readonly System.Collections.Concurrent.ConcurrentDictionary<string, IReadOnlyList<Difference>> _decided = new(StringComparer.Ordinal);

    /// <summary>What a job's log is shown to have been decided otherwise.</summary>
    public IReadOnlyList<Difference>? Decided(string session) => _decided.GetValueOrDefault(session);

    public void Decide(string session, IReadOnlyList<Difference> differences) => _decided[session] = differences;

    public void Show(string session, Question question) => _questions[session] = question;

    /// <summary>Every question that knowledge has: cards, what the gate wants confirmed, and tests that look for a fault.</summary>
    public static IEnumerable<Question> All(TradeKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        return
        [
            .. knowledge.Questions.Values.Select(card => Card(knowledge, card)),
            .. knowledge.Confirmations.Values.Select(wanted => Confirmation(knowledge, wanted)),
            .. knowledge.Tests.Values.Select(test => Test(knowledge, test)),
        ];
    }

    private static Question Card(TradeKnowledge knowledge, QuestionCard card)
    {
        Statement Part(string part) => Filled(knowledge, card.Sentence(part));
        return new Question
        {
            Id = card.Id,
            Kind = Enum.Parse<QuestionKind>(card.Kind, ignoreCase: true),
            Text = Part("text"),
            Why = Part("why"),
            How = [.. card.How.Select((_, at) => Part($"how-{at + 1}"))],
            About = card.About,
            Task = card.Task,
            Options = card.Id == "supply"
                ? [.. knowledge.Supplies.Values.Where(supply => supply.Region == Region.NorthAmerica).Select(supply => new QuestionOption(supply.Id, Statement.Named(supply.SentenceId)))]
                : [.. card.Options.Select(option => new QuestionOption(option.Id, Part($"option-{option.Id}")))],
            Unit = card.Unit,
            Between = card.Kind == "reading" ? ["1", "2"] : null,
            Expect = [.. card.Expect.Select((_, at) => new Expectation(Part($"when-{at + 1}"), Part($"means-{at + 1}")))],
            CanBeUnknown = card.CanBeUnknown,
            Cautions = card.Cautions,
        };
    }

    private static Question Confirmation(TradeKnowledge knowledge, GateConfirmation wanted) => new()
    {
        Id = wanted.Id,
        Kind = QuestionKind.Confirm,
        Text = Filled(knowledge, $"confirmation.{wanted.Id}.ask"),
        Why = Filled(knowledge, "coach.gate-waits"),
        How = [.. wanted.How.Select((_, at) => Filled(knowledge, $"confirmation.{wanted.Id}.how-{at + 1}"))],
        About = "confirm",
        Task = "look",
        CanBeUnknown = false,
        Cautions = wanted.Cautions,
    };

    private static Question Test(TradeKnowledge knowledge, TestGuide test)
    {
        Statement Part(string part) => Filled(knowledge, $"test.{test.Id}.{part}");
        var measured = test.Value is { SpreadOver: null };
        return new Question
        {
            Id = $"test.{test.Id}",
            Kind = measured ? QuestionKind.Quantity : QuestionKind.Choice,
            Text = Part("ask"),
            Why = Part("why"),
            How = [.. test.How.Select((_, at) => Part($"how-{at + 1}"))],
            About = test.Id,
            Task = test.Task,
            Unit = measured ? test.Value!.Unit : null,
            Options = measured ? [] : [.. test.Outcomes.Select(outcome => new QuestionOption(outcome.Id, Part($"reading-{outcome.Id}")))],
            Expect = [.. test.Outcomes.Select(outcome => new Expectation(Part($"reading-{outcome.Id}"), Part($"means-{outcome.Id}")))],
        };
    }

    /// <summary>The sentence with long words in its gaps.</summary>
    private static Statement Filled(TradeKnowledge knowledge, string id)
    {
        var sentence = knowledge.Sentences[id];
        return Gaps.Matches(sentence.Text + sentence.Homeowner).Select(gap => gap.Groups[1].Value)
            .Aggregate(Statement.Named(id), (statement, gap) => statement.With(gap, Long.GetValueOrDefault(gap, "black-white")));
    }
}
