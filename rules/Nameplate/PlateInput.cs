using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>What a motor draws by its plate, and what the plate leaves to what is usual.</summary>
internal static class PlateInput
{
    /// <summary>Watts from the line: exact where efficiency or power factor is marked, else the range that the kind of motor leaves.</summary>
    public static QuotedRange? Watts(PlateFacts facts)
    {
        var rule = facts.Knowledge.Rules["input-power"];
        var apparent = facts.Pairs.Count > 0 && facts.Phases is not null ? facts.Root * facts.Pairs[0].Volts * facts.Pairs[0].Amps : (double?)null;
        var exact = new List<double>();
        if (facts is { Watts: { } shaft, Efficiency: { } efficiency })
        {
            exact.Add(shaft / efficiency);
        }

        if (apparent is { } voltAmps && facts.PowerFactor is { } powerFactor)
        {
            exact.Add(voltAmps * powerFactor);
        }

        if (exact.Count > 0)
        {
            return new(Quote(exact.Min()), Quote(exact.Max()));
        }

        if (facts.Watts is not { } watts)
        {
            return null;
        }

        var (low, high) = EfficiencyRange(facts) is { } range ? (watts / range.High, watts / range.Low) : (watts, double.PositiveInfinity);
        var most = apparent is { } limit && limit >= low ? Math.Min(high, limit) : high;
        return new(Quote(low), double.IsFinite(most) ? Quote(most) : null);

        Quoted Quote(double value) => rule.Quote(value, "watt", string.Join(", ", Inputs(facts, apparent)));
    }

    /// <summary>Amps with the rotor held: by the code letter where one is marked, else what the kind of motor usually draws.</summary>
    public static QuotedRange? LockedRotorAmps(PlateFacts facts)
    {
        var phases = facts.Phases ?? 1;
        if (facts.Plate.Text("codeLetter") is { } letter && facts.Horsepower is { } horsepower && facts.Plate.Volts.Count > 0
            && LockedRotor.FromCodeLetter(facts.Knowledge, letter, horsepower, facts.Plate.Volts[0], phases) is { } marked)
        {
            return marked;
        }

        return facts.Pairs.Count > 0 && facts.Phases is not null
            ? LockedRotor.FromKind(facts.Knowledge, LockedRotor.KindOf(facts.Type, phases), facts.Pairs[0].Amps)
            : null;
    }

    /// <summary>Missing fields as ranges.</summary>
    public static IEnumerable<PlateEstimate> Estimates(PlateFacts facts)
    {
        var table = facts.Knowledge.Tables["usual-efficiency"];
        if (facts.HertzAssumed && facts.Speed is { } speed)
        {
            var quoted = facts.Knowledge.Rules["induction-poles"].Quote(speed.Hertz, "hertz", Units.Text(facts.Rpm!.Value, "rpm", 5));
            yield return new PlateEstimate("hertz", quoted, quoted, Statement.Of("nameplate.hertz-from-speed").With("hertz", quoted));
        }

        if (facts.Efficiency is null && EfficiencyRange(facts) is { } efficiency)
        {
            yield return Range("efficiency", 100 * efficiency.Low, 100 * efficiency.High, "percent");
        }

        if (facts.PowerFactor is null && Usual(facts, "power-factor-low", "power-factor-high") is { } factor)
        {
            yield return Range("powerFactor", factor.Low, factor.High, "ratio");
        }

        if (facts.Plate.Amps.Count == 0 && facts is { Watts: { } watts, Phases: not null } && facts.Plate.Volts.Count > 0
            && EfficiencyRange(facts) is { } eta && Usual(facts, "power-factor-low", "power-factor-high") is { } pf)
        {
            var volts = facts.Plate.Volts[0];
            yield return Range("amps", watts / (facts.Root * volts * eta.High * pf.High), watts / (facts.Root * volts * eta.Low * pf.Low), "amp");
        }

        PlateEstimate Range(string field, double low, double high, string unit)
        {
            var (least, most) = (table.Quote(low, unit, Inputs()), table.Quote(high, unit, Inputs()));
            return new PlateEstimate(field, least, most, Statement.Of("nameplate.estimate", ("field", field)).With("low", least).With("high", most));
        }

        string Inputs() => $"{(facts.Type is { } type ? type + ", " : string.Empty)}{Units.Text(facts.Horsepower!.Value, "horsepower")}";
    }

    /// <summary>Least and greatest usual efficiency as a share, over all kinds that the motor can be.</summary>
    private static (double Low, double High)? EfficiencyRange(PlateFacts facts) =>
        Usual(facts, "efficiency-low", "efficiency-high") is { } percent ? (percent.Low / 100, percent.High / 100) : null;

    private static (double Low, double High)? Usual(PlateFacts facts, string low, string high)
    {
        var table = facts.Knowledge.Tables["usual-efficiency"];
        if (facts.Horsepower is not { } horsepower || (facts.Phases is null && MotorKind.Of(facts.Type) is null))
        {
            return null;
        }

        var rows = MotorKind.Rows(table, facts.Type, facts.Phases, horsepower);
        return rows.Count == 0 ? null : (rows.Min(row => table.Number(row, low)!.Value), rows.Max(row => table.Number(row, high)!.Value));
    }

    private static IEnumerable<string> Inputs(PlateFacts facts, double? apparent)
    {
        if (facts.Watts is { } watts)
        {
            yield return $"shaft {Units.Text(watts, "watt", 4)}";
        }

        if (facts.Efficiency is { } efficiency)
        {
            yield return $"efficiency {Units.Number(efficiency)}";
        }

        if (apparent is { } voltAmps)
        {
            yield return $"{Units.Text(facts.Pairs[0].Volts, "volt")} × {Units.Text(facts.Pairs[0].Amps, "amp")}{(facts.Phases == 3 ? " × √3" : string.Empty)} = {Units.Number(voltAmps, 4)} VA";
        }

        if (facts.PowerFactor is { } powerFactor)
        {
            yield return $"power factor {Units.Number(powerFactor)}";
        }
    }
}
