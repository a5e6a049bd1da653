using System.Numerics;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Machines;

/// <summary>Answers a machine question by the model of its kind.</summary>
public static class MachineAnswers
{
    /// <summary>Checks the question and answers it.</summary>
    /// <param name="question">The question; each wrong member is named in the refusal.</param>
    /// <param name="knowledge">The ranges of an estimate, and how far a fault goes.</param>
    public static Answer<MachineAnswer> Of(MachineQuestion question, TradeKnowledge knowledge)
    {
        var wrong = question.Problems();
        if (wrong.Count > 0)
        {
            return Answer<MachineAnswer>.Refused(wrong);
        }

        if (question.IsEstimate)
        {
            return MachineEstimate.Of(question, knowledge);
        }

        var tested = Tested(question);
        var known = tested is null ? question : question.With(tested.Circuit);
        if (!question.IsLocked && known is not { R1: >= 0, X1: >= 0, R2: > 0, X2: >= 0, Xm: > 0 })
        {
            return new Problem("invalid-fact", "tests", Statement.Of("machines.tests-contradict"));
        }

        return Solved(known) with { Basis = tested is null ? "circuit" : "tests", Circuit = tested?.Circuit, Effects = FaultEffects.Of([known], knowledge) };
    }

    /// <summary>The answer by a circuit that is known.</summary>
    internal static MachineAnswer Solved(MachineQuestion question)
    {
        if (question.IsLocked)
        {
            return Locked(question);
        }

        var circuit = new MachineCircuit(question.R1!.Value, question.X1!.Value, question.R2!.Value, question.X2!.Value, question.Xm!.Value, question.Rc);
        return question.Kind switch
        {
            MachineQuestion.TwoWindingKind => Two(question, circuit),
            MachineQuestion.ThreePhaseKind => Three(question, circuit),
            _ => One(question, circuit),
        };
    }

    private static TestedCircuit? Tested(MachineQuestion question) => question.Tests is not { } tests ? null
        : question.Kind == MachineQuestion.ThreePhaseKind
            ? BenchTests.ThreePhase(tests.NoLoad, tests.Blocked, tests.R1, tests.LeakageRatio, question.Feed.Hertz / (tests.BlockedHertz ?? question.Feed.Hertz))
            : BenchTests.SinglePhase(tests.NoLoad, tests.Blocked, tests.R1);

    private static MachineAnswer One(MachineQuestion question, MachineCircuit circuit)
    {
        OperatingPoint At(double slip) => SinglePhase.At(circuit, question.Feed, slip, question.Losses);
        var rest = At(1);
        return Common(question, At(question.AskedSlip)) with
        {
            StartingTorque = 0, // both fields are alike at standstill
            StartingAmps = rest.Amps,
            Curve = Curve(question, At),
            Trail = MachineTrail.Single(question, circuit),
        };
    }

    private static MachineAnswer Two(MachineQuestion question, MachineCircuit circuit)
    {
        var machine = new TwoWinding
        {
            Main = circuit,
            StartR = question.StartR!.Value,
            StartX = question.StartX!.Value,
            TurnsRatio = question.TurnsRatio!.Value,
            Microfarads = question.Microfarads,
            StartVolts = question.StartVolts is { } volts ? Complex.FromPolarCoordinates(volts, question.StartAngleDegrees * Math.PI / 180) : null,
        };
        var (point, rest) = (machine.At(question.Feed, question.AskedSlip, question.Losses), machine.At(question.Feed, 1, question.Losses));
        var currents = new StartCurrents(rest.MainAmps, rest.StartAmps, question.Feed.Volts);
        return Capacitors(question, machine.Standstill(), Common(question, point.Line)) with
        {
            MainAmps = point.MainAmps.Magnitude,
            MainAngleDegrees = OperatingPoint.Degrees(point.MainAmps),
            StartAmps = point.StartAmps.Magnitude,
            StartAngleDegrees = OperatingPoint.Degrees(point.StartAmps),
            BetweenDegrees = OperatingPoint.Degrees(point.StartAmps / point.MainAmps),
            CapacitorVolts = question.Microfarads is null ? null : point.CapacitorVolts.Magnitude,
            StartingTorque = rest.Line.Torque,
            StartingAmps = rest.Line.Amps,
            Starting = Starting(currents, rest.Line.Torque),
            Curve = Curve(question, slip => machine.At(question.Feed, slip, question.Losses).Line),
            Trail = MachineTrail.Two(question, circuit),
        };
    }

    private static MachineAnswer Locked(MachineQuestion question)
    {
        var windings = new LockedRotor(new Complex(question.R1!.Value, question.X1!.Value), new Complex(question.StartR!.Value, question.StartX!.Value));
        var currents = windings.At(question.Feed.Volts, question.Feed.Hertz, question.Microfarads);
        var empty = new MachineAnswer
        {
            SynchronousRpm = question.Poles is null || question.Hertz is null ? null : question.Feed.SynchronousRpm,
            Slip = 1,
            Rpm = 0,
            CoreBooking = question.CoreBooking,
            Trail = MachineTrail.Locked(question),
        };
        return Capacitors(question, windings, empty) with
        {
            Amps = currents.Line.Magnitude,
            AngleDegrees = OperatingPoint.Degrees(currents.Line),
            PowerFactor = Math.Cos(currents.Line.Phase),
            InputWatts = question.Feed.Volts * currents.Line.Real,
            OutputWatts = 0,
            StartingAmps = currents.Line.Magnitude,
            MainAmps = currents.Main.Magnitude,
            MainAngleDegrees = OperatingPoint.Degrees(currents.Main),
            StartAmps = currents.Start.Magnitude,
            StartAngleDegrees = OperatingPoint.Degrees(currents.Start),
            BetweenDegrees = currents.BetweenDegrees,
            CapacitorVolts = question.Microfarads is { } c ? (currents.Start * LockedRotor.OfCapacitor(c, question.Feed.Hertz)).Magnitude : null,
            Starting = Starting(currents, null),
        };
    }

