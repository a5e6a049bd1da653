using WireCoach.Rules.Choosing;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Says from the numbers why a cause is likely, why a test is next, and how it ends.</summary>
/// <param name="model">The causes as numbers.</param>
internal sealed class Explainer(CauseModel model)
{
    private const double LeastShown = 0.004;
    private const int MostShown = 8;
    private const int MostReasons = 4;
    private const double LeastRatio = 0.1;
    private const double Outright = 0.9;

    /// <summary>The causes by falling probability, each with what speaks for it and against it.</summary>
    public IReadOnlyList<RankedCause> Ranked(Belief<Hypothesis> prior, Belief<Hypothesis> belief, IReadOnlyList<Sign> signs)
    {
        var shares = new Dictionary<string, (Cause Cause, double Share)>(StringComparer.Ordinal);
        for (var i = 0; i < belief.Hypotheses.Count; i++)
        {
            foreach (var cause in belief.Hypotheses[i].Causes)
            {
                shares[cause.Id] = (cause, shares.GetValueOrDefault(cause.Id).Share + belief.Probabilities[i]);
            }
        }

        // what nobody mentioned weighs, but is no reason to give
        signs = [.. signs.Where(sign => sign is not Sign.Untold)];
        var usual = signs.Select(sign => Usual(prior, sign)).ToList();
        return [.. shares.Values
            .OrderByDescending(one => Math.Round(one.Share, 12)).ThenBy(one => one.Cause.Id, StringComparer.Ordinal)
            .Where((one, at) => at < 3 || (at < MostShown && one.Share >= LeastShown) || signs.Any(sign => IsOutright(one.Cause, sign)))
            .Select(one => Ranked(one.Cause, Math.Min(1, one.Share), signs, usual))];
    }

    /// <summary>Whether a measured capacitor shows this very cause: it is named however much else speaks against it.</summary>
    private static bool IsOutright(Cause cause, Sign sign) => sign is Sign.Shown { Id: CapacitorReadings.Test } shown
        && (shown.Kind is null || cause.Needs == $"{shown.Kind}-capacitor") && cause.Tests.TryGetValue(shown.Id, out var shows) && shows.GetValueOrDefault(shown.OutcomeId) >= Outright;

    /// <summary>The next test in words.</summary>
    public static NextTest Next(
        Belief<Hypothesis> belief, Choice<Hypothesis> best, TestGuide guide, IReadOnlyDictionary<string, TaskAccess> access, TradeKnowledge knowledge)
    {
        var needs = access[guide.Task].Needs;
        return new NextTest
        {
            Test = guide.Id,
            Name = Statement.Of($"test.{guide.Id}.name"),
            Why = Statement.Of($"test.{guide.Id}.why"),
            Task = guide.Task,
            Needs = needs,
            Cost = best.Trial.Cost,
            Bits = best.Bits,
            Unit = guide.Value?.Unit,
            How =
            [
                .. needs.Select(need => Statement.Of("diagnosis.first", ("need", knowledge.Confirmations[need].First))),
                .. guide.How.Select((_, at) => Statement.Of($"test.{guide.Id}.how-{at + 1}")),
            ],
            Outcomes = [.. guide.Outcomes.Select((outcome, at) => Outcome(belief, best.Trial, guide, outcome, at))],
        };
    }

    /// <summary>How it ends or goes on.</summary>
    public static IReadOnlyList<Statement> Say(string status, string likeliest, IReadOnlyList<Decided> decisions, NextTest? next, bool refused, TradeKnowledge knowledge)
    {
        var top = decisions[0].Likeliest;
        var second = decisions[Math.Min(1, decisions.Count - 1)];
        var repair = Statement.Of($"cause.{top.Id}.repair");
        var handOn = HandOn(top.ReferTo);
        return status switch
        {
            "settled" =>
            [
                Statement.Of("diagnosis.this-is-it", ("cause", top.Name)),
                repair,
                .. second.Share >= knowledge.Rules["diagnosis-settled"]["also"] ? [Statement.Of("diagnosis.also-check", ("cause", second.Likeliest.Name))] : Array.Empty<Statement>(),
                .. refused ? [handOn] : Array.Empty<Statement>(),
            ],
            "two-remain" => [Statement.Of("diagnosis.two-remain", ("first", top.Name), ("second", second.Likeliest.Name)), Decides(next!, decisions, knowledge) ? Statement.Of("diagnosis.this-decides", ("test", TestName(next!, knowledge))) : Statement.Of("diagnosis.next", ("test", TestName(next!, knowledge)))],
            "testing" => [MostLikely(likeliest), Statement.Of("diagnosis.next", ("test", TestName(next!, knowledge)))],
            _ when TwoRemain(decisions, knowledge) => [Statement.Of("diagnosis.cannot-tell", ("first", top.Name), ("second", second.Likeliest.Name)), handOn],
            _ => [Statement.Of("diagnosis.cannot-tell-of-many", ("cause", likeliest)), handOn],
        };
    }

