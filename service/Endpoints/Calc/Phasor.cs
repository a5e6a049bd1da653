using System.Numerics;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>An RMS phasor on the wire.</summary>
internal sealed record Phasor(double Re, double Im)
{
    public static Phasor Of(Complex value) => new(value.Real, value.Imaginary);
}
