using System.Numerics;
using WireCoach.Rules.Machines;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>Machines whose answer is a closed form derived by hand, with figures drawn anew for each case.</summary>
public sealed class ClosedMachineFormsTest
{
    private const double Close = 1e-9;

    public static TheoryData<int> Cases() => [.. Enumerable.Range(1, 25)];

    /// <summary>The currents stand at 90° where Xc = Xs + Rs·Rm ÷ Xm; they add as the sides of a right-angled triangle.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_capacitance_for_a_right_angle(int draw)
    {
        var (windings, main, start) = Windings(draw);
        var reactance = start.Imaginary + (start.Real * main.Real / main.Imaginary);
        var microfarads = windings.MicrofaradsForRightAngle(60)!.Value;
        Assert.Equal(1e6 / (2 * Math.PI * 60 * reactance), microfarads, Close * microfarads);
        var currents = windings.At(115, 60, microfarads);
        Assert.Equal(90, currents.BetweenDegrees, 1e-6);
        Assert.Equal(Math.Sqrt(Math.Pow(115 / main.Magnitude, 2) + Math.Pow(currents.Start.Magnitude, 2)), currents.Line.Magnitude, Close * currents.Line.Magnitude);
    }

    /// <summary>(Rs·Xm − x·Rm) ÷ (Rs² + x²) is greatest at x = Rs·(Xm − |Zm|) ÷ Rm; a little more or less gives less.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_capacitance_for_the_greatest_starting_torque(int draw)
    {
        var (windings, main, start) = Windings(draw);
        var x = start.Real * (main.Imaginary - main.Magnitude) / main.Real;
        var microfarads = windings.MicrofaradsForGreatestTorque(60)!.Value;
        Assert.Equal(1e6 / (2 * Math.PI * 60 * (start.Imaginary - x)), microfarads, Close * microfarads);
        var most = windings.At(115, 60, microfarads).TorqueFactor;
        var derived = 115.0 * 115 * ((start.Real * main.Imaginary) - (x * main.Real)) / (OperatingSquare(main) * ((start.Real * start.Real) + (x * x)));
        Assert.Equal(derived, most, Close * derived);
        Assert.All([0.9, 0.99, 1.01, 1.1], share => Assert.True(windings.At(115, 60, share * microfarads).TorqueFactor < most));
    }

    /// <summary>At rest both sequences see the same motor: no torque, and √3 ÷ 2 of the usual starting current.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void At_rest_with_a_line_lost_there_is_current_and_no_torque(int draw)
    {
        var (circuit, feed) = Motor(draw);
        var lost = ThreePhase.LineOpen(circuit, feed, 1, new Losses());
        var amps = ThreePhase.At(circuit, feed, 1, new Losses()).Amps;
        Assert.Equal(Math.Sqrt(3) / 2 * amps, lost.Line.Amps, Close * amps);
        Assert.Equal(0, lost.Line.Torque, Close * ThreePhase.At(circuit, feed, 1, new Losses()).Torque);
    }

    /// <summary>At rest the torque of unequal lines is that of equal ones times (V1² − V2²) ÷ V²; of lines V·(1, 1, 1 + d) the sequences are known.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Unequal_lines_cost_torque_by_the_sequence_that_turns_against_it(int draw)
    {
        var (circuit, feed) = Motor(draw);
        var (v, odd) = (feed.Volts, feed.Volts * (1 + (draw * 0.004)));
        // Two equal sides v and the base `odd`: V1 ± V2 follow from the triangle's height h, V1 = (odd/2 + h/√3)/√3·… in line volts.
        var height = Math.Sqrt((v * v) - (odd * odd / 4));
        var (ahead, behind) = ((odd / 2) + (height / Math.Sqrt(3)), (odd / 2) - (height / Math.Sqrt(3)));
        var got = ThreePhase.Unbalanced(circuit, feed, 1, odd, v, v, new Losses()).Line.Torque;
        var equal = ThreePhase.At(circuit, feed, 1, new Losses()).Torque;
        Assert.Equal(equal * ((ahead * ahead) - (behind * behind)) / (v * v), got, 1e-8 * equal);
    }

    /// <summary>Thévenin: the greatest torque lies at s = R2 ÷ |Zth + jX2| and does not depend on R2.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_greatest_torque_does_not_depend_on_the_rotor_resistance(int draw)
    {
        var (circuit, feed) = Motor(draw);
        var most = ThreePhase.Breakdown(circuit, feed);
        Assert.Equal(most.Torque, ThreePhase.At(circuit, feed, most.Slip, new Losses()).Torque, 1e-8 * most.Torque);
        Assert.Equal(most.Torque, ThreePhase.Breakdown(circuit with { R2 = 3 * circuit.R2 }, feed).Torque, Close * most.Torque);
        Assert.All([0.9, 1.1], share => Assert.True(ThreePhase.At(circuit, feed, share * most.Slip, new Losses()).Torque < most.Torque));
    }

    /// <summary>One winding alone: no torque at rest, and the same torque the other way round.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void One_winding_alone_turns_either_way(int draw)
    {
        var (circuit, feed) = Motor(draw);
        Assert.Equal(0, SinglePhase.At(circuit, feed, 1, new Losses()).Torque, Close);
        var torque = SinglePhase.At(circuit, feed, 0.05, new Losses()).Torque;
        Assert.Equal(-torque, SinglePhase.At(circuit, feed, 1.95, new Losses()).Torque, Close * Math.Abs(torque));
    }

    private static double OperatingSquare(Complex ohms) => ohms.Magnitude * ohms.Magnitude;

    private static (LockedRotor Windings, Complex Main, Complex Start) Windings(int draw)
    {
        var (main, start) = (new Complex(1.5 + (0.13 * draw), 2 + (0.17 * draw)), new Complex(4 + (0.31 * ((draw * 7) % 25)), 3 + (0.2 * ((draw * 11) % 25))));
        return (new LockedRotor(main, start), main, start);
    }

    private static (MachineCircuit Circuit, Feed Feed) Motor(int draw) =>
        (new MachineCircuit(0.2 + (0.05 * draw), 0.4 + (0.03 * ((draw * 7) % 25)), 0.15 + (0.04 * ((draw * 3) % 25)), 0.3 + (0.05 * ((draw * 11) % 25)), 12 + draw), new Feed(200 + (10 * draw), draw % 2 == 0 ? 50 : 60, 2 + (2 * (draw % 3))));
}
