using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Supply;

/// <summary>Several motors on one feeder.</summary>
internal static class Feeder
{
    public static FeederReport Of(TradeKnowledge knowledge, Quoted full, ProtectionChoice device, IReadOnlyList<double> others, int year)
    {
        var all = others.Append(full.Value!.Value).OrderDescending().ToList();
        return new(Conductor(knowledge, all, year), Device(knowledge, device.StandardAmps.Value!.Value, others, device.Device, year));
    }

    /// <summary>What the conductors must carry: 1.25 × the largest and the sum of the others.</summary>
    public static Quoted Conductor(TradeKnowledge knowledge, IReadOnlyList<double> amps, int year)
    {
        var rule = knowledge.Rules["nec-feeder-conductor"];
        return rule.Quote(rule["factor"] * amps.Max() + amps.Sum() - amps.Max(), "amp", string.Join(", ", amps.Select(one => Units.Text(one, "amp"))), year);
    }

    /// <summary>The most that the device may be rated: the largest branch device and the other motors, rounded down.</summary>
    public static Quoted Device(TradeKnowledge knowledge, double branchAmps, IReadOnlyList<double> others, string device, int year)
    {
        var most = branchAmps + others.Sum();
        var rating = StandardRatings.CapDown(knowledge, StandardRatings.Of(knowledge, device, year), most) ?? branchAmps;
        return knowledge.Rules["nec-feeder-device"].Quote(rating, "amp",
            $"{Units.Text(branchAmps, "amp")} + {string.Join(" + ", others.Select(one => Units.Text(one, "amp")))} = {Units.Text(most, "amp")}", year);
    }
}
