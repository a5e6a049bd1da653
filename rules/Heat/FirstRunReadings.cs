using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>Each reading of a first run by itself: 0 as expected, 1 watch, 2 proves nothing either way, 3 stop, −1 cannot be judged.</summary>
internal static class FirstRunReadings
{
    public static (int Weight, Statement Say)? Outcome(TradeKnowledge knowledge, Fact.Running run)
    {
        var rule = knowledge.Rules["first-start"];
        return run.Outcome switch
        {
            "hummed" => (3, Statement.Of("heat.run-hummed").With("cut", rule.Quote(rule["cut-seconds"], "second", "a rotor that stands"))),
            "tripped" => (3, Statement.Of("heat.run-tripped")),
            "nothing" => (3, Statement.Of("heat.run-nothing")),
            "slow" => (3, Statement.Of("heat.run-slow").With("usual", rule.Quote(rule["normal-seconds"], "second", "uncoupled"))
                .With("suspicious", rule.Quote(rule["suspicious-seconds"], "second", "uncoupled"))),
            _ => null,
        };
    }

    public static (int Weight, Statement Say)? Amps(TradeKnowledge knowledge, PlateFields plate, double? rated, double? ratedVolts, Fact.Running run, bool coupled)
    {
        if (run.Amps is not { } amps)
        {
            return null;
        }

        if (rated is not { } plateAmps)
        {
            return (-1, Statement.Of("heat.run-amps-unknown", ("amps", Units.Text(amps, "amp"))));
        }

        var rule = knowledge.Rules["first-run-amps"];
        var percent = rule.Quote(100 * amps / plateAmps, "percent", $"{Units.Text(amps, "amp")} / {Units.Text(plateAmps, "amp")}");
        var service = coupled && plate.ServiceFactor is { } factor and > 1 ? Math.Max(rule["loaded-percent"], 100 * factor) : rule["loaded-percent"];
        // a motor for direct current draws next to nothing without load; one for alternating current still magnetises itself
        var say = (percent.Value!.Value, coupled) switch
        {
            (var share, false) when share > rule["double-percent"] => (3, Statement.Of("heat.run-amps-double")),
            (var share, false) when share > rule["uncoupled-percent"] => (3, Statement.Of("heat.run-amps-uncoupled-high")),
            (var share, false) when share < rule["uncoupled-light-percent"] && plate.Phases != 0 => (1, Statement.Of("heat.run-amps-light")),
            (var share, true) when share > service => (3, Statement.Of("heat.run-amps-over")),
            (var share, true) when share > rule["loaded-percent"] => (1, Statement.Of("heat.run-amps-service-factor")),
            (_, true) => (0, Statement.Of("heat.run-amps-loaded")),
            _ => (0, Statement.Of("heat.run-amps-uncoupled")),
        };
        var volts = ratedVolts is { } at ? Units.Text(at, "volt") : "?";
        return (say.Item1, say.Item2.With("amps", Units.Text(amps, "amp")).With("rated", Units.Text(plateAmps, "amp")).With("volts", volts).With("percent", percent));
    }

    /// <summary>How unequal the lines of a three-phase motor are; a lost one stops it, and far apart without load they prove it neither sound nor faulty.</summary>
    public static (int Weight, Statement Say)? Lines(TradeKnowledge knowledge, IReadOnlyList<double>? lines, bool coupled)
    {
        if (lines is not { Count: 3 } || Unbalance.OfAmps(knowledge, lines).Value is not { } report)
        {
            return null;
        }

        var rule = knowledge.Rules["current-unbalance"];
        return report.Verdict switch
        {
            "ok" => (0, report.Why),
            "lost-phase" => (3, report.Why),
            _ when !coupled && report.Percent.Value > rule["uncoupled-percent"] => (2, Statement.Of("heat.run-lines-apart").With("percent", report.Percent)
                .With("limit", rule.Quote(rule["investigate-percent"], "percent", "three quarters of the load or more"))),
            _ => (1, report.Why),
        };
    }

    public static (int Weight, Statement Say)? Volts(TradeKnowledge knowledge, double? rated, Fact.Running run)
    {
        if (run.Volts is not { } volts || rated is not { } plate)
        {
            return null;
        }

        var judged = SupplyMatch.Volts(knowledge, plate, volts);
        var say = judged.Verdict switch
        {
            "ok" or "ok-low" or "ok-high" => (0, Statement.Of("heat.run-volts-good")),
            "edge-low" or "edge-high" or "edge-ask-for-208" => (1, Statement.Of("heat.run-volts-edge")),
            _ => (3, Statement.Of("heat.run-volts-out")),
        };
        return (say.Item1, SupplyMatch.AgainstPlate(say.Item2.With("volts", Units.Text(volts, "volt", 4)).With("rated", Units.Text(plate, "volt", 4)), judged.Value));
    }

    public static (int Weight, Statement Say)? Speed(TradeKnowledge knowledge, PlateFields plate, Fact.Running run, bool coupled)
    {
        if (run.Rpm is not { } rpm || plate.Rpm is not { } rated)
        {
            return null;
        }

        var speed = plate.Hertz is { } hertz ? PlateSpeed.Of(knowledge, rated, hertz) : PlateSpeed.AtEitherFrequency(knowledge, rated) is [var only] ? only : null;
        if (speed is not { Fits: true })
        {
            return (-1, Statement.Of("heat.run-speed-unknown", ("rpm", Units.Text(rpm, "rpm", 5))));
        }

        var rule = knowledge.Rules["first-run-speed"];
        var synchronous = speed.QuoteSynchronous(knowledge);
        var slip = 100 * (speed.SynchronousRpm - rpm) / speed.SynchronousRpm;
        var say = slip < -rule["above-percent"] ? (3, Statement.Of("heat.run-speed-above"))
            : slip > Math.Max(rule["stop-percent"], speed.SlipPercent) ? (3, Statement.Of("heat.run-speed-low"))
            : rpm < rated * (1 - rule["below-percent"] / 100) || (!coupled && rpm < rated) ? (1, Statement.Of("heat.run-speed-below"))
            : (0, Statement.Of("heat.run-speed-good"));
        return (say.Item1, say.Item2.With("rpm", Units.Text(rpm, "rpm", 5)).With("rated", Units.Text(rated, "rpm", 5)).With("synchronous", synchronous));
    }

    public static (int Weight, Statement Say)? Direction(Fact.Running run) => run.Direction switch
    {
        "wrong" => (3, Statement.Of("heat.run-direction-wrong")),
        "right" => (0, Statement.Of("heat.run-direction-right")),
        _ => null,
    };

    public static (int Weight, Statement Say)? Heat(TradeKnowledge knowledge, Fact.Running run)
    {
        if (run.Celsius is not { } celsius)
        {
            return null;
        }

        var rule = knowledge.Rules["first-run-heat"];
        var limit = rule.Quote(rule["usual-celsius"], "celsius", "skin of the frame");
        return celsius > rule["usual-celsius"]
            ? (1, Statement.Of("heat.run-frame-hot", ("celsius", Units.Text(celsius, "celsius"))).With("limit", limit))
            : (0, Statement.Of("heat.run-frame-usual", ("celsius", Units.Text(celsius, "celsius"))).With("limit", limit));
    }
}
