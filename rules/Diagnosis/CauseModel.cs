using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>The knowledge about causes as numbers: what may be wrong, how often, and what each shows.</summary>
internal sealed class CauseModel
{
    private readonly TradeKnowledge _knowledge;
    private readonly double _least;
    private readonly double _most;
    private readonly double _stray;
    private readonly double _doubted;

    public CauseModel(TradeKnowledge knowledge)
    {
        _knowledge = knowledge;
        var limits = knowledge.Rules["diagnosis-likelihood"];
        (_least, _most, _stray, _doubted) = (limits["least"], limits["most"], limits["stray-outcome"], limits["doubted-words"]);
        Symptoms = [.. knowledge.Symptoms.Values];
        Tests = [.. knowledge.Tests.Values];
        Families = [.. knowledge.Families.Values];
        Forms = [.. knowledge.Forms];
        ByUse = knowledge.Rules["family-by-use"];
        ThreePhaseVolts = knowledge.Rules["plate-phases"]["three-phase-from-volts"];
        SupplyLevel = new SupplyLevel(knowledge);
        Uncured = knowledge.Rules["repair-without-cure"]["left"];
        SumShare = knowledge.Rules["winding-sum"]["share"];
        CapacitorSizes = knowledge.Rules["capacitor-kind-by-size"];
        var singles = knowledge.Causes.Values.ToDictionary(cause => cause.Id, Single, StringComparer.Ordinal);
        Hypotheses = [.. singles.Values, .. knowledge.CausePairs.Values.Select(pair => Both(singles[pair.First], singles[pair.Second], pair.Share)).OfType<Hypothesis>()];
    }

    public TradeKnowledge Knowledge => _knowledge;

    public IReadOnlyList<SymptomNote> Symptoms { get; }

    public IReadOnlyList<TestGuide> Tests { get; }

    public IReadOnlyList<MotorFamily> Families { get; }

    /// <summary>All layouts, each in all its forms.</summary>
    public IReadOnlyList<Layout> Forms { get; }

    /// <summary>How much more often, or more seldom, a family is met where it is usual, or hardly ever met.</summary>
    public TradeRule ByUse { get; }

    /// <summary>Volts from which on a motor has three phases.</summary>
    public double ThreePhaseVolts { get; }

    /// <summary>What is left of a cause that was made good without a cure.</summary>
    public double Uncured { get; }

    /// <summary>What volts a supply should have.</summary>
    public SupplyLevel SupplyLevel { get; }

    /// <summary>How far two windings in a row may lie from the sum of both.</summary>
    public double SumShare { get; }

    /// <summary>Up to what size capacitors are made to run, and from what size on for the start.</summary>
    public TradeRule CapacitorSizes { get; }

    public IReadOnlyList<Hypothesis> Hypotheses { get; }

    /// <summary>ln P(sign | hypothesis).</summary>
    public double LogLikelihood(Hypothesis hypothesis, Sign sign)
    {
        if (sign is Sign.Untold untold)
        {
            return Silence(hypothesis, untold);
        }

        if (sign is Sign.Noticed noticed)
        {
            return Math.Log(noticed.Present ? hypothesis.Present[noticed.Symptom] : 1 - (hypothesis.Present[noticed.Symptom] * Symptoms[noticed.Symptom].Noticed));
        }

        if (sign is Sign.Doubted doubted)
        {
            return Math.Log(1 + ((_doubted - 1) * Told(hypothesis.Present, doubted.Symptom)));
        }

        var shown = (Sign.Shown)sign;
        return Math.Log((shown.Kind is { } kind ? hypothesis.ShowsOn[kind] : hypothesis.Shows)[shown.Test][shown.Outcome]);
    }

    /// <summary>Of each symptom that nobody mentioned: not there, not noticed, or not told.</summary>
    private static double Silence(Hypothesis hypothesis, Sign.Untold untold)
    {
        var sum = 0.0;
        foreach (var at in untold.Symptoms)
        {
            sum += hypothesis.Silence[at];
        }

        return sum;
    }

    private Hypothesis Single(Cause cause) => With(
        [cause],
        cause.Decision,
        [.. Families.Select(family => cause.Families.GetValueOrDefault(family.Id) / Total(family))],
        [.. Symptoms.Select(symptom => Math.Clamp(cause.Symptoms.TryGetValue(symptom.Id, out var share) ? share : symptom.Usual, _least, _most))],
        Shows(cause),
        StatedParts.Kinds.ToDictionary(kind => kind, kind => Shows(cause, kind), StringComparer.Ordinal));

