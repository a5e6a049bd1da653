using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>Which couplings a way of lying leaves possible, result by result. A way without any is refuted.</summary>
/// <remarks>The coupling of a motor is not known beforehand but is the same in all its tests, so each way carries a set of couplings that still fit.</remarks>
internal sealed class EndsEvidence
{
    /// <summary>Every coupling from none to that of a motor without its rotor.</summary>
    public const ulong Any = (1UL << Steps) - 1;

    private const int Steps = 52;
    private const double Step = 0.02;

    private readonly TradeKnowledge _knowledge;
    private readonly EndsScheme _scheme;
    private readonly EndsPhysics _physics;
    private readonly Dictionary<string, EndsPath> _paths = new(StringComparer.Ordinal);
    private readonly Dictionary<(string, string, long, double), ulong> _masks = [];
    private readonly Dictionary<(string, long, double), double> _ratios = [];

    public EndsEvidence(TradeKnowledge knowledge, EndsScheme scheme)
    {
        (_knowledge, _scheme) = (knowledge, scheme);
        _physics = new(scheme.Coils);
    }

    /// <summary>The volts over the volts applied that a set-up would read, with its sign.</summary>
    public double Ratio(TestSetup setup, int[] way, double coupling)
    {
        var path = Path(setup);
        var key = (path.Shape, path.Relative(way), coupling);
        return _ratios.TryGetValue(key, out var ratio) ? ratio : _ratios[key] = EndsPhysics.Ratio(path.Driven, path.Read, way, coupling);
    }

    /// <summary>Whether a way leads from one lead to the other in the set-up.</summary>
    public bool Reads(TestSetup setup) =>
        _physics.Way(setup.Drive[0], setup.Drive[1], []) is not null && _physics.Way(setup.Read[0], setup.Read[1], setup.Tie) is not null;

    /// <summary>The coupling nearest to the usual one that a set still holds.</summary>
    public double Usual(ulong couplings)
    {
        var rule = _knowledge.Rules["ends-coupling"];
        var usual = (rule["low"] + rule["high"]) / 2;
        return Enumerable.Range(0, Steps).Where(step => (couplings >> step & 1) == 1).Select(step => step * Step).MinBy(coupling => Math.Abs(coupling - usual));
    }

    /// <summary>The couplings at which each way would give this reading; 0 for a way that is refuted already.</summary>
    /// <param name="test">A test id.</param>
    /// <param name="setup">The set-up.</param>
    /// <param name="ratio">Volts read over volts applied; of an outcome, +1 up, −1 down, 0 no kick.</param>
    /// <param name="couplings">What is left of each way.</param>
    public ulong[] Masks(string test, TestSetup setup, double ratio, ulong[] couplings)
    {
        var masks = new ulong[couplings.Length];
        foreach (var kind in Kinds(setup, couplings))
        {
            var mask = Mask(test, setup, kind.Way, ratio);
            foreach (var way in kind.Ways)
            {
                masks[way] = mask;
            }
        }

        return masks;
    }

    /// <summary>The ways left, those together that a set-up cannot tell apart.</summary>
    public IReadOnlyCollection<EndsKind> Kinds(TestSetup setup, ulong[] couplings)
    {
        var path = Path(setup);
        var kinds = new Dictionary<(long, ulong), EndsKind>();
        for (var way = 0; way < couplings.Length; way++)
        {
            if (couplings[way] != 0)
            {
                var key = (path.Relative(_scheme.Ways[way]), couplings[way]);
                (kinds.TryGetValue(key, out var kind) ? kind : kinds[key] = new(couplings[way], [])).Ways.Add(way);
            }
        }

        return kinds.Values;
    }

    /// <summary>The couplings at which a way would give this reading.</summary>
    public ulong Mask(string test, TestSetup setup, int way, double ratio)
    {
        var path = Path(setup);
        var key = (test, path.Shape, path.Relative(_scheme.Ways[way]), ratio);
        return _masks.TryGetValue(key, out var mask) ? mask : _masks[key] = Mask(test, path.Driven, path.Read, _scheme.Ways[way], ratio);
    }

    private EndsPath Path(TestSetup setup)
    {
        var key = $"{string.Join('+', setup.Drive)}|{EndsReadings.Key(setup)}|{string.Join('+', setup.Read)}";
        return _paths.TryGetValue(key, out var path) ? path
            : _paths[key] = new(_physics.Way(setup.Drive[0], setup.Drive[1], [])!, _physics.Way(setup.Read[0], setup.Read[1], setup.Tie)!);
    }

