using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What a meter's figure is worth.</summary>
/// <remarks>The error is a share of the reading and some counts of the last digit; zeroing takes the test leads off but adds the counts of the zero reading.</remarks>
internal sealed class MeterModel
{
    private const double FlatToDeviation = 0.57735026918962576; // 1/√3: the deviation of a flat range of half-width one
    private const double Exact = 1e-4;

    private readonly IdentificationFigures _figures;
    private readonly double _share;
    private readonly double _counts;
    private readonly double _leadOhms;

    public MeterModel(IdentificationFigures figures, MeterInput? said)
    {
        _figures = figures;
        _share = (said?.Percent ?? figures.Meter.Percent) / 100;
        var counts = said?.Counts ?? figures.Meter.Counts;
        _leadOhms = said?.Zeroed == true ? 0 : said?.TestLeadOhms ?? 0;
        _counts = counts;
    }

    /// <summary>The figure without the test leads, never below zero.</summary>
    public double Corrected(double shown) => Math.Max(0, shown - _leadOhms);

    /// <summary>The greatest error of a figure in ohms.</summary>
    public double Limit(double shown) => (_share * shown) + (_counts * Count(shown));

    /// <summary>One standard deviation of a figure in ohms, the spread of like coils in it.</summary>
    public double Deviation(double shown) => Math.Sqrt(
        Math.Pow(Limit(shown) * FlatToDeviation, 2) + Math.Pow(_figures.CoilSpread.Value * Corrected(shown), 2) + (Exact * Exact));

    /// <summary>Within so many ohms two figures are neither alike nor different.</summary>
    public double CannotTell(double first, double second)
    {
        var greater = Math.Max(first, second);
        var meter = (2 * _counts * Count(greater)) + (_figures.SameMeterShare.Value * greater);
        return Math.Max(Math.Max(_figures.AlikeShare.Value * greater, _figures.AlikeOhms.Value), meter);
    }

    /// <summary>Beyond so many ohms two figures cannot be those of like windings.</summary>
    public double NotAlike(double first, double second) => CannotTell(first, second) + Limit(Math.Max(first, second)) - (_counts * Count(Math.Max(first, second)));

    /// <summary>What a reading between two leads amounts to.</summary>
    public Measured Measure(int index, int first, int second, Fact.Reading reading)
    {
        var ohms = reading.Ohms is { } shown ? Corrected(shown) : 0;
        var showed = reading switch
        {
            { Kick: true } => Showed.Kick,
            { Ohms: { } figure } when figure > _figures.WindingOhmsMost.Value => Showed.Kick,
            { Ohms: not null } => Showed.Ohms,
            { Short: true } => Showed.Beep,
            _ => Showed.Open,
        };
        return new(index, Math.Min(first, second), Math.Max(first, second), showed, ohms, Deviation(reading.Ohms ?? 0));
    }

    /// <summary>The readings, with a figure above that of any winding taken for a sum of windings where other readings lead from its one lead to its other.</summary>
    public static IEnumerable<Measured> Sums(IReadOnlyList<Measured> readings)
    {
        var ways = readings.Where(reading => reading.Conducts).ToList();
        return readings.Select(reading => reading is { Showed: Showed.Kick, Ohms: > 0 } && Leads(ways, reading.First, reading.Second)
            ? new(reading.Index, reading.First, reading.Second, Showed.Ohms, reading.Ohms, reading.Error)
            : reading);
    }

    private static bool Leads(List<Measured> ways, int from, int to)
    {
        var reached = new HashSet<int> { from };
        while (ways.Find(way => reached.Contains(way.First) != reached.Contains(way.Second)) is { } way)
        {
            reached.Add(way.First);
            reached.Add(way.Second);
        }

        return reached.Contains(to);
    }

    private double Count(double shown) => (_figures.Meter.Ranges.FirstOrDefault(range => shown <= range.UpToOhms) ?? _figures.Meter.Ranges[^1]).CountOhms;
}
