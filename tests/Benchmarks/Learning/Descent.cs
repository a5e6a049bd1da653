using System.Runtime.Intrinsics;

namespace WireCoach.Benchmarks.Learning;

/// <summary>Steps down a slope, each weight's as long as its slope has been even so far.</summary>
/// <remarks>There are as many weights as a multiple of eight.</remarks>
internal sealed class Descent(int weights)
{
    private const float Inertia = 0.9f;
    private const float Memory = 0.999f;
    private const float Least = 1e-8f;
    private readonly float[] _mean = new float[weights];
    private readonly float[] _square = new float[weights];
    private double _inertia = 1;
    private double _memory = 1;

    /// <summary>One step; a slope that is steeper than the steepest is made as steep as that.</summary>
    public void Down(float[] at, float[] slope, float share, float steepest, float rate)
    {
        (_inertia, _memory) = (_inertia * Inertia, _memory * Memory);
        var length = share * MathF.Sqrt(Squares(slope));
        var scale = Vector256.Create(share * Math.Min(1, steepest / Math.Max(length, Least)));
        var step = Vector256.Create((float)(rate * Math.Sqrt(1 - _memory) / (1 - _inertia)));
        var least = Vector256.Create((float)(Least * Math.Sqrt(1 - _memory)));
        for (var place = 0; place < slope.Length; place += Vector256<float>.Count)
        {
            var here = Vector256.Create(slope.AsSpan(place)) * scale;
            var mean = (Vector256.Create(_mean.AsSpan(place)) * Inertia) + (here * (1 - Inertia));
            var square = (Vector256.Create(_square.AsSpan(place)) * Memory) + (here * here * (1 - Memory));
            mean.CopyTo(_mean.AsSpan(place));
            square.CopyTo(_square.AsSpan(place));
            (Vector256.Create(at.AsSpan(place)) - (step * mean / (Vector256.Sqrt(square) + least))).CopyTo(at.AsSpan(place));
        }
    }

    private static float Squares(float[] slope)
    {
        var sum = 0d;
        foreach (var one in slope)
        {
            sum += one * one;
        }

        return (float)sum;
    }
}
