using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>Reads a plate: what follows from its fields, and which of them disagree.</summary>
public static class PlateReading
{
    /// <summary>The report on a plate as far as it was read; a field that is not there is not checked.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plate">The plate.</param>
    /// <param name="region">Which tables apply where the plate does not settle it.</param>
    public static PlateReport Check(TradeKnowledge knowledge, PlateFields plate, Region region)
    {
        ArgumentNullException.ThrowIfNull(plate);
        var facts = PlateFacts.Of(knowledge, plate, region);
        var speed = facts.Speed?.Fits == true ? facts.Speed : null;
        return new PlateReport
        {
            Poles = speed?.QuotePoles(knowledge, facts.Rpm!.Value),
            SynchronousRpm = speed?.QuoteSynchronous(knowledge),
            SlipPercent = speed?.QuoteSlip(knowledge, facts.Rpm!.Value),
            RatedTorque = facts is { Watts: { } watts, Rpm: { } rpm } ? PlatePower.Torque(knowledge, watts, rpm) : null,
            RatedTorquePoundFeet = facts is { Watts: { } power, Rpm: { } turns } ? PlatePower.TorquePoundFeet(knowledge, power, turns) : null,
            InputWatts = PlateInput.Watts(facts),
            LockedRotorAmps = PlateInput.LockedRotorAmps(facts),
            Findings = [.. PlateChecks.Connections(facts), .. PlateChecks.Speed(facts), .. PowerChecks.All(facts), .. MarkChecks.All(facts)],
            Estimates = [.. PlateInput.Estimates(facts)],
        };
    }

    /// <summary>The report, or what cannot be a plate at all.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plate">The plate.</param>
    /// <param name="region">Which tables apply; <see langword="null"/> to take it from the plate's own units.</param>
    public static Answer<PlateReport> Read(TradeKnowledge knowledge, PlateFields plate, Region? region)
    {
        var problems = PlateLimits.Problems(knowledge, plate).ToList();
        return problems.Count > 0 ? Answer<PlateReport>.Refused(problems) : Check(knowledge, plate, region ?? RegionOf(knowledge, plate));
    }

    private static Region RegionOf(TradeKnowledge knowledge, PlateFields plate) =>
        plate.Hertz is { } hertz ? Math.Abs(hertz - knowledge.Rules["supply-frequencies"]["iec-hertz"]) < Math.Abs(hertz - knowledge.Rules["supply-frequencies"]["na-hertz"]) ? Region.Iec : Region.NorthAmerica
        : plate.Horsepower is null && plate.Kilowatts is not null ? Region.Iec : Region.NorthAmerica;
}
