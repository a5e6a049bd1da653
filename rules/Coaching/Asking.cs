using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>Makes questions from their cards in knowledge.</summary>
internal sealed class Asking(TradeKnowledge knowledge)
{
    /// <summary>The question of a card; the texts fill the gaps of all its sentences.</summary>
    public Question Of(string card, params ReadOnlySpan<(string Name, string Text)> gaps)
    {
        var written = knowledge.Questions[card];
        var filled = Statement.Named(written.Id);
        foreach (var (name, text) in gaps)
        {
            filled = filled.With(name, text);
        }

        Statement Part(string part) => filled.As(written.Sentence(part));
        return new Question
        {
            Id = card,
            Kind = Enum.Parse<QuestionKind>(written.Kind, ignoreCase: true),
            Text = Part("text"),
            Why = Part("why"),
            How = [.. written.How.Select((_, at) => Part($"how-{at + 1}"))],
            About = written.About,
            Task = written.Task,
            Options = [.. written.Options.Select(option => new QuestionOption(option.Id, Part($"option-{option.Id}")))],
            Unit = written.Unit,
            Expect = [.. written.Expect.Select((_, at) => new Expectation(Part($"when-{at + 1}"), Part($"means-{at + 1}")))],
            CanBeOpen = written.CanBeOpen,
            CanBeUnknown = written.CanBeUnknown,
            Cautions = written.Cautions,
        };
    }

    /// <summary>What the gate wants confirmed, as a question.</summary>
    public Question Confirmation(string id)
    {
        var wanted = knowledge.Confirmations[id];
        return new Question
        {
            Id = id,
            Kind = QuestionKind.Confirm,
            Text = Statement.Named($"confirmation.{id}.ask"),
            Why = Statement.Of("coach.gate-waits"),
            How = [.. wanted.How.Select((_, at) => Statement.Named($"confirmation.{id}.how-{at + 1}"))],
            About = "confirm",
            Task = "look",
            CanBeUnknown = false,
            Cautions = wanted.Cautions,
        };
    }

    /// <summary>A reading between two points, as its own question for each pair.</summary>
    public Question Reading(string card, string from, string to, params ReadOnlySpan<(string Name, string Text)> gaps)
    {
        (string, string)[] all = [("from", from), ("to", to), .. gaps];
        return Of(card, all) with { Id = $"{card}.{from}.{to}", Between = [from, to] };
    }

    /// <summary>The supplies of a region as options: direct current for a motor that runs on nothing else, mains for all others.</summary>
    public IReadOnlyList<QuestionOption> Supplies(Region region, int? phases) =>
    [
        .. knowledge.Supplies.Values.Where(supply => supply.Region == region && (supply.Phases == 0) == (phases == 0))
            .Select(supply => new QuestionOption(supply.Id, Statement.Named(supply.SentenceId))),
    ];
}
