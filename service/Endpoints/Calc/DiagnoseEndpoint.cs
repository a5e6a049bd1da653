using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>From what a person noticed and tested to likely causes, the next test that their gate allows, and the warnings that are due.</summary>
internal static class DiagnoseEndpoint
{
    public static void MapDiagnose(this RouteGroupBuilder calc) => calc.MapPost("/diagnose", Diagnose)
        .WithSummary("Ranks causes and names the next test that the gate allows")
        .WithDescription(
            "A result is an outcome by its id, or a value: a number, a list (three currents, three resistances), {volts, amps, hertz} for a capacitor, {run, start, frame} for windings. " +
            "'gate.closed' lists what is refused and what waits for a confirmation; 'gate.conditions' lists what it waits for.");

    private static IResult Diagnose(DiagnoseBody body, TradeKnowledge knowledge, Troubleshooting bench, Problems problems)
    {
        var wrong = new List<Problem>();
        if (body.Role is null)
        {
            wrong.Add(Problem.NotGiven("role"));
        }

        if (!body.Says)
        {
            wrong.Add(new Problem("invalid-fact", "symptoms", Statement.Of("diagnose.nothing-said")));
        }

        var facts = body.Read(knowledge, Heard(bench, body, wrong), wrong);
        if (wrong.Count > 0)
        {
            return problems.Result(wrong);
        }

        var role = body.Role!.Value;
        var file = CaseFile.From(new CaseOpening(role, body.Region ?? Region.NorthAmerica), facts);
        return Results.Ok(DiagnoseView.Of(bench.Examine(file), knowledge.Sentences, role));
    }

    /// <summary>What the words amount to: facts, and the dangers among them.</summary>
    private static IReadOnlyList<Fact> Heard(Troubleshooting bench, DiagnoseBody body, List<Problem> wrong)
    {
        if (string.IsNullOrWhiteSpace(body.Text))
        {
            return [];
        }

        var heard = bench.Hear(body.Text, body.Region);
        wrong.AddRange(heard.Problems);
        return heard.Value ?? [];
    }
}
