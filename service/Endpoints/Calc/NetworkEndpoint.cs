using System.Numerics;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The network solver alone: phasors of every node and element, or ohmmeter readings of a dead network.</summary>
internal static class NetworkEndpoint
{
    private static readonly string[] Kinds = ["resistor", "inductor", "capacitor", "voltage-source", "switch"];

    public static void MapNetwork(this RouteGroupBuilder calc) => calc.MapPost("/network", Solve)
        .WithSummary("Solves a network of resistors, coils, capacitors, sources and switches")
        .WithDescription(
            "Volts of an element are those of between[0] against between[1]; amps count from between[0] through the element to between[1], " +
            "so a source that delivers has amps against its volts. RMS phasors. An inductor may carry 'ohms' of its wire; its between[0] is the dotted end. " +
            "A 'switch' has 'closed'. With 'ohmmeter' the pairs are read on the dead network: coils are their wire, capacitors are open, " +
            "a resistor whose ohms are null is open.");

    private static IResult Solve(NetworkBody body, Problems problems)
    {
        var wrong = new List<Problem>();
        var elements = (body.Elements ?? []).Select((element, index) => Read(element, $"elements[{index}]", body.Ohmmeter is not null, wrong)).ToList();
        if (body.Elements is null)
        {
            wrong.Add(Problem.NotGiven("elements"));
        }

        var couplings = (body.Couplings ?? []).Select((coupling, index) => Read(coupling, $"couplings[{index}]", wrong)).ToList();
        if (body.Ohmmeter is null)
        {
            Require(body.Hertz is not null, "hertz", wrong);
            Require(!string.IsNullOrEmpty(body.Ground), "ground", wrong);
        }

        if (wrong.Count > 0)
        {
            return problems.Result(wrong);
        }

        var network = new Network { Elements = elements!, Couplings = couplings!, Hertz = body.Hertz ?? 0, Ground = body.Ground ?? string.Empty };
        return body.Ohmmeter is null ? problems.Result(Solved(network)) : problems.Result(Meter(network, body.Ohmmeter));
    }

    private static Answer<NetworkSolved> Solved(Network network)
    {
        var answer = NetworkSolver.Solve(network);
        return answer.IsGiven
            ? new NetworkSolved(
                answer.Value.Nodes.ToDictionary(node => node.Key, node => Phasor.Of(node.Value), StringComparer.Ordinal),
                answer.Value.Elements.ToDictionary(
                    element => element.Key, element => new Seen(Phasor.Of(element.Value.Volts), Phasor.Of(element.Value.Amps)), StringComparer.Ordinal),
                NetworkTrail.Of(network))
            : Answer<NetworkSolved>.Refused(answer.Problems);
    }

    private static Answer<NetworkRead> Meter(Network network, IReadOnlyList<IReadOnlyList<string>?> pairs)
    {
        var wrong = pairs.Select((pair, index) => (pair, index)).Where(asked => !IsPair(asked.pair))
            .Select(asked => new Problem("invalid-fact", $"ohmmeter[{asked.index}]", Statement.Of("circuits.not-a-pair"))).ToList();
        if (wrong.Count > 0)
        {
            return Answer<NetworkRead>.Refused(wrong);
        }

        var answer = NetworkSolver.Read(network, [.. pairs.Select(pair => (pair![0], pair[1]))]);
        return answer.IsGiven
            ? new NetworkRead([.. pairs.Zip(answer.Value, (pair, ohms) => new PairRead(pair!, ohms))], NetworkTrail.OfMeter(network))
            : Answer<NetworkRead>.Refused(answer.Problems);
    }

