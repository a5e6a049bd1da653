using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace WireCoach.Benchmarks.Learning;

/// <summary>Looks for the weights that get least wrong.</summary>
internal static class Slope
{
    /// <summary>What odds miss that should be high.</summary>
    public static double Miss(double odds) => odds > 0 ? Math.Log(1 + Math.Exp(-odds)) : Math.Log(1 + Math.Exp(odds)) - odds;

    /// <summary>The weights at which a loss is lowest, looked for down its slope.</summary>
    public static double[] Lowest(double[] from, Func<double[], (double Value, double[] Gradient)> loss)
    {
        var objective = ObjectiveFunction.Gradient(at =>
        {
            var (value, gradient) = loss(at.AsArray() ?? at.ToArray());
            return (value, Vector<double>.Build.Dense(gradient));
        });
        return new LimitedMemoryBfgsMinimizer(1e-4, 1e-8, 1e-9, 8, 300).FindMinimum(objective, Vector<double>.Build.DenseOfArray(from)).MinimizingPoint.ToArray();
    }
}
