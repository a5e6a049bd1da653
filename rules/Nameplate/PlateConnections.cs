using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>One volt figure of a plate with the amps that go with it.</summary>
/// <param name="Volts">Rated volts.</param>
/// <param name="Amps">Rated amps at those volts.</param>
/// <param name="Group">Which connection it belongs to: 0 for the lowest volts.</param>
public sealed record PlatePair(double Volts, double Amps, int Group);

/// <summary>Which amps of a plate go with which volts: 208-230/460 V are two connections, not three.</summary>
public static class PlateConnections
{
    /// <summary>The volts of each connection: neighbours such as 208-230 stand together.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="volts">Rated volts in the order of the plate.</param>
    public static IReadOnlyList<IReadOnlyList<double>> Groups(TradeKnowledge knowledge, IReadOnlyList<double> volts)
    {
        var most = knowledge.Rules["pc-volts"]["neighbours-most"];
        var groups = new List<List<double>>();
        foreach (var one in volts)
        {
            if (groups.Count > 0 && Math.Max(one, groups[^1][^1]) / Math.Min(one, groups[^1][^1]) <= most)
            {
                groups[^1].Add(one);
            }
            else
            {
                groups.Add([one]);
            }
        }

        return groups;
    }

    /// <summary>Volts with their amps; empty where the plate's figures do not pair.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plate">The plate.</param>
    public static IReadOnlyList<PlatePair> Pairs(TradeKnowledge knowledge, PlateFields plate)
    {
        var (volts, amps) = (plate.Volts, plate.Amps);
        var groups = Groups(knowledge, volts);
        if (volts.Count == 0 || amps.Count == 0)
        {
            return [];
        }

        if (amps.Count == volts.Count)
        {
            return [.. groups.SelectMany((group, index) => group.Select(one => (one, index))).Zip(amps, (at, amp) => new PlatePair(at.one, amp, at.index))];
        }

        return amps.Count == groups.Count
            ? [.. groups.SelectMany((group, index) => group.Select(one => new PlatePair(one, amps[index], index)))]
            : [];
    }

    /// <summary>The plate's amps at a voltage: those of the volt figure nearest to it; <see langword="null"/> where none pairs.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plate">The plate.</param>
    /// <param name="volts">Volts of the connection or of the supply.</param>
    public static PlatePair? At(TradeKnowledge knowledge, PlateFields plate, double volts)
    {
        var pairs = Pairs(knowledge, plate);
        return pairs.Count == 0 ? null : pairs.MinBy(pair => Math.Abs(Math.Log(pair.Volts / volts)));
    }
}
