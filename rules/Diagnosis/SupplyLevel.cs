using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Whether the volts that a supply is said to have are too low or too high: for the plate, or where none says what they should be, for any supply of the region.</summary>
internal sealed class SupplyLevel
{
    private readonly ILookup<Region, double> _nominal;
    private readonly TradeRule _bands;
    private readonly TestGuide _guide;

    public SupplyLevel(TradeKnowledge knowledge)
    {
        _nominal = knowledge.Supplies.Values.Where(supply => supply.Phases > 0).ToLookup(supply => supply.Region, supply => supply.Volts);
        _bands = knowledge.Rules["supply-level"];
        _guide = knowledge.Tests["supply-voltage"];
    }

    /// <summary>The outcome of the test of the supply's volts; <see langword="null"/> where they are usual, or too far off to be one of the usual supplies at all.</summary>
    public string? Of(CaseFile file)
    {
        if (file.Supply?.Volts is not { } volts)
        {
            return null;
        }

        if (file.Plate.Volts.Count > 0)
        {
            var off = Math.Abs((volts / file.Plate.Volts.MinBy(plate => Math.Abs(Math.Log(volts / plate)))) - 1);
            return off <= _bands["farthest"] && Outcomes.Of(_guide, [volts], file) is var judged and not "right" ? judged : null;
        }

        var share = volts / _nominal[file.Region].MinBy(nominal => Math.Abs(Math.Log(volts / nominal)));
        var iec = file.Region == Region.Iec;
        return Math.Abs(share - 1) > _bands["farthest"] ? null
            : share < _bands[iec ? "iec-least" : "na-least"] ? "low"
            : share > _bands[iec ? "iec-most" : "na-most"] ? "high"
            : null;
    }
}
