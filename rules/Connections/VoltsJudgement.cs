using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>Whether a supply suits one voltage of the plate, or one range of it.</summary>
internal sealed class VoltsJudgement
{
    public VoltsJudgement(ConnectionFigures figures, double supply, IReadOnlyList<double> plate, double hertzDeviation)
    {
        Plate = plate.MinBy(volts => Math.Abs(volts - supply));
        Deviation = (supply / Plate) - 1;
        var within = supply >= plate.Min() && supply <= plate.Max();
        var family = Family(figures, supply);
        var same = plate.Any(volts => Family(figures, volts) == family);
        var limit = within ? 1 : same ? figures.VoltsTolerance.Value : figures.OtherFamilyTolerance.Value;
        var near = Math.Abs(Deviation) <= limit + Rounding;
        BySum = near && !within && Math.Abs(Deviation) + hertzDeviation > figures.CombinedTolerance.Value + Rounding;
        OnlyByName = family.MustBeOnPlate && !same && !within && Math.Abs(Deviation) <= figures.VoltsTolerance.Value + Rounding;
        ByName = !near && Math.Abs(Deviation) <= figures.VoltsTolerance.Value + Rounding;
        Suits = near && !BySum && !OnlyByName;
    }

    /// <summary>Room for binary fractions: 253 V on 230 V is 10 %.</summary>
    private const double Rounding = 1e-9;

    /// <summary>The plate's volts nearest to the supply.</summary>
    public double Plate { get; }

    /// <summary>How far the supply lies from them, as a share with its sign.</summary>
    public double Deviation { get; }

    /// <summary>Near enough, but a supply that the plate must name.</summary>
    public bool OnlyByName { get; }

    /// <summary>Near enough for volts of one name, but the supply is named after another.</summary>
    public bool ByName { get; }

    /// <summary>Each deviation is near enough, volts and hertz together are not.</summary>
    public bool BySum { get; }

    /// <summary>Whether it suits.</summary>
    public bool Suits { get; }

    private static NominalFamily Family(ConnectionFigures figures, double volts) =>
        figures.Families.MinBy(family => family.Volts.Min(nominal => Math.Abs(Math.Log(volts / nominal))))!;
}
