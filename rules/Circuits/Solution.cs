using System.Numerics;
using System.Runtime.InteropServices;

namespace WireCoach.Rules.Circuits;

/// <summary>The volts and amps of a solved network, RMS phasors.</summary>
/// <param name="Nodes">Volts of each node against the ground node.</param>
/// <param name="Elements">Volts and amps of each element by id.</param>
public sealed record Solution(IReadOnlyDictionary<string, Complex> Nodes, IReadOnlyDictionary<string, Branch> Elements);

/// <summary>What one element sees.</summary>
/// <param name="Volts">Volts of its first terminal against its second.</param>
/// <param name="Amps">Amps from its first terminal through it to its second.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Branch(Complex Volts, Complex Amps);
