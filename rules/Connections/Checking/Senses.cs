using System.Numerics;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Whether the coils of a three-phase winding all add to one turning field, by the phase of their volts.</summary>
internal sealed class Senses
{
    private readonly double _degrees;

    public Senses(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed, double degrees)
    {
        _degrees = degrees;
        if (IsConsequentFromEnds(fed))
        {
            IsUneven = !MeetsEvenly([.. fed.DistinctBy(one => one.Coil.Axis).Select(one => one.Volts / one.Volts.Magnitude)]);
            return;
        }

        var coils = IsConsequent(fed) ? Turned(fed) : fed;
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
        Reversed = turned is null ? [] : [.. coils.Where(one => one.Coil.Axis == turned).Select(one => one.Coil.Id)];
        IsUneven = turned is null;
    }

    /// <summary>The three stand at 120 degrees, in one order or the other.</summary>
    private bool Even(Complex a, Complex b, Complex c) => (a + b + c).Magnitude < Math.Sin(_degrees * Math.PI / 180);

    /// <summary>A winding for two numbers of poles: the halves of every phase meet inside in the lead that is fed, and are meant to work against each other.</summary>
    private bool IsConsequent(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed) =>
        ArePairs(fed, (one, other) => one.To == other.From || one.From == other.To);

    /// <summary>The same, fed from the far ends of both halves, whose starts meet in a lead that lies open; which half leads is not told by the names.</summary>
    private bool IsConsequentFromEnds(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed) =>
        ArePairs(fed, (one, other) => (one.From == other.From) != (one.To == other.To));

    private bool ArePairs(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed, Func<FoundCoil, FoundCoil, bool> meet) =>
        fed.Count == 6 && fed.GroupBy(one => one.Coil.Axis, StringComparer.Ordinal).ToList() is { Count: 3 } phases && phases.TrueForAll(phase =>
            phase.ToList() is [var one, var other] && meet(one.Coil, other.Coil) && Judge.Apart(one.Volts, other.Volts) > 180 - _degrees);

    /// <summary>With one sign or the other, the three stand at 120 degrees.</summary>
    private bool MeetsEvenly(IReadOnlyList<Complex> phases) =>
        new[] { 1, -1 }.Any(b => new[] { 1, -1 }.Any(c => Even(phases[0], b * phases[1], c * phases[2])));

    private static List<(FoundCoil Coil, Complex Volts)> Turned(IReadOnlyList<(FoundCoil Coil, Complex Volts)> fed) =>
        [.. fed.GroupBy(one => one.Coil.Axis, StringComparer.Ordinal).SelectMany(phase => phase.Select(one =>
            fed.Any(other => other.Coil != one.Coil && other.Coil.Axis == one.Coil.Axis && other.Coil.From == one.Coil.To) ? (one.Coil, -one.Volts) : one))];
}