    private Hypothesis With(IReadOnlyList<Cause> causes, string decision, double[] prior, double[] present, double[][] shows, IReadOnlyDictionary<string, double[][]> showsOn) => new(
        causes, decision, prior, present, shows, showsOn, [.. Symptoms.Select((_, at) => Math.Log(1 - Told(present, at)))]);

    /// <summary>How often a symptom is there, noticed, and told.</summary>
    private double Told(double[] present, int symptom) => present[symptom] * Symptoms[symptom].Noticed * Symptoms[symptom].Told;

    private double Total(MotorFamily family) => _knowledge.Causes.Values.Sum(cause => cause.Families.GetValueOrDefault(family.Id));

    /// <summary>Two causes at once: either may bring a symptom, and of a test the one that shows more of itself decides.</summary>
    private Hypothesis? Both(Hypothesis first, Hypothesis second, double share)
    {
        double[] prior = [.. first.Prior.Zip(second.Prior, (one, other) => other > 0 ? one * share : 0)];
        var (one, other) = (first.Causes[0], second.Causes[0]);
        return Array.TrueForAll(prior, share => share == 0) ? null : With(
            [one, other],
            one.Decision == other.Decision ? one.Decision : string.Join('+', new[] { one.Decision, other.Decision }.Order(StringComparer.Ordinal)),
            prior,
            [.. Symptoms.Select((symptom, at) => one.Symptoms.ContainsKey(symptom.Id) && other.Symptoms.ContainsKey(symptom.Id)
                ? Math.Min(_most, 1 - ((1 - first.Present[at]) * (1 - second.Present[at])))
                : Math.Max(first.Present[at], second.Present[at]))],
            Stronger(first.Shows, second.Shows),
            StatedParts.Kinds.ToDictionary(kind => kind, kind => Stronger(first.ShowsOn[kind], second.ShowsOn[kind]), StringComparer.Ordinal));
    }

    private static double[][] Stronger(double[][] first, double[][] second) => [.. first.Zip(second, (one, other) => one[0] <= other[0] ? one : other)];

    /// <summary>What tests show with a cause; on a capacitor of the other kind than that which is bad they show nothing of it.</summary>
    private double[][] Shows(Cause cause, string? kind = null) =>
        [.. Tests.Select(test => Shows(test, kind is not null && StatedParts.Kinds.Any(other => other != kind && cause.Needs == $"{other}-capacitor") ? null : cause.Tests.GetValueOrDefault(test.Id)))];

    /// <summary>The outcomes of a test; what knowledge does not give to a named outcome shows as the good one.</summary>
    private double[] Shows(TestGuide test, IReadOnlyDictionary<string, double>? named)
    {
        double[] shares = named is null
            ? [.. test.Outcomes.Select(outcome => outcome.Usual)]
            : [.. test.Outcomes.Select(outcome => named.GetValueOrDefault(outcome.Id))];
        shares[0] += Math.Max(0, 1 - shares.Sum());
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = Math.Max(shares[i], _stray);
        }

        var sum = shares.Sum();
        return Array.ConvertAll(shares, share => share / sum);
    }
}

/// <summary>One cause, or two at once.</summary>
/// <param name="Causes">The causes.</param>
/// <param name="Decision">The instruction that it leads to.</param>
/// <param name="Prior">How often it is the cause, by place of the family.</param>
/// <param name="Present">P(symptom), by place of the symptom.</param>
/// <param name="Shows">P(outcome), by place of the test and of the outcome.</param>
/// <param name="ShowsOn">The same where the capacitor that was measured is of a kind that is known, by <see cref="StatedParts.Kinds"/>.</param>
/// <param name="Silence">ln P(symptom not mentioned), by place of the symptom.</param>
internal sealed record Hypothesis(
    IReadOnlyList<Cause> Causes, string Decision, double[] Prior, double[] Present, double[][] Shows, IReadOnlyDictionary<string, double[][]> ShowsOn, double[] Silence)
{
    /// <summary>Whether an instruction is all or part of what it leads to.</summary>
    public bool Leads(string decision) => Causes.Any(cause => cause.Decision == decision);
}
