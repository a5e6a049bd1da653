using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The connection plan of a layout for the supply at hand.</summary>
internal static class ConnectEndpoint
{
    public static void MapConnect(this RouteGroupBuilder calc) => calc.MapPost("/connect", Connect)
        .WithSummary("Plans the connection of a motor for a supply, in the tags of its leads")
        .WithDescription(
            "Answers 'not-ready' with 'missing' where something is not known or the supply does not suit; 'errors' then says why. " +
            "'leads' maps markings (NEMA or IEC) to tags. 'plate' takes plate fields by name, volts and amps as numbers, lists or text such as '115/230'; " +
            "where a plate gives one voltage only, 'plate.connection' says which (low, high, star, delta). Direct current is a supply of 0 Hz. " +
            "'connection' chooses one of several that suit the same supply (a speed, a starting step); 'form' a variant of the layout. " +
            "'coilOhms' (by coil or group) or 'windings' ({leads, ohms}) give the readings before power their figures.");

    private static IResult Connect(ConnectBody body, TradeKnowledge knowledge, Problems problems)
    {
        var wrong = Wrong(body).ToList();
        if (wrong.Count > 0)
        {
            return problems.Result(wrong);
        }

        var answer = new Planner(knowledge).Plan(Request(body));
        return answer.IsGiven ? Results.Ok(PlanView.Of(answer.Value)) : problems.Result(answer.Problems);
    }

    private static IEnumerable<Problem> Wrong(ConnectBody body)
    {
        if (string.IsNullOrWhiteSpace(body.Layout))
        {
            yield return Problem.NotGiven("layout");
        }

        if (body.Leads is null)
        {
            yield return Problem.NotGiven("leads");
        }

        for (var index = 0; index < (body.Windings?.Count ?? 0); index++)
        {
            if (body.Windings![index] is not { Leads: [{ Length: > 0 }, { Length: > 0 }], Ohms: not null })
            {
                yield return Problem.NotGiven($"windings[{index}]");
            }
        }
    }

    private static PlanRequest Request(ConnectBody body) => new()
    {
        Layout = body.Layout!.Trim(),
        Leads = body.Leads!.Where(lead => lead.Value is not null).ToDictionary(lead => lead.Key, lead => lead.Value!, StringComparer.Ordinal),
        Plate = (body.Plate ?? []).Where(field => field.Value is not null).Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Key, field.Value!)),
        Supply = body.Supply is { } supply
            ? new Fact.Supply { Volts = supply.Volts, Phases = supply.Phases, Hertz = supply.Hertz, System = supply.System }
            : null,
        Rotation = body.Rotation,
        SeenFrom = body.SeenFrom,
        Capacitor = body.Capacitor is { } capacitor
            ? new Fact.Capacitor { Microfarads = capacitor.Microfarads, Volts = capacitor.Volts, Use = capacitor.Use ?? "unknown" }
            : null,
        Connection = body.Connection,
        Form = body.Form,
        CoilOhms = (body.CoilOhms ?? []).Where(coil => coil.Value is not null).ToDictionary(coil => coil.Key, coil => coil.Value!.Value, StringComparer.Ordinal),
        Windings = [.. (body.Windings ?? []).Select(winding => new MeasuredWinding(winding!.Leads![0], winding.Leads[1], winding.Ohms!.Value))],
    };

    internal sealed record ConnectBody(
        string? Layout, Dictionary<string, string?>? Leads, Dictionary<string, PlateValue?>? Plate, SupplyBody? Supply, string? Rotation, string? SeenFrom,
        CapacitorBody? Capacitor, string? Connection, string? Form, Dictionary<string, double?>? CoilOhms, IReadOnlyList<WindingBody?>? Windings);

    internal sealed record SupplyBody(double? Volts, int? Phases, double? Hertz, string? System);

    internal sealed record CapacitorBody(double? Microfarads, double? Volts, string? Use);

    internal sealed record WindingBody(IReadOnlyList<string>? Leads, double? Ohms);
}
