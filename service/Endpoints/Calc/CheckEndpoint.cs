using System.Text.Json.Serialization;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Checks a connection as someone made it.</summary>
internal static class CheckEndpoint
{
    public static void MapCheck(this RouteGroupBuilder calc) => calc.MapPost("/check", Check)
        .Produces<CheckView>()
        .WithSummary("Solves a connection as it was found and says what is right or wrong with it")
        .WithDescription(
            "Conductors are L1, L2, L3, N and PE. An end that does not come out is a name in no joint. A start coil's volts are those of its whole branch. " +
            "The verdict rests on the volts that the connection itself gives each coil against its rating, in size and sense. " +
            "Without 'slip', where all coils are fed with the right sense, volts are those that it settles at while running, and otherwise those at standstill; amps are those at standstill, " +
            "and null where no coil's ohms are given. 'rotation' is null for three-phase windings, which have 'phaseOrder'. 'seen' is what a switch-on would show, " +
            "'change' the smallest change that makes it right. A coil with 'mayRest' may lie open (another speed or step); " +
            "'protector' {between:[…]} ties the leads that a protector connects. 'capacitor', 'switch' and 'protector' are one part or a list of them. " +
            "A motor with brushes has the roles armature, series-field and shunt-field (no axis is needed), and + and - as conductors on direct current.");

    private static IResult Check(CheckBody body, TradeKnowledge knowledge, Problems problems)
    {
        var wrong = new List<Problem>();
        var found = Found(body, wrong);
        if (wrong.Count > 0)
        {
            return problems.Result(wrong);
        }

        if (body.Supply?.Volts is not { } volts)
        {
            return problems.Result([new Problem("not-ready", "supply.volts", Statement.Of("problem.missing", ("field", "supply.volts"))) { Missing = ["supply.volts"] }]);
        }

        var answer = new ConnectionChecker(knowledge).Check(found with { SupplyVolts = volts });
        return answer.IsGiven ? Results.Ok(CheckView.Of(answer.Value)) : problems.Result(answer.Problems);
    }

    private static FoundConnection Found(CheckBody body, List<Problem> wrong)
    {
        Require(body.Coils is not null, "coils", wrong);
        Require(body.Joints is not null, "joints", wrong);
        return new FoundConnection
        {
            Coils = [.. (body.Coils ?? []).Select((coil, index) => Coil(coil, $"coils[{index}]", wrong)).OfType<FoundCoil>()],
            Joints = [.. (body.Joints ?? []).Select((joint, index) => Joint(joint, $"joints[{index}]", wrong)).OfType<FoundJoint>()],
            SupplyVolts = 0,
            Phases = body.Supply?.Phases,
            Hertz = body.Supply?.Hertz,
            System = body.Supply?.System,
            Capacitors =
            [
                .. Each(body.Capacitor, "capacitor").Where(part => IsPair(part.Body.Between, $"{part.At}.between", wrong))
                    .Select(part => new FoundCapacitor(part.Body.Between![0]!, part.Body.Between[1]!, part.Body.Microfarads)),
            ],
            Switches =
            [
                .. Each(body.Switch, "switch").Where(part => IsPair(part.Body.Between, $"{part.At}.between", wrong))
                    .Select(part => new FoundSwitch(part.Body.Between![0]!, part.Body.Between[1]!, part.Body.Closed ?? true)),
            ],
            Protectors = [.. Each(body.Protector, "protector").Select(part => (IReadOnlyList<string>)[.. (part.Body.Between ?? []).OfType<string>().Where(lead => lead.Length > 0)])],
            Slip = body.Slip,
        };
    }

    /// <summary>The parts with the member that names each: the whole member where there is one part, a place in it where there are several.</summary>
    private static IEnumerable<(PartBody Body, string At)> Each(IReadOnlyList<PartBody?>? parts, string member) =>
        (parts ?? []).Select((part, index) => (part ?? new PartBody(null, null, null), parts!.Count == 1 ? member : $"{member}[{index}]"));

