namespace WireCoach.Rules.Choosing;

/// <summary>Chooses the test that is expected to tell most about what to do next, for its cost.</summary>
/// <remarks>
/// The value of a test is the expected fall of the entropy of the decision classes (de Kleer and Williams 1987) divided by its cost
/// (Heckerman, Breese and Rommelse 1995). One step ahead is near the optimum; where few hypotheses remain it looks further.
/// </remarks>
public static class Chooser
{
    /// <summary>Up to so many hypotheses it looks more than one step ahead.</summary>
    public const int FewHypotheses = 64;

    private const double Negligible = 1e-9;

    /// <summary>Whether nothing is left to decide: one class holds at least the given share.</summary>
    /// <typeparam name="T">A hypothesis.</typeparam>
    /// <param name="belief">What is believed.</param>
    /// <param name="decision">The instruction that a hypothesis leads to.</param>
    /// <param name="enough">The share that settles it, 0.5 to 1.</param>
    public static bool Settled<T>(Belief<T> belief, Func<T, string> decision, double enough = 0.995)
    {
        ArgumentNullException.ThrowIfNull(belief);
        return belief.Classes(decision)[0].Probability >= enough;
    }

    /// <summary>The best test; <see langword="null"/> when none is expected to change the decision.</summary>
    /// <typeparam name="T">A hypothesis.</typeparam>
    /// <param name="belief">What is believed.</param>
    /// <param name="decision">The instruction that a hypothesis leads to.</param>
    /// <param name="trials">The tests that are allowed.</param>
    /// <param name="depth">Steps to look ahead, 1 to 3; more than one only with few hypotheses.</param>
    public static Choice<T>? Best<T>(Belief<T> belief, Func<T, string> decision, IReadOnlyList<Trial<T>> trials, int depth = 2) =>
        Ranked(belief, decision, trials, depth) is [var best, ..] ? best : null;

    /// <summary>All tests that are expected to tell something, the best first.</summary>
    /// <typeparam name="T">A hypothesis.</typeparam>
    /// <param name="belief">What is believed.</param>
    /// <param name="decision">The instruction that a hypothesis leads to.</param>
    /// <param name="trials">The tests that are allowed.</param>
    /// <param name="depth">Steps to look ahead, 1 to 3; more than one only with few hypotheses.</param>
    public static IReadOnlyList<Choice<T>> Ranked<T>(Belief<T> belief, Func<T, string> decision, IReadOnlyList<Trial<T>> trials, int depth = 2)
    {
        ArgumentNullException.ThrowIfNull(belief);
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(trials);
        var state = State<T>.Of(belief, decision);
        var steps = belief.Hypotheses.Count <= FewHypotheses ? Math.Clamp(depth, 1, 3) : 1;
        return [.. trials
            .Select(trial => new Choice<T>(trial, state.Gain(trial), state.Rate(trial, trials, steps)))
            .Where(choice => choice.Bits > Negligible || choice.BitsPerCost > Negligible)
            .OrderByDescending(choice => Math.Round(choice.BitsPerCost, 9))
            .ThenBy(choice => choice.Trial.Order)
            .ThenBy(choice => choice.Trial.Id, StringComparer.Ordinal)];
    }

    /// <summary>The hypotheses as numbers: probability and class, so that looking ahead copies no objects.</summary>
    private sealed class State<T>(IReadOnlyList<T> hypotheses, int[] classes, int classCount, double[] probabilities)
    {
        private double Entropy { get; } = EntropyOf(classes, classCount, probabilities, 1);

        public static State<T> Of(Belief<T> belief, Func<T, string> decision)
        {
            var names = new Dictionary<string, int>(StringComparer.Ordinal);
            var classes = new int[belief.Hypotheses.Count];
            for (var i = 0; i < classes.Length; i++)
            {
                var name = decision(belief.Hypotheses[i]);
                names.TryAdd(name, names.Count);
                classes[i] = names[name];
            }

            return new(belief.Hypotheses, classes, names.Count, [.. belief.Probabilities]);
        }

        public double Gain(Trial<T> trial)
        {
            var left = 0.0;
            foreach (var (share, joint) in After(trial))
            {
                left += share * EntropyOf(classes, classCount, joint, share);
            }

            return Math.Max(0, Entropy - left);
        }

        /// <summary>Expected bits per expected cost, this test first and the best ones after it.</summary>
        public double Rate(Trial<T> trial, IReadOnlyList<Trial<T>> trials, int steps)
        {
            var (bits, cost) = Ahead(trial, trials, steps);
            return bits / cost;
        }

        private (double Bits, double Cost) Ahead(Trial<T> trial, IReadOnlyList<Trial<T>> trials, int steps)
        {
            var bits = Gain(trial);
            var cost = trial.Cost;
            if (steps <= 1)
            {
                return (bits, cost);
            }

            foreach (var (share, joint) in After(trial))
            {
                var next = new State<T>(hypotheses, classes, classCount, Array.ConvertAll(joint, one => one / share));
                var best = trials.Where(other => !ReferenceEquals(other, trial))
                    .Select(other => next.Ahead(other, trials, steps - 1))
                    .Where(one => one.Bits > Negligible)
                    .OrderByDescending(one => one.Bits / one.Cost)
                    .FirstOrDefault();
                bits += share * best.Bits;
                cost += share * best.Cost;
            }

            return (bits, cost);
        }

        private IEnumerable<(double Share, double[] Joint)> After(Trial<T> trial)
        {
            for (var outcome = 0; outcome < trial.Outcomes.Count; outcome++)
            {
                var joint = new double[probabilities.Length];
                var share = 0.0;
                for (var i = 0; i < joint.Length; i++)
                {
                    joint[i] = probabilities[i] > 0 ? probabilities[i] * trial.Probability(hypotheses[i], outcome) : 0;
                    share += joint[i];
                }

                if (share > Negligible)
                {
                    yield return (share, joint);
                }
            }
        }

        private static double EntropyOf(int[] classes, int classCount, double[] joint, double share)
        {
            var sums = new double[classCount];
            for (var i = 0; i < joint.Length; i++)
            {
                sums[classes[i]] += joint[i];
            }

            return sums.Sum(sum => Weights.Surprise(sum / share));
        }
    }
}
