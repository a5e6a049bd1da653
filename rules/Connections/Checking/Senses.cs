using System.Numerics;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Whether the coils of a three-phase winding all add to one turning field, by the phase of their volts.</summary>
internal sealed class Senses
{
    private readonly double _degrees;

    public Senses(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed, double degrees)
    {
        _degrees = degrees;
        var coils = TurnedVolts(fed);
        foreach (var phase in coils.GroupBy(one => one.Coil.Axis, StringComparer.Ordinal))
        {
            Within([.. phase]);
        }

        if (Mixed.Count == 0 && Opposed.Count == 0)
        {
            Between(coils);
        }
    }

    /// <summary>Pairs of coils of one phase that work against each other.</summary>
    public List<(string One, string Other)> Opposed { get; } = [];

    /// <summary>Coils that carry the volts of another phase.</summary>
    public List<string> Mixed { get; } = [];

    /// <summary>The coils of the one phase that is the wrong way round.</summary>
    public List<string> Reversed { get; private set; } = [];

    /// <summary>The phases do not stand at 120 degrees, and turning one round does not mend it.</summary>
    public bool IsUneven { get; private set; }

    private void Within(List<(FoundCoil Coil, Complex Volts)> phase)
    {
        foreach (var other in phase.Skip(1))
        {
            var apart = Judge.Apart(phase[0].Volts, other.Volts);
            if (apart > 180 - _degrees)
            {
                Opposed.Add((phase[0].Coil.Id, other.Coil.Id));
            }
            else if (apart > _degrees)
            {
                Mixed.AddRange(new[] { phase[0].Coil.Id, other.Coil.Id }.Except(Mixed, StringComparer.Ordinal));
            }
        }
    }

    private void Between(IReadOnlyList<(FoundCoil Coil, Complex Volts)> coils)
    {
        Complex? Of(string axis) => coils.FirstOrDefault(one => one.Coil.Axis == axis) is { Coil: not null } found ? found.Volts / found.Volts.Magnitude : null;
        if (Of("a") is not { } a || Of("b") is not { } b || Of("c") is not { } c || Even(a, b, c))
        {
            return;
        }

        var turned = Even(-a, b, c) ? "a" : Even(a, -b, c) ? "b" : Even(a, b, -c) ? "c" : null;
        Reversed = [.. coils.Where(one => one.Coil.Axis == turned).Select(one => one.Coil.Id)];
        IsUneven = turned is null;
    }

    /// <summary>The three stand at 120 degrees, in one order or the other.</summary>
    private bool Even(Complex a, Complex b, Complex c) => (a + b + c).Magnitude < Math.Sin(_degrees * Math.PI / 180);

    /// <summary>
    /// Coils of a winding for two numbers of poles that are meant to work against the other half of their phase: the halves meet inside in one lead.
    /// Where that lead is fed, the first half of the string counts turned; where it lies open, the halves that leave three even phases.
    /// </summary>
    public HashSet<string> Turned { get; private set; } = [];

    private List<(FoundCoil Coil, Complex Volts)> TurnedVolts(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed)
    {
        var pairs = fed.GroupBy(one => one.Coil.Axis, StringComparer.Ordinal).Select(phase => phase.ToList()).ToList();
        if (ArePairs(pairs, (one, other) => one.To == other.From || one.From == other.To))
        {
            Turned = [.. pairs.Select(pair => pair[0].Coil.To == pair[1].Coil.From ? pair[0].Coil.Id : pair[1].Coil.Id)];
        }
        else if (ArePairs(pairs, (one, other) => (one.From == other.From) != (one.To == other.To)))
        {
            int[][] choices = [[1, 1, 1], [1, 1, 0], [1, 0, 1], [1, 0, 0]];
            var even = choices.FirstOrDefault(choice => Even(Left(pairs[0], choice[0]), Left(pairs[1], choice[1]), Left(pairs[2], choice[2])), choices[0]);
            Turned = [.. pairs.Zip(even, (pair, turned) => pair[turned].Coil.Id)];
        }

        return [.. fed.Select(one => Turned.Contains(one.Coil.Id) ? (one.Coil, -one.Volts) : one)];
    }

    /// <summary>The direction of a phase once one coil of its pair counts turned.</summary>
    private static Complex Left(List<(FoundCoil Coil, Complex Volts)> pair, int turned) => pair[1 - turned].Volts / pair[1 - turned].Volts.Magnitude;

    private bool ArePairs(List<List<(FoundCoil Coil, Complex Volts)>> phases, Func<FoundCoil, FoundCoil, bool> meet) =>
        phases.Count == 3 && phases.TrueForAll(phase =>
            phase is [var one, var other] && meet(one.Coil, other.Coil) && Judge.Apart(one.Volts, other.Volts) > 180 - _degrees);
}