    private static FoundCoil? Coil(CoilBody? coil, string at, List<Problem> wrong)
    {
        var before = wrong.Count;
        Require(!string.IsNullOrEmpty(coil?.Id), $"{at}.id", wrong);
        Require(coil?.RatedVolts is not null, $"{at}.ratedVolts", wrong);
        var axis = coil?.Axis ?? coil?.Role switch { "run" or "armature" or "series-field" or "shunt-field" => "main", "start" => "start", _ => null };
        Require(axis is not null, $"{at}.axis", wrong);
        _ = IsPair(coil?.Leads, $"{at}.leads", wrong);
        return wrong.Count > before
            ? null
            : new FoundCoil(
                coil!.Id!, coil.Leads![0], coil.Leads[1], coil.Role ?? (axis switch { "main" => "run", "start" => "start", _ => "phase" }),
                coil.RatedVolts!.Value, axis!, coil.Ohms, coil.MayRest ?? false);
    }

    private static FoundJoint? Joint(JointBody? joint, string at, List<Problem> wrong)
    {
        if (joint?.Leads is null || joint.Leads.Any(string.IsNullOrEmpty))
        {
            wrong.Add(Problem.NotGiven($"{at}.leads"));
            return null;
        }

        return new FoundJoint(joint.Leads!, Conductor(joint.Conductor));
    }

    private static string? Conductor(string? given) => given?.Trim().ToUpperInvariant() switch
    {
        null or "" => null,
        "L" or "LINE" => "L1",
        "NEUTRAL" => "N",
        "PE" or "EARTH" or "GROUND" or "GND" or "FRAME" => "PE",
        var conductor => conductor,
    };

    private static bool IsPair(IReadOnlyList<string?>? pair, string field, List<Problem> wrong)
    {
        if (pair is [{ Length: > 0 }, { Length: > 0 }])
        {
            return true;
        }

        wrong.Add(pair is null ? Problem.NotGiven(field) : new Problem("invalid-fact", field, Statement.Of("circuits.not-a-pair")));
        return false;
    }

    private static void Require(bool given, string field, List<Problem> wrong)
    {
        if (!given)
        {
            wrong.Add(Problem.NotGiven(field));
        }
    }

    internal sealed record CheckBody(
        IReadOnlyList<CoilBody?>? Coils, IReadOnlyList<JointBody?>? Joints, SupplyBody? Supply,
        [property: JsonConverter(typeof(OneOrMany<PartBody?>))] IReadOnlyList<PartBody?>? Capacitor,
        [property: JsonConverter(typeof(OneOrMany<PartBody?>))] IReadOnlyList<PartBody?>? Switch,
        [property: JsonConverter(typeof(OneOrMany<PartBody?>))] IReadOnlyList<PartBody?>? Protector, double? Slip);

    internal sealed record CoilBody(string? Id, IReadOnlyList<string>? Leads, string? Role, double? RatedVolts, double? Ohms, string? Axis, bool? MayRest);

    internal sealed record JointBody(IReadOnlyList<string>? Leads, string? Conductor);

    internal sealed record SupplyBody(double? Volts, int? Phases, double? Hertz, string? System);

    /// <summary>A capacitor, a switch or a protector.</summary>
    internal sealed record PartBody(IReadOnlyList<string?>? Between, double? Microfarads, bool? Closed);

    /// <summary>The answer of the contract.</summary>
    internal sealed record CheckView(
        Verdict Verdict, IReadOnlyList<CheckedCoil> Coils, double? LineAmps, IReadOnlyList<CheckFinding> Findings, FieldRotation? Rotation, string? PhaseOrder,
        IReadOnlyList<Statement> Seen, ChangeView? Change, double? StartingTimes, IReadOnlyList<TrailStep> Trail)
    {
        public static CheckView Of(CheckResult result) => new(
            result.Verdict, result.Coils, result.LineAmps, result.Findings, result.Rotation, result.PhaseOrder, result.Seen,
            result.Change is { } change ? new ChangeView(change.What, change.Joints) : null, result.StartingTimes, result.Trail);
    }

    internal sealed record ChangeView(Statement What, IReadOnlyList<FoundJoint> Joints);
}
