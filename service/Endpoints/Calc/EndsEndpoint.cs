using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Which ends of windings are alike, or the test that would tell.</summary>
internal static class EndsEndpoint
{
    public static void MapEnds(this RouteGroupBuilder calc) => calc.MapPost("/ends", Find)
        .WithSummary("Tells which ends of windings are alike, or the next test with the reading to expect for each outcome")
        .WithDescription(
            "Windings as identify gives them; a junction may name its corner in 'taps'. A result's 'between' are the leads read across; 'drive' and 'tie' are taken " +
            "from the windings where they are left out: the winding of the first lead is fed and the two other ends are tied. 'value' is in volts, of " +
            "'series-impedance' in ohms; an outcome such as 'up-on-make' or 'ran' may stand in its place. 'appliedVolts' are the volts on the fed leads while connected.");

    private static IResult Find(EndsBody body, TradeKnowledge knowledge, Problems problems)
    {
        var wrong = new List<Problem>();
        if (body.Windings is null)
        {
            wrong.Add(Problem.NotGiven("windings"));
        }

        var windings = (body.Windings ?? []).Select((winding, at) => Read(winding, $"windings[{at}]", wrong)).ToList();
        var results = (body.Results ?? []).Select((result, at) => Read(result, $"results[{at}]", wrong)).ToList();
        wrong.AddRange(InstrumentCheck.Of(knowledge, body.Instruments));
        return wrong.Count > 0 ? problems.Result(wrong) : problems.Result(new EndsFinder(knowledge).Find(new EndsInput
        {
            Layout = body.Layout,
            Windings = windings!,
            Instruments = body.Instruments ?? [],
            Role = body.Role ?? Role.Technician,
            Results = results!,
            Printed = body.Printed ?? new Dictionary<string, string>(StringComparer.Ordinal),
            LowVolts = body.LowVolts,
            Barred = body.Barred ?? [],
        }));
    }

    private static EndsWinding? Read(WindingBody? winding, string at, List<Problem> wrong)
    {
        if (winding?.Leads is not { Count: > 0 } leads || leads.Any(string.IsNullOrEmpty))
        {
            wrong.Add(Problem.NotGiven($"{at}.leads"));
            return null;
        }

        if (winding.Role is null && !winding.Junction)
        {
            wrong.Add(Problem.NotGiven($"{at}.role"));
            return null;
        }

        return new EndsWinding(winding.Role ?? "phase", leads) { Junction = winding.Junction, Taps = winding.Taps ?? [], Markings = winding.Markings ?? [] };
    }

    private static EndsResult? Read(ResultBody? result, string at, List<Problem> wrong)
    {
        if (string.IsNullOrEmpty(result?.Test))
        {
            wrong.Add(Problem.NotGiven($"{at}.test"));
            return null;
        }

        var number = result.Value is { ValueKind: JsonValueKind.Number } value ? value.GetDouble() : (double?)null;
        var words = result.Value is { ValueKind: JsonValueKind.String } text ? text.GetString() : result.Outcome;
        var read = result.Between ?? result.Read;
        if (result.Test != "soft-first-run" && read is not [{ Length: > 0 }, { Length: > 0 }])
        {
            wrong.Add(read is null ? Problem.NotGiven($"{at}.between") : new("invalid-fact", $"{at}.between", Statement.Of("circuits.not-a-pair")));
            return null;
        }

        if (number is null && words is null)
        {
            wrong.Add(Problem.NotGiven($"{at}.value"));
            return null;
        }

        return new EndsResult
        {
            Test = result.Test,
            Drive = result.Drive ?? [],
            Tie = result.Tie ?? [],
            Read = read ?? [],
            AppliedVolts = result.AppliedVolts,
            Value = number,
            Unit = result.Unit,
            Outcome = words,
        };
    }

    internal sealed record EndsBody(
        string? Layout, IReadOnlyList<WindingBody?>? Windings, IReadOnlyList<string>? Instruments, Role? Role, IReadOnlyList<ResultBody?>? Results,
        IReadOnlyDictionary<string, string>? Printed, double? LowVolts, IReadOnlyList<string>? Barred);

    internal sealed record WindingBody(string? Role, IReadOnlyList<string>? Leads, bool Junction, IReadOnlyList<string>? Taps, IReadOnlyList<string>? Markings);

    internal sealed record ResultBody(
        string? Test, IReadOnlyList<string>? Between, IReadOnlyList<string>? Read, IReadOnlyList<string>? Drive, IReadOnlyList<IReadOnlyList<string>>? Tie,
        double? AppliedVolts, JsonElement? Value, string? Unit, string? Outcome);
}
