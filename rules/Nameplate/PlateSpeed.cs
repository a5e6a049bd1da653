using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>What a marked speed says of an induction motor.</summary>
/// <param name="Poles">Number of poles, even.</param>
/// <param name="SynchronousRpm">Speed of the field in rpm.</param>
/// <param name="SlipPercent">Slip at the marked speed in percent.</param>
/// <param name="Hertz">The frequency it was reckoned with.</param>
/// <param name="Fits">Whether an induction motor runs at such a slip.</param>
public sealed record PlateSpeed(int Poles, double SynchronousRpm, double SlipPercent, double Hertz, bool Fits)
{
    /// <summary>The reading of a speed at a frequency; <see langword="null"/> above every synchronous speed.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="rpm">Marked speed in rpm, above zero.</param>
    /// <param name="hertz">Frequency in hertz, above zero.</param>
    public static PlateSpeed? Of(TradeKnowledge knowledge, double rpm, double hertz)
    {
        var rule = knowledge.Rules["induction-poles"];
        var poles = 2 * (int)Math.Floor(60 * hertz / rpm);
        if (poles == 0)
        {
            return null;
        }

        var synchronous = Synchronous(knowledge, poles, hertz);
        var slip = 100 * (synchronous - rpm) / synchronous;
        return new PlateSpeed(poles, synchronous, slip, hertz, poles <= MostPoles(knowledge) && slip >= rule["least-slip-percent"] && slip <= rule["most-slip-percent"]);
    }

    /// <summary>The readings of a speed where the frequency is not marked: those of 50 and 60 Hz that fit.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="rpm">Marked speed in rpm, above zero.</param>
    public static IReadOnlyList<PlateSpeed> AtEitherFrequency(TradeKnowledge knowledge, double rpm) =>
        [.. SupplyFrequencies(knowledge).Select(hertz => Of(knowledge, rpm, hertz)).OfType<PlateSpeed>().Where(speed => speed.Fits)];

    /// <summary>More poles than this no plate has.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    internal static double MostPoles(TradeKnowledge knowledge) => knowledge.Rules["plate-range"]["most-poles"];

    private static double[] SupplyFrequencies(TradeKnowledge knowledge) =>
        [knowledge.Rules["supply-frequencies"]["na-hertz"], knowledge.Rules["supply-frequencies"]["iec-hertz"]];

    /// <summary>The other of the two supply frequencies.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="hertz">A frequency in hertz.</param>
    internal static double OtherFrequency(TradeKnowledge knowledge, double hertz) =>
        SupplyFrequencies(knowledge).MaxBy(other => Math.Abs(other - hertz));

    /// <summary>Speed of the field in rpm.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="poles">Number of poles, even and above zero.</param>
    /// <param name="hertz">Frequency in hertz.</param>
    public static double Synchronous(TradeKnowledge knowledge, int poles, double hertz) =>
        knowledge.Rules["synchronous-speed"]["factor"] * hertz / poles;

    internal Quoted QuotePoles(TradeKnowledge knowledge, double rpm) =>
        knowledge.Rules["induction-poles"].Quote(Poles, "count", $"{Units.Text(rpm, "rpm", 5)}, {Units.Text(Hertz, "hertz")}");

    internal Quoted QuoteSynchronous(TradeKnowledge knowledge) =>
        knowledge.Rules["synchronous-speed"].Quote(SynchronousRpm, "rpm", $"{Units.Text(Hertz, "hertz")}, {Poles} poles");

    internal Quoted QuoteSlip(TradeKnowledge knowledge, double rpm) =>
        knowledge.Rules["slip"].Quote(SlipPercent, "percent", $"{Units.Text(SynchronousRpm, "rpm", 5)} and {Units.Text(rpm, "rpm", 5)}");
}
