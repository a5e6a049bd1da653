using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>The plate's voltages, a range such as 208-230 taken as one, the lowest first.</summary>
internal sealed class PlateVolts
{
    private readonly ConnectionFigures _figures;
    private readonly PlateFields _plate;
    private readonly List<List<double>> _ranges = [];

    public PlateVolts(ConnectionFigures figures, PlateFields plate, IReadOnlyList<LayoutConnection> rows)
    {
        (_figures, _plate) = (figures, plate);
        var shares = rows.Select(row => row.VoltsShare).Distinct().ToList();
        foreach (var volts in plate.Volts.Order())
        {
            if (_ranges.Count > 0 && volts < _ranges[^1][0] * figures.RangeRatio.Value && Nearest(volts, shares) == Nearest(_ranges[^1][0], shares))
            {
                _ranges[^1].Add(volts);
            }
            else
            {
                _ranges.Add([volts]);
            }
        }
    }

    /// <summary>How many different voltages the plate gives.</summary>
    public int Count => _ranges.Count;

    /// <summary>The volts of the plate that a row is made for, or none where the plate does not give them.</summary>
    public IReadOnlyList<double> For(LayoutConnection row, double lowestShare = 1)
    {
        double Off(List<double> range) => OffLowest(range[^1], row.VoltsShare / lowestShare); // the highest of a range: 115/208-230 is no star of 115 V
        return _ranges.MinBy(Off) is { } nearest && Off(nearest) <= _figures.RatioTolerance.Value ? nearest : [];
    }

    /// <summary>Whether every voltage of the plate is that of some row.</summary>
    public bool AllServed(IReadOnlyList<LayoutConnection> rows, double lowestShare) =>
        _ranges.TrueForAll(range => rows.Any(row => ReferenceEquals(For(row, lowestShare), range)));

    /// <summary>Plate amps for these volts, where the plate says which are which.</summary>
    public double? Amps(double volts)
    {
        var (all, amps) = (_plate.Volts, _plate.Amps);
        if (amps.Count == all.Count)
        {
            return amps[all.ToList().IndexOf(volts)];
        }

        // One figure for each range, in the order of the plate: a low-first plate lists the greater amps first.
        var order = all.Select(one => _ranges.FindIndex(range => range.Contains(one))).Distinct().ToList();
        return amps.Count == order.Count ? amps[order.IndexOf(_ranges.FindIndex(range => range.Contains(volts)))] : null;
    }

    /// <summary>The share of the lowest voltage that a figure comes nearest to: on a plate for 230/400/460 V, 400 and 460 are two voltages and no range.</summary>
    private double Nearest(double volts, List<double> shares) => shares.MinBy(share => OffLowest(volts, share));

    private double OffLowest(double volts, double share) => _ranges[0].Min(lowest => Math.Abs((volts / (lowest * share)) - 1));
}
