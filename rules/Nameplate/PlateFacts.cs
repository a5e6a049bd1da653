using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>A plate with its units settled, as the checks use it.</summary>
internal sealed record PlateFacts
{
    public required TradeKnowledge Knowledge { get; init; }

    public required PlateFields Plate { get; init; }

    public required Region Region { get; init; }

    public required IReadOnlyList<PlatePair> Pairs { get; init; }

    public double? Watts { get; init; }

    public double? Horsepower => Watts / Knowledge.Rules["horsepower"]["watts"];

    public double? Rpm { get; init; }

    /// <summary>The reading of the speed at the marked hertz, or at the only frequency of the two that fits.</summary>
    public PlateSpeed? Speed { get; init; }

    /// <summary>Both frequencies were tried because none is marked.</summary>
    public bool HertzAssumed { get; init; }

    /// <summary>A motor with a commutator: no field goes round in it.</summary>
    public bool Brushed { get; init; }

    /// <summary>1 or 3 as marked, or as type and volts leave no other; else unknown.</summary>
    public int? Phases { get; init; }

    /// <summary>As a share, 0 to 1.</summary>
    public double? Efficiency { get; init; }

    /// <summary>As a share, 0 to 1.</summary>
    public double? PowerFactor { get; init; }

    public string? Type { get; init; }

    public double Root => LockedRotor.PhaseFactor(Phases ?? 1);

    public static PlateFacts Of(TradeKnowledge knowledge, PlateFields plate, Region region)
    {
        var rpm = plate.Rpm;
        var hertz = plate.Numbers("hertz");
        var type = plate.Text("type");
        var brushed = MotorKind.Of(type) is "universal" or "dc-permanent-magnet"; // its speed does not follow the hertz
        var readings = rpm is not { } turns || brushed ? []
            : hertz.Count > 0 ? hertz.Select(one => PlateSpeed.Of(knowledge, turns, one)).OfType<PlateSpeed>().ToList()
            : PlateSpeed.AtEitherFrequency(knowledge, turns);
        return new PlateFacts
        {
            Knowledge = knowledge,
            Plate = plate,
            Region = region,
            Pairs = PlateConnections.Pairs(knowledge, plate),
            Watts = PlatePower.Watts(knowledge, plate.Horsepower, plate.Kilowatts),
            Rpm = rpm,
            Speed = hertz.Count > 0
                ? readings.FirstOrDefault(reading => reading.Fits) ?? (readings.Count > 0 ? readings[0] : null)
                : readings.Count == 1 ? readings[0] : null,
            HertzAssumed = hertz.Count == 0 && readings.Count == 1,
            Phases = plate.Phases ?? PhasesOf(knowledge, plate),
            Efficiency = Share(plate.Number("efficiency")),
            PowerFactor = Share(plate.Number("powerFactor")),
            Type = type,
            Brushed = brushed,
        };
    }

    private static int? PhasesOf(TradeKnowledge knowledge, PlateFields plate)
    {
        var rule = knowledge.Rules["plate-phases"];
        return MotorKind.Of(plate.Text("type")) switch
        {
            "three-phase" => 3,
            "split-phase" or "capacitor-start" or "two-value" or "psc" or "shaded-pole" or "universal" => 1,
            _ when plate.Volts.Any(volts => volts >= rule["three-phase-from-volts"]) => 3,
            _ when plate.Volts.Any(volts => volts <= rule["single-phase-to-volts"]) => 1,
            _ => null,
        };
    }

    /// <summary>A percentage as a share: plates write 0.86 and 86.</summary>
    private static double? Share(double? marked) => marked is > 1 ? marked / 100 : marked;
}
