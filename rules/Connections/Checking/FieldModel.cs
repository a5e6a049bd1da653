using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using WireCoach.Rules.Machines;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>The connection as a coupled machine: every coil links the forward and the backward field by its turns and its axis, and the rotor answers both.</summary>
/// <remarks>
/// The verdict does not rest on this model (see <see cref="DesignVolts"/>); it says how much current flows, which way the field turns
/// and what the coils see at rest or at a slip. Its circuit is the usual one of the machine's kind, brought to size by the ohms that were
/// measured; without any measured ohms only volts and ratios mean something.
/// </remarks>
internal sealed class FieldModel
{
    private const double Leak = 1e-9;
    private readonly FoundNodes _nodes;
    private readonly PartPlaces _places;
    private readonly MachineCircuit _circuit;
    private readonly TradeRule _usual;
    private readonly bool _phases;
    private readonly double[] _turns;
    private readonly Complex[] _own;
    private readonly double _hertz;

    /// <param name="judge">What is known of the connection.</param>
    /// <param name="places">Where its parts stand.</param>
    /// <param name="knowledge">The usual circuits.</param>
    /// <param name="circuit">Another circuit than the usual one, per unit.</param>
    public FieldModel(Judge judge, PartPlaces places, TradeKnowledge knowledge, MachineCircuit? circuit = null)
    {
        var nodes = judge.Nodes;
        (_nodes, _places) = (nodes, places);
        _phases = nodes.Coils.Any(coil => coil.Coil!.IsPhase);
        _usual = knowledge.Rules[_phases ? "check-three-phase-circuit" : "check-single-phase-circuit"];
        _circuit = circuit ?? new MachineCircuit(_usual["r1"], _usual["x1"], _usual["r2"], _usual["x2"], _usual["xm"]);
        _hertz = nodes.Found.Hertz ?? knowledge.Rules["check-single-phase-circuit"]["hertz"];
        IsToScale = nodes.Coils.Any(coil => coil.Coil!.Ohms is not null);
        VoltAmps = Scale();
        _turns = [.. nodes.Coils.Select(coil => coil.Coil!.RatedVolts * (judge.Turned.Contains(coil.Id) ? -1 : 1) * (IsStart(coil) ? _usual["start-turns"] : 1))];
        _own = [.. nodes.Coils.Select(Own)];
    }

    /// <summary>Whether any ohms were measured, so that amps mean something.</summary>
    public bool IsToScale { get; }

    /// <summary>Rated volt-amperes of the main winding, or of one phase.</summary>
    private double VoltAmps { get; }

    /// <summary>Solves at a slip.</summary>
    /// <param name="slip">Slip in the direction in which it starts; 1 for standstill.</param>
    public FieldPoint At(double slip)
    {
        var rest = Solve(1, 1);
        return slip == 1 ? rest : Turning(slip, rest.Torque >= 0);
    }

    /// <summary>Solves at a slip in one direction.</summary>
    /// <param name="slip">Slip in that direction.</param>
    /// <param name="forward">From the main to the start axis, or a-b-c.</param>
    public FieldPoint Turning(double slip, bool forward) => Solve(forward ? slip : 2 - slip, slip);

    /// <summary>Amps of a coil of the right connection at standstill.</summary>
    public double UsualStartingAmps(int coil)
    {
        var locked = _circuit.Stator + _circuit.Field(1);
        var share = _nodes.Coils.Count(other => other.Coil!.Axis == _nodes.Coils[coil].Coil!.Axis);
        return VoltAmps / (_nodes.Coils[coil].Coil!.RatedVolts * share * locked.Magnitude);
    }

    private bool IsStart(Ended coil) => !_phases && (_places.Weak.Contains(coil.Id) || coil.Coil!.IsStart);

    private int Alike(Ended coil) => _nodes.Coils.Count(other => other.Coil!.Axis == coil.Coil!.Axis);

    /// <summary>The size of the machine from the first measured coil, run coils before start coils.</summary>
    private double Scale()
    {
        var measured = _nodes.Coils.Where(coil => coil.Coil!.Ohms is > 0).OrderBy(coil => IsStart(coil) ? 1 : 0).FirstOrDefault();
        if (measured is null)
        {
            return 1;
        }

        var factor = IsStart(measured) ? _usual["start-ohms"] : 1;
        return Alike(measured) * factor * _circuit.R1 * Math.Pow(measured.Coil!.RatedVolts, 2) / measured.Coil.Ohms!.Value;
    }

    /// <summary>Resistance and leakage of one coil.</summary>
    private Complex Own(Ended coil)
    {
        var share = Alike(coil) * Math.Pow(coil.Coil!.RatedVolts, 2) / VoltAmps;
        var start = IsStart(coil);
        var ohms = coil.Coil.Ohms is > 0 ? coil.Coil.Ohms.Value : _circuit.R1 * share * (start ? _usual["start-ohms"] : 1);
        return new Complex(ohms, _circuit.X1 * share * (start ? Math.Pow(_usual["start-turns"], 2) : 1));
    }

