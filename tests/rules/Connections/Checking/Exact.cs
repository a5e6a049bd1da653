using System.Numerics;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>A fraction.</summary>
internal readonly record struct Ratio(BigInteger Top, BigInteger Bottom)
{
    public static Ratio Of(BigInteger top, BigInteger bottom)
    {
        var common = BigInteger.GreatestCommonDivisor(top, bottom) * (bottom.Sign < 0 ? -1 : 1);
        return new(top / common, bottom / common);
    }

    public static Ratio operator +(Ratio one, Ratio other) => Of((one.Top * other.Bottom) + (other.Top * one.Bottom), one.Bottom * other.Bottom);

    public static Ratio operator -(Ratio one, Ratio other) => Of((one.Top * other.Bottom) - (other.Top * one.Bottom), one.Bottom * other.Bottom);

    public static Ratio operator *(Ratio one, Ratio other) => Of(one.Top * other.Top, one.Bottom * other.Bottom);

    public static Ratio operator /(Ratio one, Ratio other) => Of(one.Top * other.Bottom, one.Bottom * other.Top);

    public static implicit operator Ratio(int whole) => new(whole, 1);
}

/// <summary>A phasor x + y·w without rounding, where w turns by 120 degrees and 1 + w + w² = 0.</summary>
internal readonly record struct Turned(Ratio X, Ratio Y)
{
    public static readonly Turned Zero = new(0, 0);

    public static readonly Turned One = new(1, 0);

    public static readonly Turned W = new(0, 1);

    public static readonly Turned W2 = new(-1, -1);

    /// <summary>The square of its size.</summary>
    public Ratio Square => (X * X) - (X * Y) + (Y * Y);

    public static Turned operator +(Turned one, Turned other) => new(one.X + other.X, one.Y + other.Y);

    public static Turned operator -(Turned one, Turned other) => new(one.X - other.X, one.Y - other.Y);

    public static Turned operator *(Turned one, Turned other) =>
        new((one.X * other.X) - (one.Y * other.Y), (one.X * other.Y) + (one.Y * other.X) - (one.Y * other.Y));
}
