using Microsoft.AspNetCore.Mvc;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints;

/// <summary>The one place where a refusal of the rules becomes a problem document (RFC 9457).</summary>
internal sealed class Problems(SentenceBook sentences)
{
    /// <summary>Longer than any list of what could be meant.</summary>
    private const int MostNamed = 400;

    /// <summary>The value, or a problem document that names the offending members.</summary>
    public IResult Result<T>(Answer<T> answer)
        where T : class => answer.IsGiven ? Results.Ok(answer.Value) : Result(answer.Problems);

    /// <summary>A problem document.</summary>
    public IResult Result(IReadOnlyList<Problem> problems) => Results.Problem(Details(problems, StatusOf(problems[0])));

    /// <summary>A problem document with a status of its own.</summary>
    public IResult Result(int status, Problem problem) => Results.Problem(Details([problem], status));

    private ProblemDetails Details(IReadOnlyList<Problem> problems, int status)
    {
        var first = problems[0];
        var details = new ProblemDetails
        {
            Type = first.Id,
            Title = Said(first),
            Status = status,
            Extensions =
            {
                ["errors"] = problems.GroupBy(problem => problem.Field, StringComparer.Ordinal)
                    .ToDictionary(field => field.Key, field => field.Select(Said).ToArray(), StringComparer.Ordinal),
            },
        };
        if (first.Missing.Count > 0)
        {
            details.Extensions["missing"] = first.Missing;
        }

        return details;
    }

    /// <summary>What was sent is named in the advice, but not at any length.</summary>
    private string Said(Problem problem) => sentences.Render(problem.Advice.Gaps.Where(gap => gap.Value.Length > MostNamed)
        .Aggregate(problem.Advice, (advice, gap) => advice.With(gap.Key, $"{gap.Value[..MostNamed]}…")));

    private static int StatusOf(Problem problem) => problem.Id switch
    {
        "unknown-session" => StatusCodes.Status404NotFound,
        "invalid-fact" when problem.Field == "factId" => StatusCodes.Status404NotFound, // it stands in the address
        "not-ready" => StatusCodes.Status409Conflict,
        "gate-closed" => StatusCodes.Status403Forbidden,
        "too-large" => StatusCodes.Status413PayloadTooLarge,
        "too-many-requests" => StatusCodes.Status429TooManyRequests,
        "store-unavailable" => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status400BadRequest,
    };
}
