using System.Numerics;
using MathNet.Numerics.Providers.LinearAlgebra;

namespace WireCoach.Rules.Circuits;

/// <summary>The linear equations of a network: one row for each node that is not zero by choice, one for each element.</summary>
/// <remarks>Currents are scaled by a typical impedance and rows by their largest entry, so that all unknowns are of the size of volts.</remarks>
internal sealed class Equations
{
    /// <summary>A first correction above this share of the answer means that the digits of the answer are not its own.</summary>
    private const double LargestCorrection = 1e-6;

    /// <summary>A pivot below this, where entries are of the size of one, is what rounding leaves of a zero.</summary>
    private const double SmallestPivot = 1e-14;

    private readonly Network _network;
    private readonly int[] _ends;
    private readonly int[] _column;
    private readonly int _nodeRows;
    private readonly int _size;
    private readonly Complex[] _matrix;
    private readonly Complex[] _right;
    private readonly double _scale;

    public Equations(Network network, Topology topology)
    {
        _network = network;
        _column = new int[topology.IsZero.Length];
        for (var node = 0; node < _column.Length; node++)
        {
            _column[node] = topology.IsZero[node] ? -1 : _nodeRows++;
        }

        _size = _nodeRows + network.Elements.Count;
        _matrix = new Complex[_size * _size];
        _right = new Complex[_size];
        _ends = new int[2 * network.Elements.Count];
        _scale = TypicalOhms(network);
        for (var index = 0; index < network.Elements.Count; index++)
        {
            _ends[2 * index] = topology.Nodes[network.Elements[index].From];
            _ends[(2 * index) + 1] = topology.Nodes[network.Elements[index].To];
            Stamp(index, network.Elements[index]);
        }

        foreach (var coupling in network.Couplings)
        {
            Couple(coupling);
        }

        for (var row = _nodeRows; row < _size; row++)
        {
            Level(row);
        }
    }

    private double Omega => 2 * Math.PI * _network.Hertz;

    /// <summary>The unknowns, or <see langword="null"/> where the equations have no single solution.</summary>
    public Complex[]? Solve()
    {
        var factors = (Complex[])_matrix.Clone();
        var pivots = new int[_size];
        LinearAlgebraControl.Provider.LUFactor(factors, _size, pivots);
        for (var row = 0; row < _size; row++)
        {
            if (!(Size(factors[(row * _size) + row]) > SmallestPivot))
            {
                return null;
            }
        }

        var answer = (Complex[])_right.Clone();
        LinearAlgebraControl.Provider.LUSolveFactored(1, factors, _size, pivots, answer);
        var correction = Residual(answer);
        LinearAlgebraControl.Provider.LUSolveFactored(1, factors, _size, pivots, correction);
        var (largest, moved) = (0.0, 0.0);
        for (var row = 0; row < _size; row++)
        {
            answer[row] += correction[row];
            largest = Math.Max(largest, Size(answer[row]));
            moved = Math.Max(moved, Size(correction[row]));
        }

        return double.IsFinite(largest) && moved <= LargestCorrection * largest ? answer : null;
    }

    /// <summary>Volts of a node against the zero of its part of the network.</summary>
    public Complex NodeVolts(Complex[] unknowns, int node) => _column[node] < 0 ? Complex.Zero : unknowns[_column[node]];

    /// <summary>Volts and amps of an element; volts from its own law where that is more exact than the difference of two nodes.</summary>
    public Branch Branch(Complex[] unknowns, int index)
    {
        var amps = unknowns[_nodeRows + index] / _scale;
        Complex volts = _network.Elements[index] switch
        {
            Element.Source source => Phasor(source),
            Element.Resistor { Ohms: { } ohms } => ohms * amps,
            Element.Switch { Closed: true } => Complex.Zero,
            Element.Capacitor capacitor when _network.Hertz > 0 => amps / CapacitorSiemens(capacitor),
            _ => NodeVolts(unknowns, _ends[2 * index]) - NodeVolts(unknowns, _ends[(2 * index) + 1]),
        };
        return new Branch(volts, amps);
    }