    private static Element? Read(ElementBody? element, string at, bool dead, List<Problem> wrong)
    {
        var before = wrong.Count;
        if (element is null)
        {
            wrong.Add(Problem.NotGiven(at));
            return null;
        }

        Require(!string.IsNullOrEmpty(element.Id), $"{at}.id", wrong);
        Require(!string.IsNullOrEmpty(element.Kind), $"{at}.kind", wrong);
        if (element.Kind is { Length: > 0 } && !Kinds.Contains(element.Kind, StringComparer.Ordinal))
        {
            wrong.Add(new Problem("invalid-fact", $"{at}.kind", Statement.Of("circuits.unknown-kind", ("kind", element.Kind), ("kinds", string.Join(", ", Kinds)))));
        }

        if (!IsPair(element.Between))
        {
            wrong.Add(element.Between is null ? Problem.NotGiven($"{at}.between") : new Problem("invalid-fact", $"{at}.between", Statement.Of("circuits.not-a-pair")));
        }

        Figure(element, at, dead, wrong);
        return wrong.Count > before ? null : Made(element, element.Id!, element.Between![0], element.Between[1]);
    }

    private static Element Made(ElementBody element, string id, string from, string to) => element.Kind switch
    {
        "resistor" => new Element.Resistor(id, from, to, element.Ohms),
        "inductor" => new Element.Inductor(id, from, to, element.Henries ?? 1, element.Ohms ?? 0),
        "capacitor" => new Element.Capacitor(id, from, to, element.Microfarads ?? 1),
        "switch" => new Element.Switch(id, from, to, element.Closed ?? false),
        _ => new Element.Source(id, from, to, element.Volts!.Value, element.AngleDegrees ?? 0),
    };

    /// <summary>An ohmmeter does not need the henries of a coil or the microfarads of a capacitor; an open resistor is said with null, never by leaving it out.</summary>
    private static void Figure(ElementBody element, string at, bool dead, List<Problem> wrong)
    {
        var (member, given) = element.Kind switch
        {
            "resistor" => ("ohms", element.Ohms is not null || (dead && element.OhmsAreSaid)),
            "inductor" => ("henries", dead || element.Henries is not null),
            "capacitor" => ("microfarads", dead || element.Microfarads is not null),
            "voltage-source" => ("volts", element.Volts is not null),
            "switch" => ("closed", element.Closed is not null),
            _ => (string.Empty, true),
        };
        Require(given, $"{at}.{member}", wrong);
    }

    private static Coupling? Read(CouplingBody? coupling, string at, List<Problem> wrong)
    {
        Require(!string.IsNullOrEmpty(coupling?.First), $"{at}.first", wrong);
        Require(!string.IsNullOrEmpty(coupling?.Second), $"{at}.second", wrong);
        Require(coupling?.Coefficient is not null, $"{at}.coefficient", wrong);
        return coupling is { First: { } first, Second: { } second, Coefficient: { } coefficient } ? new Coupling(first, second, coefficient) : null;
    }

    private static bool IsPair(IReadOnlyList<string>? pair) => pair is [{ Length: > 0 }, { Length: > 0 }];

    private static void Require(bool given, string field, List<Problem> wrong)
    {
        if (!given)
        {
            wrong.Add(Problem.NotGiven(field));
        }
    }

    internal sealed record NetworkBody(
        IReadOnlyList<ElementBody?>? Elements, IReadOnlyList<CouplingBody?>? Couplings, double? Hertz, string? Ground, IReadOnlyList<IReadOnlyList<string>?>? Ohmmeter);

    internal sealed record ElementBody
    {
        public string? Id { get; init; }

        public string? Kind { get; init; }

        public IReadOnlyList<string>? Between { get; init; }

        public double? Ohms
        {
            get;
            init => (field, OhmsAreSaid) = (value, true);
        }

        public double? Henries { get; init; }

        public double? Microfarads { get; init; }

        public double? Volts { get; init; }

        public double? AngleDegrees { get; init; }

        public bool? Closed { get; init; }

        internal bool OhmsAreSaid { get; private init; }
    }

    internal sealed record CouplingBody(string? First, string? Second, double? Coefficient);

    internal sealed record NetworkSolved(IReadOnlyDictionary<string, Phasor> Nodes, IReadOnlyDictionary<string, Seen> Elements, IReadOnlyList<TrailStep> Trail);

    internal sealed record Seen(Phasor Volts, Phasor Amps);

    internal sealed record NetworkRead(IReadOnlyList<PairRead> Ohmmeter, IReadOnlyList<TrailStep> Trail);

    internal sealed record PairRead(IReadOnlyList<string> Between, double? Ohms);
}
