using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>How faults show by another hand than that of knowledge: grades in <c>world.yaml</c>, turned into chances here and nowhere in the engine.</summary>
internal static class WrittenWorld
{
    private const double BySheerChance = 0.01;
    private const double OddOutcome = 0.04;

    private static readonly Dictionary<string, double> Grades = new(StringComparer.Ordinal) { ["A"] = 0.93, ["M"] = 0.72, ["H"] = 0.5, ["S"] = 0.25, ["R"] = 0.08 };

    private static readonly Dictionary<string, string> Families = new(StringComparer.Ordinal)
    {
        ["sp"] = "split-phase", ["cs"] = "capacitor-start", ["pc"] = "psc", ["tv"] = "two-value", ["sh"] = "shaded-pole",
        ["co"] = "commutator", ["dc"] = "dc", ["tp"] = "three-phase", ["se"] = "sealed",
    };

    /// <summary>What nobody who describes the motor leaves out.</summary>
    private static readonly HashSet<string> Plain = new(StringComparer.Ordinal)
    {
        "silent-no-start", "hums-no-start", "trips-at-once", "trips-after-running", "trips-earth-fault-device", "smoke-or-burnt-smell", "wrong-direction", "shock-from-frame",
        "stops-while-running", "mechanical-noise", "wont-stop", "intermittent",
    };

    /// <summary>What needs a meter or a trial that few have made.</summary>
    private static readonly HashSet<string> Measured = new(StringComparer.Ordinal)
    {
        "high-current", "unequal-phase-currents", "low-voltage-at-motor", "starts-if-spun", "no-start-click", "works-unloaded", "either-direction", "capacitor-swollen",
    };

    /// <summary>How often a person who describes a motor says of a symptom that is there.</summary>
    public static double Told(string symptom) => Plain.Contains(symptom) ? 0.93 : Measured.Contains(symptom) ? 0.5 : 0.75;

    public static IReadOnlyList<Hypothesis> Of(TradeKnowledge knowledge, CauseModel model) =>
        [.. Read().Select(fault => Hypothesis(fault, knowledge.Causes[fault.Cause], model))];

    public static List<WorldFault> Read() =>
        new DeserializerBuilder().WithNamingConvention(HyphenatedNamingConvention.Instance).Build()
            .Deserialize<List<WorldFault>>(File.ReadAllText(Path.Combine(Repository.Root, "tests", "rules", "Diagnosis", "world.yaml")));

    private static Hypothesis Hypothesis(WorldFault fault, Cause cause, CauseModel model)
    {
        double[][] shows = [.. model.Tests.Select(test => Outcomes(test, fault.Tests.GetValueOrDefault(test.Id)))];
        return new(
            [cause],
            cause.Decision,
            [.. model.Families.Select(family => (double)fault.In.Where(one => Families[one.Key] == family.Id).Sum(one => one.Value))],
            [.. model.Symptoms.Select(symptom => fault.Shows.TryGetValue(symptom.Id, out var grade) ? Grades[grade] : BySheerChance)],
            shows,
            StatedParts.Kinds.ToDictionary(kind => kind, _ => shows),
            []);
    }

    /// <summary>Outcomes that are not graded share what is odd; the rest is the good one.</summary>
    private static double[] Outcomes(TestGuide test, Dictionary<string, string>? graded)
    {
        double[] shares = [.. test.Outcomes.Select(outcome => graded is not null && graded.TryGetValue(outcome.Id, out var grade) ? Grades[grade] : OddOutcome / test.Outcomes.Count)];
        var named = shares.Skip(1).Sum();
        shares[0] = Math.Max(OddOutcome, 1 - named);
        return [.. shares.Select(share => share / shares.Sum())];
    }
}

/// <summary>One fault of the written world.</summary>
public sealed class WorldFault
{
    public string Cause { get; set; } = string.Empty;

    /// <summary>How often it is met, by kind of motor.</summary>
    public Dictionary<string, int> In { get; init; } = [];

    /// <summary>Grades by symptom.</summary>
    public Dictionary<string, string> Shows { get; init; } = [];

    /// <summary>Grades by test and outcome.</summary>
    public Dictionary<string, Dictionary<string, string>> Tests { get; init; } = [];
}