    private static double Size(Complex value) => Math.Max(Math.Abs(value.Real), Math.Abs(value.Imaginary));

    private static Complex Phasor(Element.Source source) => source.AngleDegrees == 0
        ? source.Volts
        : Complex.FromPolarCoordinates(source.Volts, source.AngleDegrees * Math.PI / 180);

    private Complex CapacitorSiemens(Element.Capacitor capacitor) => new(0, Omega * capacitor.Microfarads * 1e-6);

    private double TypicalOhms(Network network)
    {
        var (sum, count) = (0.0, 0);
        foreach (var element in network.Elements)
        {
            var ohms = element switch
            {
                Element.Resistor resistor => resistor.Ohms ?? 0,
                Element.Inductor coil => Math.Max(coil.Ohms, Omega * coil.Henries),
                Element.Capacitor capacitor when Omega > 0 => 1 / (Omega * capacitor.Microfarads * 1e-6),
                _ => 0,
            };
            if (ohms > 0)
            {
                sum += Math.Log(ohms);
                count++;
            }
        }

        return count == 0 ? 1 : Math.Exp(sum / count);
    }

    /// <summary>Kirchhoff's law at both ends, and the element's own law in its row.</summary>
    private void Stamp(int index, Element element)
    {
        var current = _nodeRows + index;
        var (from, to) = (_column[_ends[2 * index]], _column[_ends[(2 * index) + 1]]);
        Add(from, current, 1);
        Add(to, current, -1);
        var (volts, ohms) = element switch
        {
            Element.Source => (Complex.One, Complex.Zero),
            Element.Resistor { Ohms: { } resistance } => (Complex.One, resistance),
            Element.Switch { Closed: true } => (Complex.One, Complex.Zero),
            Element.Inductor coil => (Complex.One, new Complex(coil.Ohms, Omega * coil.Henries)),
            Element.Capacitor capacitor when Omega > 0 => (Complex.One, Complex.One / CapacitorSiemens(capacitor)),
            _ => (Complex.Zero, -Complex.One * _scale), // open: no current
        };
        Add(current, from, volts);
        Add(current, to, -volts);
        Add(current, current, -ohms / _scale);
        if (element is Element.Source source)
        {
            _right[current] = Phasor(source);
        }
    }

    private void Couple(Coupling coupling)
    {
        var (first, second) = (IndexOf(coupling.First), IndexOf(coupling.Second));
        var (one, other) = ((Element.Inductor)_network.Elements[first], (Element.Inductor)_network.Elements[second]);
        var mutual = new Complex(0, -Omega * coupling.Coefficient * Math.Sqrt(one.Henries * other.Henries) / _scale);
        Add(_nodeRows + first, _nodeRows + second, mutual);
        Add(_nodeRows + second, _nodeRows + first, mutual);
    }

    private int IndexOf(string id)
    {
        for (var index = 0; index < _network.Elements.Count; index++)
        {
            if (string.Equals(_network.Elements[index].Id, id, StringComparison.Ordinal))
            {
                return index;
            }
        }

        throw new ArgumentException($"There is no element '{id}' to couple.", nameof(id));
    }

    private void Add(int row, int column, Complex value)
    {
        if (row >= 0 && column >= 0)
        {
            _matrix[(column * _size) + row] += value;
        }
    }

    private void Level(int row)
    {
        var largest = 0.0;
        for (var column = 0; column < _size; column++)
        {
            largest = Math.Max(largest, Size(_matrix[(column * _size) + row]));
        }

        for (var column = 0; largest > 1 && column < _size; column++)
        {
            _matrix[(column * _size) + row] /= largest;
        }

        _right[row] /= Math.Max(largest, 1);
    }

    private Complex[] Residual(Complex[] answer)
    {
        var left = (Complex[])_right.Clone();
        for (var column = 0; column < _size; column++)
        {
            for (var row = 0; row < _size; row++)
            {
                left[row] -= _matrix[(column * _size) + row] * answer[column];
            }
        }

        return left;
    }
}