    /// <summary>Where the one cause that is left was made good in vain.</summary>
    public static IReadOnlyList<Statement> NotCured(Cause cause) => [Statement.Of("diagnosis.not-cured", ("cause", cause.Name)), HandOn(cause.ReferTo)];

    /// <summary>What it looks like, and whose it is now.</summary>
    public static IReadOnlyList<Statement> Kept(string likeliest, string keptFor) => [MostLikely(likeliest), HandOn(keptFor)];

    /// <summary>Whether two instructions are left, and hardly a third.</summary>
    public static bool TwoRemain(IReadOnlyList<Decided> decisions, TradeKnowledge knowledge) =>
        decisions[0].Share + decisions[1].Share >= knowledge.Rules["diagnosis-settled"]["two"];

    private static Statement MostLikely(string likeliest) => Statement.Of("diagnosis.most-likely", ("cause", likeliest));

    private static Statement HandOn(string who) => Statement.Of("diagnosis.take-it-to").With("who", Person.Named(who));

    /// <summary>Whether the test is expected to take most of the doubt away; one that merely tells something decides nothing.</summary>
    private static bool Decides(NextTest next, IReadOnlyList<Decided> decisions, TradeKnowledge knowledge) =>
        next.Bits >= knowledge.Rules["diagnosis-settled"]["decides"] * decisions.Sum(decision => decision.Share > 0 ? -decision.Share * Math.Log2(decision.Share) : 0);

    private static string TestName(NextTest next, TradeKnowledge knowledge) => knowledge.Tests[next.Test].Name;

    private static NextOutcome Outcome(Belief<Hypothesis> belief, Trial<Hypothesis> trial, TestGuide guide, TestOutcome outcome, int at)
    {
        var after = belief.Given(hypothesis => Math.Log(trial.Probability(hypothesis, at))) ?? belief;
        var likeliest = after.Hypotheses[Place(after.Probabilities)].Causes[0];
        return new NextOutcome(
            outcome.Id,
            Statement.Of($"test.{guide.Id}.reading-{outcome.Id}"),
            Statement.Of($"test.{guide.Id}.means-{outcome.Id}"),
            Statement.Of("diagnosis.then", ("cause", likeliest.Name)),
            likeliest.Id);
    }

    private static int Place(IReadOnlyList<double> probabilities)
    {
        var best = 0;
        for (var i = 1; i < probabilities.Count; i++)
        {
            best = probabilities[i] > probabilities[best] ? i : best;
        }

        return best;
    }

    private RankedCause Ranked(Cause cause, double share, IReadOnlyList<Sign> signs, List<double> usual)
    {
        var alone = model.Hypotheses.First(hypothesis => hypothesis.Causes.Count == 1 && hypothesis.Causes[0].Id == cause.Id);
        var reasons = signs.Select((sign, at) => (sign, Ratio: model.LogLikelihood(alone, sign) - usual[at])).ToList();
        List<Statement> speaksFor = [.. reasons.Where(one => one.Ratio > LeastRatio).OrderByDescending(one => one.Ratio).Take(MostReasons)
            .Select(one => Reason(one.sign, "diagnosis.for-seen", "diagnosis.for-denied", "diagnosis.for-doubted", "diagnosis.for-shown"))];
        if (speaksFor.Count == 0)
        {
            speaksFor.Add(Statement.Of("diagnosis.for-common"));
        }

        return new RankedCause(
            cause.Id,
            Statement.Of($"cause.{cause.Id}.name"),
            share,
            speaksFor,
            [.. reasons.Where(one => one.Ratio < -LeastRatio).OrderBy(one => one.Ratio).Take(MostReasons)
                .Select(one => Reason(one.sign, "diagnosis.against-seen", "diagnosis.against-denied", "diagnosis.against-doubted", "diagnosis.against-shown"))],
            Statement.Of($"cause.{cause.Id}.repair"));
    }

    /// <summary>ln P(sign) before anything is known: what a sign is held against.</summary>
    private double Usual(Belief<Hypothesis> prior, Sign sign) =>
        Weights.LogSum([.. prior.Hypotheses.Select((hypothesis, at) => Math.Log(prior.Probabilities[at]) + model.LogLikelihood(hypothesis, sign))]);

    /// <summary>A sign in one of four sentences: that a symptom is there, that it is not, that it may be, or what a test showed.</summary>
    private Statement Reason(Sign sign, string seen, string denied, string maybe, string showed)
    {
        if (sign is Sign.Shown shown)
        {
            return Statement.Of(showed, ("test", model.Tests[shown.Test].Name), ("reading", Reading(shown)));
        }

        var (symptom, sentence) = sign is Sign.Noticed noticed ? (noticed.Symptom, noticed.Present ? seen : denied) : (((Sign.Doubted)sign).Symptom, maybe);
        return Statement.Of(sentence, ("symptom", model.Symptoms[symptom].Name));
    }

    private string Reading(Sign.Shown shown) => model.Tests[shown.Test].Outcomes[shown.Outcome].Reading;
}
