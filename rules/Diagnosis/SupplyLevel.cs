using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Whether the volts that a supply is said to have are too low or too high for any supply of the region, where no plate says what they should be.</summary>
internal sealed class SupplyLevel
{
    private readonly ILookup<Region, double> _nominal;
    private readonly TradeRule _bands;

    public SupplyLevel(TradeKnowledge knowledge)
    {
        _nominal = knowledge.Supplies.Values.Where(supply => supply.Phases > 0).ToLookup(supply => supply.Region, supply => supply.Volts);
        _bands = knowledge.Rules["supply-level"];
    }

    /// <summary>The outcome of the test of the supply's volts; <see langword="null"/> where they are usual, or too far off to be one of the usual supplies at all.</summary>
    public string? Of(CaseFile file)
    {
        if (file.Supply?.Volts is not { } volts || file.Plate.Volts.Count > 0)
        {
            return null;
        }

        var share = volts / _nominal[file.Region].MinBy(nominal => Math.Abs(Math.Log(volts / nominal)));
        var iec = file.Region == Region.Iec;
        return Math.Abs(share - 1) > _bands["farthest"] ? null
            : share < _bands[iec ? "iec-least" : "na-least"] ? "low"
            : share > _bands[iec ? "iec-most" : "na-most"] ? "high"
            : null;
    }
}
