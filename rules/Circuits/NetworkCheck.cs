using MathNet.Numerics.LinearAlgebra;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Circuits;

/// <summary>What is wrong with the figures and names of a network, before anything is solved.</summary>
internal static class NetworkCheck
{
    /// <summary>Below zero by more than this share, an energy of coupled coils is more than rounding.</summary>
    private const double Rounding = 1e-9;

    public static IReadOnlyList<Problem> Of(Network network)
    {
        if (Amount(network) is { } amount)
        {
            return [amount];
        }

        var problems = new List<Problem>();
        if (!double.IsFinite(network.Hertz) || network.Hertz < 0)
        {
            problems.Add(Bad("hertz", network.Hertz));
        }

        var ids = Elements(problems, network, network.Hertz);
        Couplings(problems, network, ids);
        return problems;
    }

    /// <summary>What is wrong with a network that an ohmmeter is to read.</summary>
    public static IReadOnlyList<Problem> OfDead(Network network)
    {
        if (Amount(network) is { } amount)
        {
            return [amount];
        }

        var problems = new List<Problem>();
        if (network.Hertz != 0)
        {
            problems.Add(new Problem("invalid-fact", "hertz", Statement.Of("circuits.meter-at-zero-hertz")));
        }

        Elements(problems, network, 0);
        for (var index = 0; index < network.Elements.Count; index++)
        {
            if (network.Elements[index] is Element.Source source)
            {
                problems.Add(new Problem("impossible-network", $"elements[{index}]", Statement.Of("circuits.meter-on-live", ("element", source.Id))));
            }
        }

        return problems;
    }

    private static Problem? Amount(Network network) => network.Elements.Count switch
    {
        0 => Problem.NotGiven("elements"),
        > NetworkSolver.MostElements => new Problem("too-large", "elements", Statement.Of("circuits.too-many-elements", ("most", $"{NetworkSolver.MostElements}"))),
        _ => null,
    };

    private static Dictionary<string, Element> Elements(List<Problem> problems, Network network, double hertz)
    {
        var ids = new Dictionary<string, Element>(StringComparer.Ordinal);
        for (var index = 0; index < network.Elements.Count; index++)
        {
            var element = network.Elements[index];
            if (!ids.TryAdd(element.Id, element))
            {
                problems.Add(new Problem("invalid-fact", $"elements[{index}].id", Statement.Of("circuits.id-twice", ("id", element.Id))));
            }

            Figures(problems, $"elements[{index}]", element, hertz);
        }

        return ids;
    }

    private static void Figures(List<Problem> problems, string at, Element element, double hertz)
    {
        switch (element)
        {
            case Element.Resistor { Ohms: { } ohms }:
                Require(problems, $"{at}.ohms", ohms, double.IsFinite(ohms) && ohms >= 0);
                break;
            case Element.Inductor coil:
                Require(problems, $"{at}.henries", coil.Henries, double.IsFinite(coil.Henries) && coil.Henries > 0);
                Require(problems, $"{at}.ohms", coil.Ohms, double.IsFinite(coil.Ohms) && coil.Ohms >= 0);
                break;
            case Element.Capacitor capacitor:
                Require(problems, $"{at}.microfarads", capacitor.Microfarads, double.IsFinite(capacitor.Microfarads) && capacitor.Microfarads > 0);
                break;
            case Element.Source source:
                Require(problems, $"{at}.volts", source.Volts, double.IsFinite(source.Volts));
                Require(problems, $"{at}.angleDegrees", source.AngleDegrees, double.IsFinite(source.AngleDegrees));
                if (hertz == 0 && source.AngleDegrees % 180 != 0)
                {
                    problems.Add(new Problem("invalid-fact", $"{at}.angleDegrees", Statement.Of("circuits.angle-of-direct-volts")));
                }

                break;
            case Element.Resistor or Element.Switch:
                break;
        }
    }

    private static void Couplings(List<Problem> problems, Network network, Dictionary<string, Element> ids)
    {
        var seen = new HashSet<(string, string)>();
        var sound = true;
        for (var index = 0; index < network.Couplings.Count; index++)
        {
            var (first, second, coefficient) = network.Couplings[index];
            var at = $"couplings[{index}]";
            sound &= Coil(problems, ids, $"{at}.first", first) & Coil(problems, ids, $"{at}.second", second);
            if (string.Equals(first, second, StringComparison.Ordinal) || !seen.Add(Ordered(first, second)))
            {
                problems.Add(new Problem("invalid-fact", at, Statement.Of("circuits.coupling-twice", ("first", first), ("second", second))));
                sound = false;
            }

            if (!(Math.Abs(coefficient) <= 1))
            {
                problems.Add(new Problem("impossible-network", $"{at}.coefficient", Statement.Of("circuits.coefficient", ("value", $"{coefficient}"))));
                sound = false;
            }
        }

        if (sound && network.Couplings.Count > 1 && !StoreEnergy(network))
        {
            problems.Add(new Problem("impossible-network", "couplings", Statement.Of("circuits.couplings-contradict")));
        }
    }

    /// <summary>Coils cannot hold negative energy: the matrix of coefficients has no eigenvalue below zero.</summary>
    private static bool StoreEnergy(Network network)
    {
        var coils = network.Couplings.SelectMany(coupling => new[] { coupling.First, coupling.Second })
            .Distinct(StringComparer.Ordinal).Select((id, at) => (id, at)).ToDictionary(pair => pair.id, pair => pair.at, StringComparer.Ordinal);
        var matrix = Matrix<double>.Build.DenseIdentity(coils.Count);
        foreach (var coupling in network.Couplings)
        {
            matrix[coils[coupling.First], coils[coupling.Second]] = coupling.Coefficient;
            matrix[coils[coupling.Second], coils[coupling.First]] = coupling.Coefficient;
        }

        return matrix.Evd(Symmetricity.Symmetric).EigenValues.All(value => value.Real >= -Rounding * coils.Count);
    }

    private static bool Coil(List<Problem> problems, Dictionary<string, Element> ids, string at, string id)
    {
        var isCoil = ids.GetValueOrDefault(id) is Element.Inductor;
        if (!isCoil)
        {
            problems.Add(new Problem("invalid-fact", at, Statement.Of("circuits.not-a-coil", ("id", id))));
        }

        return isCoil;
    }

    private static (string First, string Second) Ordered(string one, string other) =>
        string.CompareOrdinal(one, other) < 0 ? (one, other) : (other, one);

    private static void Require(List<Problem> problems, string field, double value, bool holds)
    {
        if (!holds)
        {
            problems.Add(Bad(field, value));
        }
    }

    private static Problem Bad(string field, double value) =>
        new("invalid-fact", field, Statement.Of("circuits.figure-out-of-range", ("field", field), ("value", $"{value}")));
}