    /// <summary>Two halves in series both ways: the greater impedance over the smaller decides, by its own figures.</summary>
    public ulong[] ByImpedance(TestSetup first, double firstOhms, double secondOhms)
    {
        var decides = _knowledge.Rules["ends-impedance"]["decides"];
        var driven = _physics.Way(first.Read[0], first.Read[1], first.Tie)!;
        return [.. _scheme.Ways.Select(way =>
        {
            var aiding = driven.Count == 2 && Math.Cos((way[driven[0].Coil] - way[driven[1].Coil]) * Math.PI / 180) * driven[0].Sign * driven[1].Sign > 0;
            return (aiding ? secondOhms / firstOhms : firstOhms / secondOhms) >= decides ? 0 : Any;
        })];
    }

    private ulong Mask(string test, IReadOnlyList<(int Coil, int Sign)> driven, IReadOnlyList<(int Coil, int Sign)> read, int[] way, double ratio)
    {
        if (test == "half-run")
        {
            return Running(EndsPhysics.Ratio(driven, read, way, 1), ratio) ? Any : 0;
        }

        var sameAxis = Math.Abs(EndsPhysics.Ratio(driven, read, way, 1) - 1) > 0.9;
        var mask = 0UL;
        for (var step = 0; step < Steps; step++)
        {
            if (Fits(test, EndsPhysics.Ratio(driven, read, way, step * Step), ratio, sameAxis))
            {
                mask |= 1UL << step;
            }
        }

        return mask;
    }

    private bool Running(double predicted, double ratio)
    {
        var rule = _knowledge.Rules["ends-running"];
        return predicted > 1 ? ratio > rule["opposing"] && ratio <= _knowledge.Rules["ends-same-axis"]["most"] : ratio < rule["aiding"];
    }

    private bool Fits(string test, double predicted, double ratio, bool sameAxis) => test switch
    {
        "battery-flick" => ratio switch
        {
            > 0 => predicted >= _knowledge.Rules["ends-induced"]["null"],
            < 0 => predicted <= -_knowledge.Rules["ends-induced"]["null"],
            _ => Math.Abs(predicted) <= 3 * _knowledge.Rules["ends-induced"]["null"],
        },
        "induced-voltage" => Math.Abs(ratio - Math.Abs(predicted)) <= Spread(Math.Abs(predicted), _knowledge.Rules["ends-induced"]["null"]),
        _ => FitsTied(Math.Abs(predicted), ratio, sameAxis),
    };

    /// <summary>Near the reading of two coils that do not couple at all, nothing is refuted.</summary>
    private bool FitsTied(double predicted, double ratio, bool sameAxis)
    {
        var rule = _knowledge.Rules[sameAxis ? "ends-same-axis" : "ends-phases"];
        var (above, below) = (rule["aiding"] - 1, 1 - rule["opposing"]);
        var spread = Math.Abs(predicted - 1) * _knowledge.Rules["ends-induced"]["spread-percent"] / 100;
        return ratio > predicted - spread - (predicted >= 1 ? below : above) && ratio < predicted + spread + (predicted <= 1 ? above : below);
    }

    private double Spread(double predicted, double floor) =>
        Math.Max(floor, _knowledge.Rules["ends-induced"]["floor"]) + (predicted * _knowledge.Rules["ends-induced"]["spread-percent"] / 100);
}

/// <summary>Ways that a set-up cannot tell apart.</summary>
/// <param name="Couplings">What is left of each.</param>
/// <param name="Ways">Their indices.</param>
internal sealed record EndsKind(ulong Couplings, List<int> Ways)
{
    public int Way => Ways[0];

    public int Count => Ways.Count;
}

/// <summary>What is fed and what is read in a set-up; two set-ups of one shape read the same for coils that lie alike.</summary>
internal sealed class EndsPath
{
    private readonly int[] _touched;

    public EndsPath(IReadOnlyList<(int Coil, int Sign)> driven, IReadOnlyList<(int Coil, int Sign)> read)
    {
        (Driven, Read) = (driven, read);
        _touched = [.. driven.Concat(read).Select(step => step.Coil).Distinct()];
        string Steps(IReadOnlyList<(int Coil, int Sign)> steps) => string.Join(',', steps.Select(step => $"{Array.IndexOf(_touched, step.Coil)}{(step.Sign > 0 ? '+' : '-')}"));
        Shape = $"{Steps(driven)}|{Steps(read)}";
    }

    public IReadOnlyList<(int Coil, int Sign)> Driven { get; }

    public IReadOnlyList<(int Coil, int Sign)> Read { get; }

    public string Shape { get; }

    /// <summary>The directions of the coils it touches against the first of them.</summary>
    public long Relative(int[] way)
    {
        var code = 0L;
        foreach (var coil in _touched)
        {
            code = (code * 12) + ((way[coil] - way[_touched[0]] + 360) % 360 / 30);
        }

        return code;
    }
}
