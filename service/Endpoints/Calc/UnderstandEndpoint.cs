using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>What a person's words amount to.</summary>
internal static class UnderstandEndpoint
{
    private const int MostLeads = 64;

    public static void MapUnderstand(this RouteGroupBuilder calc) => calc.MapPost("/understand", Understand)
        .WithSummary("Turns plain words into facts, symptoms, goals and questions, and says what was not understood")
        .WithDescription(
            "'leads' are the tags that are known; 'asked' is the open question and decides how a bare \"1.7\", \"OL\" or \"yes\" is read; 'region' settles what a normal " +
            "wall outlet gives. Facts of kind symptom are listed again under 'symptoms'. 'notUnderstood' holds the person's own words, with what they may mean under 'reads'. " +
            "'corrects' says that the facts take the place of earlier ones.");

    private static IResult Understand(UnderstandBody body, Listener listener, Problems problems)
    {
        var wrong = new List<Problem>();
        if (body.Text is null)
        {
            wrong.Add(Problem.NotGiven("text"));
        }

        if (body.Leads is { } tags && (tags.Count > MostLeads || tags.Any(string.IsNullOrWhiteSpace)))
        {
            wrong.Add(new Problem("invalid-fact", "leads", Statement.Of("problem.lead-tags", ("most", $"{MostLeads}"))));
        }

        var asked = Asked(body.Asked, wrong);
        return wrong.Count > 0 ? problems.Result(wrong) : Answer(listener.Hear(body.Text!, body.Leads, asked, body.Region), problems);
    }

    private static IResult Answer(Answer<Understood> heard, Problems problems) =>
        heard.IsGiven ? Results.Ok(UnderstandAnswer.Of(heard.Value)) : problems.Result(heard.Problems);

    private static OpenQuestion? Asked(AskedBody? asked, List<Problem> wrong)
    {
        if (asked is null)
        {
            return null;
        }

        if (asked.Id is null)
        {
            wrong.Add(Problem.NotGiven("asked.id"));
        }

        if (asked.Kind is null)
        {
            wrong.Add(Problem.NotGiven("asked.kind"));
        }

        return asked is { Id: { } id, Kind: { } kind }
            ? new OpenQuestion
            {
                Id = id,
                Kind = kind,
                About = asked.About,
                Unit = asked.Unit,
                Between = asked.Between is [{ } from, { } to] ? [from, to] : null,
                Options = [.. (asked.Options ?? []).Where(option => option?.Id is not null).Select(option => new OpenOption(option!.Id!, option.Text ?? option.Id!))],
            }
            : null;
    }

}

/// <summary>Words to understand, with what is known beside them.</summary>
internal sealed record UnderstandBody
{
    public string? Text { get; init; }

    public IReadOnlyList<string>? Leads { get; init; }

    public AskedBody? Asked { get; init; }

    public Region? Region { get; init; }
}

/// <summary>The open question as a client was asked it; members that do not matter here are ignored.</summary>
internal sealed record AskedBody
{
    public string? Id { get; init; }

    public QuestionKind? Kind { get; init; }

    public string? About { get; init; }

    public string? Unit { get; init; }

    public IReadOnlyList<string?>? Between { get; init; }

    public IReadOnlyList<AskedOption?>? Options { get; init; }
}

/// <summary>One option of the open question.</summary>
internal sealed record AskedOption(string? Id, string? Text);

/// <summary>What was understood, as the contract has it.</summary>
internal sealed record UnderstandAnswer(
    IReadOnlyList<Fact> Facts,
    IReadOnlyList<HeardSymptom> Symptoms,
    IReadOnlyList<string> RoleHints,
    string? Goal,
    IReadOnlyList<HeardQuestion> Questions,
    IReadOnlyList<HeardDanger> Dangers,
    IReadOnlyList<Leftover> NotUnderstood,
    bool Corrects,
    bool Undo,
    bool Skip)
{
    public static UnderstandAnswer Of(Understood heard) => new(
        heard.Facts, heard.Symptoms, heard.RoleHints, heard.Goal, heard.Questions, heard.Dangers, heard.NotUnderstood, heard.Corrections.Count > 0, heard.Undo, heard.Skip);
}