    private static MachineAnswer Three(MachineQuestion question, MachineCircuit circuit)
    {
        var feed = question.Feed;
        ThreeLines? Lines(double slip) => question switch
        {
            { OpenLine: not null } => ThreePhase.LineOpen(circuit, feed, slip, question.Losses),
            { LineVolts: { } volts } => ThreePhase.Unbalanced(circuit, feed, slip, volts[0], volts[1], volts[2], question.Losses),
            _ => null,
        };
        OperatingPoint At(double slip) => Lines(slip)?.Line ?? ThreePhase.At(circuit, feed, slip, question.Losses);
        var (lines, rest) = (Lines(question.AskedSlip), At(1));
        var turn = question.OpenLine switch { "b" => 1, "c" => 2, _ => 0 };
        var greatest = Greatest(question, circuit);
        return Common(question, At(question.AskedSlip)) with
        {
            StartingTorque = rest.Torque,
            StartingAmps = rest.Amps,
            BreakdownTorque = greatest?.Torque,
            BreakdownSlip = greatest?.Slip,
            LineAmps = lines is null ? null : [.. Enumerable.Range(0, 3).Select(line => lines.Amps[(line + 3 - turn) % 3].Magnitude)],
            TerminalVolts = lines is null ? null : [.. Enumerable.Range(0, 3).Select(line => Between(lines, (line + 3 - turn) % 3))],
            Curve = Curve(question, At),
            Trail = MachineTrail.Three(question, circuit),
        };
    }

    /// <summary>The greatest torque and its slip; not searched for on unequal volts.</summary>
    private static (double Torque, double Slip)? Greatest(MachineQuestion question, MachineCircuit circuit)
    {
        if (question.OpenLine is not null)
        {
            var open = ThreePhase.GreatestWithLineOpen(circuit, question.Feed);
            return (open.Torque, open.Slip);
        }

        var most = ThreePhase.Breakdown(circuit, question.Feed);
        return question.LineVolts is null ? (most.Torque, most.Slip) : null;
    }

    private static double Between(ThreeLines lines, int first) => (lines.Volts[first] - lines.Volts[(first + 1) % 3]).Magnitude;

    private static MachineAnswer Capacitors(MachineQuestion question, LockedRotor windings, MachineAnswer answer) => question.Hertz is not { } hertz
        ? answer
        : answer with
        {
            MicrofaradsFor90Degrees = windings.MicrofaradsForRightAngle(hertz),
            MicrofaradsForGreatestTorque = windings.MicrofaradsForGreatestTorque(hertz),
            MicrofaradsForGreatestTorquePerAmp = windings.MicrofaradsForGreatestTorquePerAmp(hertz),
        };

    private static StartingAnswer Starting(StartCurrents currents, double? torque) => new(
        currents.Main.Magnitude, OperatingPoint.Degrees(currents.Main), currents.Start.Magnitude, OperatingPoint.Degrees(currents.Start),
        currents.Line.Magnitude, OperatingPoint.Degrees(currents.Line), currents.BetweenDegrees, torque, currents.TorqueFactor);

    private static MachineAnswer Common(MachineQuestion question, OperatingPoint point) => new()
    {
        Amps = point.Amps,
        AngleDegrees = point.AngleDegrees,
        PowerFactor = point.PowerFactor,
        InputWatts = point.InputWatts,
        ForwardTorque = point.ForwardTorque,
        BackwardTorque = point.BackwardTorque,
        Torque = point.Torque,
        AirGapWatts = point.AirGapWatts,
        ForwardAirGapWatts = point.ForwardWatts,
        BackwardAirGapWatts = point.BackwardWatts,
        ConvertedWatts = point.ConvertedWatts,
        OutputWatts = point.OutputWatts,
        ShaftTorque = point.ShaftTorque,
        Efficiency = point.Efficiency,
        StatorCopperWatts = point.StatorCopperWatts,
        RotorCopperWatts = point.RotorCopperWatts,
        SynchronousRpm = point.SynchronousRpm,
        Slip = point.Slip,
        Rpm = point.Rpm,
        CoreBooking = question.CoreBooking,
        Trail = [],
    };

    private static IReadOnlyList<CurvePoint>? Curve(MachineQuestion question, Func<double, OperatingPoint> at) => question.Curve is not { } points
        ? null
        : [.. Enumerable.Range(0, (int)points).Select(index => at(1 - (index / (points - 1)))).Select(point => new CurvePoint(point.Slip, point.Rpm, point.Torque, point.Amps, point.PowerFactor, point.Efficiency))];
}
