using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>From what a person noticed and tested to likely causes, the next test that their gate allows, and the warnings that are due.</summary>
internal static class DiagnoseEndpoint
{
    public static void MapDiagnose(this RouteGroupBuilder calc) => calc.MapPost("/diagnose", Diagnose)
        .WithSummary("Ranks causes and names the next test that the gate allows")
        .WithDescription(
            "A result is an outcome by its id, or a value: a number, a list (three currents, three resistances), {volts, amps, hertz} for a capacitor, {run, start, frame} for windings. " +
            "'gate.closed' lists what is refused and what waits for a confirmation; 'gate.conditions' lists what it waits for.");

    private static IResult Diagnose(DiagnoseBody body, TradeKnowledge knowledge, Troubleshooting bench, FactCheck check, Problems problems)
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
        var opening = new CaseOpening(body.Role ?? Role.Technician, body.Region ?? Region.NorthAmerica);
        wrong.AddRange(Against(check, CaseFile.From(opening, []), body));
        if (wrong.Count > 0)
        {
            return problems.Result(wrong);
        }

        var role = opening.Role;
        var file = CaseFile.From(opening, facts);
        return Results.Ok(DiagnoseView.Of(bench.Examine(file), knowledge.Sentences, role));
    }

    /// <summary>What is wrong with the facts, the supply and the plate: what a session refuses is refused here too.</summary>
    private static IEnumerable<Problem> Against(FactCheck check, CaseFile file, DiagnoseBody body) =>
    [
        .. check.Check(file, [.. (body.Facts ?? []).OfType<Fact>()], "facts").Problems,
        .. body.Supply is { } supply ? check.Against(file, supply, "supply") : [],
        .. body.Machine?.Supply is { } fed ? check.Against(file, fed, "machine.supply") : [],
        .. (body.Machine?.Marks() ?? []).SelectMany(mark => check.Against(file, mark, $"machine.{mark.Field}")),
        .. (body.Plate?.Fields() ?? PlateFields.Empty).All.SelectMany(field => check.Against(file, new Fact.Plate { Field = field.Key, Value = field.Value }, $"plate.{field.Key}")),
        .. (body.Instruments ?? []).SelectMany((id, at) => check.Against(file, new Fact.Instrument { Id = id }, $"instruments[{at}]")),
    ];

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
