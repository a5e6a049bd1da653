using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>Checks of the volt and amp pairs, and of the speed.</summary>
internal static class PlateChecks
{
    /// <summary>Volts against volts and amps against amps of a plate for two connections.</summary>
    public static IEnumerable<PlateFinding> Connections(PlateFacts facts)
    {
        var (volts, amps) = (facts.Plate.Volts, facts.Plate.Amps);
        var groups = PlateConnections.Groups(facts.Knowledge, volts);
        if (volts.Count > 0 && amps.Count > 1 && facts.Pairs.Count == 0)
        {
            yield return new PlateFinding("PC-DUAL", Statement.Of("nameplate.dual-count",
                ("volts", string.Join('/', volts.Select(one => Units.Number(one, 4)))), ("amps", string.Join('/', amps.Select(one => Units.Number(one, 4))))), "doubtful");
        }

        for (var at = 0; at + 1 < groups.Count; at++)
        {
            if (VoltPair(facts, groups[at], groups[at + 1]) is { } odd)
            {
                yield return odd;
            }

            if (AmpPair(facts, at) is { } wrong)
            {
                yield return wrong;
            }
        }

        foreach (var neighbours in facts.Pairs.GroupBy(pair => pair.Group).Where(group => group.Count() == 2))
        {
            if (Neighbours(facts, neighbours.First(), neighbours.Last()) is { } wrong)
            {
                yield return wrong;
            }
        }
    }

    /// <summary>Speed against poles and hertz.</summary>
    public static IEnumerable<PlateFinding> Speed(PlateFacts facts)
    {
        if (facts is { Speed: { Fits: true } fits, Rpm: { } turns } && facts.Plate.Numbers("poles") is [var written] && !written.Equals(fits.Poles))
        {
            yield return new PlateFinding("PC-RPM", Statement.Of("nameplate.poles-differ",
                ("rpm", Units.Text(turns, "rpm", 5)), ("hertz", Units.Text(fits.Hertz, "hertz")), ("marked", Units.Number(written)))
                .With("poles", fits.QuotePoles(facts.Knowledge, turns)), "doubtful");
        }

        if (facts.Rpm is not { } rpm || facts.Brushed || facts.Speed is { Fits: true })
        {
            yield break;
        }

        var marked = facts.Plate.Hertz;
        if (marked is null && facts.Speed is null && PlateSpeed.AtEitherFrequency(facts.Knowledge, rpm).Count > 0)
        {
            yield return new PlateFinding("PC-RPM", Statement.Of("nameplate.hertz-unknown", ("rpm", Units.Text(rpm, "rpm", 5))), "mind");
            yield break;
        }

        var speed = facts.Speed ?? PlateSpeed.Of(facts.Knowledge, rpm, marked ?? facts.Knowledge.Rules["supply-frequencies"]["na-hertz"]);
        var other = marked is { } hertz ? PlateSpeed.Of(facts.Knowledge, rpm, PlateSpeed.OtherFrequency(facts.Knowledge, hertz)) : null;
        yield return new PlateFinding("PC-RPM", (speed, other) switch
        {
            (null, _) => Statement.Of("nameplate.rpm-above-all", ("rpm", Units.Text(rpm, "rpm", 5))),
            ({ } read, _) when read.Poles > PlateSpeed.MostPoles(facts.Knowledge) => Statement.Of("nameplate.rpm-below-all", ("rpm", Units.Text(rpm, "rpm", 5))),
            ({ } read, _) when read.SlipPercent < facts.Knowledge.Rules["induction-poles"]["least-slip-percent"] => Statement.Of("nameplate.rpm-synchronous", ("rpm", Units.Text(rpm, "rpm", 5)))
                .With("synchronous", speed.QuoteSynchronous(facts.Knowledge)),
            (_, { Fits: true }) => Statement.Of("nameplate.rpm-other-hertz", ("rpm", Units.Text(rpm, "rpm", 5)), ("hertz", Units.Text(other.Hertz, "hertz")))
                .With("slip", speed.QuoteSlip(facts.Knowledge, rpm)).With("synchronous", speed.QuoteSynchronous(facts.Knowledge)),
            _ => Statement.Of("nameplate.rpm-no-induction", ("rpm", Units.Text(rpm, "rpm", 5)))
                .With("slip", speed.QuoteSlip(facts.Knowledge, rpm)).With("synchronous", speed.QuoteSynchronous(facts.Knowledge)),
        }, "doubtful");
    }

