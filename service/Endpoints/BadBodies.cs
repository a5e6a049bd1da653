using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Diagnostics;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints;

/// <summary>A body that cannot be read as what the endpoint takes becomes a problem document that names the member.</summary>
internal sealed partial class BadBodies(Problems problems) : IExceptionHandler
{
    /// <summary>Members that are one of a few words, which are then named.</summary>
    private static readonly Dictionary<string, string> Words = new(StringComparer.Ordinal) { ["region"] = WordsOf<Region>(), ["role"] = WordsOf<Role>() };

    private static string WordsOf<T>()
        where T : struct, Enum => string.Join(", ", Enum.GetValues<T>().Select(value => JsonSerializer.Serialize(value).Trim('"')));

    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is not BadHttpRequestException bad)
        {
            return false;
        }

        await problems.Result([Refusal(bad)]).ExecuteAsync(httpContext);
        return true;
    }

    private static Problem Refusal(BadHttpRequestException bad) => bad switch
    {
        { StatusCode: StatusCodes.Status413PayloadTooLarge } => new("too-large", "body", Statement.Of("body.too-large")),
        { InnerException: JsonException wrong } => Refusal(wrong),
        _ => new("invalid-fact", "body", Statement.Of("body.not-json")),
    };

    /// <summary>What is wrong with a member that cannot be read.</summary>
    public static Problem Refusal(JsonException wrong) => Missing(wrong) ?? (wrong is { InnerException: not JsonException, Path: ['$', '.', .. var member] }
        ? new("invalid-fact", member, Words.TryGetValue(member, out var words) ? Statement.Of("body.unknown-word", ("field", member), ("words", words)) : Statement.Of("body.wrong-kind", ("field", member)))
        : new("invalid-fact", "body", Statement.Of("body.not-json")));

    /// <summary>A member that an object must have; the reader names it in its message alone.</summary>
    private static Problem? Missing(JsonException wrong) => Required().Match(wrong.Message) is { Success: true } found
        ? Problem.NotGiven(wrong.Path is ['$', '.', .. var member] ? $"{member}.{found.Groups["name"].Value}" : found.Groups["name"].Value)
        : null;

    [GeneratedRegex(@"missing required properties[^:]*: '?(?<name>\w+)", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Required();
}