    private FieldPoint Solve(double forwardSlip, double slip)
    {
        // A single-phase winding drives two half fields; three phases together drive one, a third each.
        var share = (_phases ? 1 / 3.0 : 0.5) / VoltAmps;
        var (ahead, behind) = (_circuit.Field(forwardSlip) * share, _circuit.Field(2 - forwardSlip) * share);
        var held = _nodes.Held();
        var column = new int[_nodes.Count];
        var unknown = 0;
        for (var node = 0; node < column.Length; node++)
        {
            column[node] = held.ContainsKey(node) ? -1 : unknown++;
        }

        var size = unknown + _nodes.Coils.Count;
        var (matrix, right) = (Matrix<Complex>.Build.Dense(size, size), MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense(size));
        void Volts(int row, int node, Complex factor)
        {
            if (column[node] >= 0)
            {
                matrix[row, column[node]] += factor;
            }
            else
            {
                right[row] -= factor * held[node];
            }
        }

        var loss = Leak * VoltAmps / Math.Pow(_nodes.Found.SupplyVolts, 2);
        for (var node = 0; node < column.Length; node++)
        {
            if (column[node] >= 0)
            {
                matrix[column[node], column[node]] += loss;
            }
        }

        foreach (var (from, to, siemens) in Parts())
        {
            if (column[from] >= 0)
            {
                Volts(column[from], from, siemens);
                Volts(column[from], to, -siemens);
            }

            if (column[to] >= 0)
            {
                Volts(column[to], to, siemens);
                Volts(column[to], from, -siemens);
            }
        }

        for (var one = 0; one < _nodes.Coils.Count; one++)
        {
            var (coil, row) = (_nodes.Coils[one], unknown + one);
            if (column[coil.From] >= 0)
            {
                matrix[column[coil.From], row] += 1;
            }

            if (column[coil.To] >= 0)
            {
                matrix[column[coil.To], row] -= 1;
            }

            Volts(row, coil.From, 1);
            Volts(row, coil.To, -1);
            matrix[row, row] -= _own[one];
            for (var other = 0; other < _nodes.Coils.Count; other++)
            {
                var turn = Complex.FromPolarCoordinates(1, _nodes.Coils[other].Coil!.Angle - coil.Coil!.Angle);
                matrix[row, unknown + other] -= _turns[one] * _turns[other] * ((ahead * turn) + (behind * Complex.Conjugate(turn)));
            }
        }

        var solved = matrix.LU().Solve(right);
        Complex At(int node) => column[node] < 0 ? held[node] : solved[column[node]];
        return Point(slip, [.. Enumerable.Range(0, _nodes.Coils.Count).Select(coil => solved[unknown + coil])], ahead, behind, At);
    }

    private FieldPoint Point(double slip, Complex[] amps, Complex ahead, Complex behind, Func<int, Complex> at)
    {
        Complex Field(int sign) => Enumerable.Range(0, amps.Length).Aggregate(
            Complex.Zero, (sum, coil) => sum + (_turns[coil] * amps[coil] * Complex.FromPolarCoordinates(1, sign * _nodes.Coils[coil].Coil!.Angle)));
        var (forward, backward) = (OperatingPoint.Squared(Field(1)) * ahead.Real, OperatingPoint.Squared(Field(-1)) * behind.Real);
        var line = _nodes.Held().Keys.Select(node => Drawn(node, amps, at).Magnitude).DefaultIfEmpty(0).Max();
        return new FieldPoint(
            slip, [.. _nodes.Coils.Select(coil => at(coil.From) - at(coil.To))], amps, line, forward - backward, forward + backward);
    }

    private Complex Drawn(int node, Complex[] amps, Func<int, Complex> at)
    {
        var drawn = Complex.Zero;
        for (var coil = 0; coil < amps.Length; coil++)
        {
            drawn += (_nodes.Coils[coil].From == node ? amps[coil] : 0) - (_nodes.Coils[coil].To == node ? amps[coil] : 0);
        }

        foreach (var (from, to, siemens) in Parts())
        {
            drawn += from == node ? siemens * (at(from) - at(to)) : to == node ? siemens * (at(to) - at(from)) : 0;
        }

        return drawn;
    }

    /// <summary>Without the marked figure: the reactance that sets the start current at a right angle, per unit.</summary>
    private double UsualCapacitorOhms()
    {
        var field = _circuit.Field(1);
        var (main, turns) = (_circuit.Stator + field, _phases ? 1 : Math.Pow(_usual["start-turns"], 2));
        var start = new Complex(_circuit.R1 * (_phases ? 1 : _usual["start-ohms"]), _circuit.X1 * turns) + (turns * field);
        return start.Imaginary + (start.Real * main.Real / main.Imaginary);
    }

    /// <summary>Capacitors and switches as admittances; a closed switch as one that is large against all coils.</summary>
    private IEnumerable<(int From, int To, Complex Siemens)> Parts()
    {
        var usual = VoltAmps / Math.Pow(_nodes.Found.Coils.Max(coil => coil.RatedVolts), 2);
        foreach (var capacitor in _nodes.Found.Capacitors)
        {
            var siemens = capacitor.Microfarads is { } c && IsToScale ? 2 * Math.PI * _hertz * c * 1e-6 : capacitor.Left * usual / UsualCapacitorOhms();
            yield return (_nodes.Of(capacitor.From), _nodes.Of(capacitor.To), new Complex(0, siemens));
        }

        foreach (var contact in _nodes.Found.Switches.Where(contact => contact.Closed))
        {
            yield return (_nodes.Of(contact.From), _nodes.Of(contact.To), 1e6 * usual);
        }
    }
}

/// <summary>The coupled machine at one slip.</summary>
/// <param name="Slip">The slip.</param>
/// <param name="Volts">Volts of each coil from start to finish.</param>
/// <param name="Amps">Amps of each coil.</param>
/// <param name="LineAmps">Amps of the line that carries most.</param>
/// <param name="Torque">Forward less backward watts across the gap: above zero from the main to the start axis, or a-b-c.</param>
/// <param name="GapWatts">Forward and backward watts together.</param>
internal sealed record FieldPoint(double Slip, IReadOnlyList<Complex> Volts, IReadOnlyList<Complex> Amps, double LineAmps, double Torque, double GapWatts);