    private static PlateFinding? VoltPair(PlateFacts facts, IReadOnlyList<double> low, IReadOnlyList<double> high)
    {
        var rule = facts.Knowledge.Rules["pc-volts"];
        var ratios = low.SelectMany(one => high.Select(two => two / one)).ToList();
        double[] usual = [rule["series-parallel"], rule["star-delta"], rule["series-parallel"] / rule["star-delta"], rule["series-parallel"] * rule["star-delta"], rule["series-parallel"] * rule["series-parallel"]];
        if (ratios.Any(ratio => usual.Any(fits => Math.Abs(ratio / fits - 1) * 100 <= rule["band-percent"])) || ratios.Any(ratio => ratio > 1 && ratio <= rule["dual-frequency-most"]))
        {
            return null;
        }

        var quoted = rule.Quote(high[^1] / low[^1], "ratio", $"{Units.Text(high[^1], "volt")} / {Units.Text(low[^1], "volt")}");
        return new PlateFinding("PC-VOLTS", Statement.Of("nameplate.volt-pair",
            ("low", Units.Text(low[^1], "volt")), ("high", Units.Text(high[^1], "volt"))).With("ratio", quoted), "doubtful");
    }

    private static PlateFinding? AmpPair(PlateFacts facts, int group)
    {
        var rule = facts.Knowledge.Rules["pc-dual"];
        var low = facts.Pairs.Where(pair => pair.Group == group).ToList();
        var high = facts.Pairs.Where(pair => pair.Group == group + 1).ToList();
        if (low.Count == 0 || high.Count == 0 || low.Exists(one => high.Exists(two => Agree(rule, one, two))))
        {
            return null;
        }

        var (first, second) = (low[^1], high[^1]);
        var (amps, volts) = (first.Amps / second.Amps, second.Volts / first.Volts);
        var measured = rule.Quote(amps, "ratio", $"{Units.Text(first.Amps, "amp")} / {Units.Text(second.Amps, "amp")}");
        var expected = rule.Quote(volts, "ratio", $"{Units.Text(second.Volts, "volt")} / {Units.Text(first.Volts, "volt")}");
        var swapped = Agree(rule, first with { Amps = second.Amps }, second with { Amps = first.Amps });
        var tenfold = Agree(rule, first with { Amps = first.Amps / 10 }, second) || Agree(rule, first with { Amps = first.Amps * 10 }, second);
        var statement = swapped ? Statement.Of("nameplate.dual-swapped")
            : tenfold ? Statement.Of("nameplate.dual-point")
            : Math.Abs(amps - 1) * 100 <= rule["band-percent"] ? Statement.Of("nameplate.dual-same")
            : Statement.Of("nameplate.dual-other");
        return new PlateFinding("PC-DUAL", statement
            .With("volts", $"{Units.Number(first.Volts, 4)}/{Units.Text(second.Volts, "volt", 4)}")
            .With("amps", $"{Units.Number(first.Amps, 4)}/{Units.Text(second.Amps, "amp", 4)}")
            .With("ratio", measured).With("expected", expected), "impossible");
    }

    private static bool Agree(TradeRule rule, PlatePair low, PlatePair high)
    {
        var wanted = high.Amps * high.Volts / low.Volts;
        return Math.Abs(low.Amps - wanted) <= Math.Max(wanted * rule["band-percent"] / 100, rule["band-amps"]) + 1e-9;
    }

    private static PlateFinding? Neighbours(PlateFacts facts, PlatePair first, PlatePair second)
    {
        var rule = facts.Knowledge.Rules["pc-dual-208"];
        var ratio = first.Volts <= second.Volts ? first.Amps / second.Amps : second.Amps / first.Amps;
        var dual = facts.Knowledge.Rules["pc-dual"];
        var near = Math.Abs(first.Amps - second.Amps) <= dual["band-amps"] + 1e-9;
        return near || (ratio >= rule["least"] && ratio <= rule["most"])
            ? null
            : new PlateFinding("PC-DUAL-208", Statement.Of("nameplate.neighbours",
                ("volts", $"{Units.Number(first.Volts, 4)}-{Units.Text(second.Volts, "volt", 4)}"), ("amps", $"{Units.Number(first.Amps, 4)}-{Units.Text(second.Amps, "amp", 4)}"))
                .With("ratio", rule.Quote(ratio, "ratio", $"{Units.Text(first.Amps, "amp")} and {Units.Text(second.Amps, "amp")}")), "doubtful");
    }
}
