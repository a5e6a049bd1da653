using WireCoach.Rules.Cases;
using WireCoach.Rules.Choosing;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>From symptoms, denials and test results to ranked causes and the next test that the gate allows. Pure.</summary>
public sealed class Diagnostician
{
    private const double Negligible = 1e-6;
    private readonly TradeKnowledge _knowledge;
    private readonly CauseModel _model;
    private readonly SignReader _reader;
    private readonly Explainer _explainer;

    /// <summary>Reads the causes, symptoms and tests of the knowledge once.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public Diagnostician(TradeKnowledge knowledge)
    {
        _knowledge = knowledge;
        _model = new CauseModel(knowledge);
        _reader = new SignReader(_model);
        _explainer = new Explainer(_model);
    }

    internal CauseModel Model => _model;

    /// <summary>What is wrong with this motor, as far as it can be told.</summary>
    /// <param name="file">The case.</param>
    /// <param name="access">What the gate says of each task, by task id.</param>
    /// <param name="sealedCircuit">Whether it drives a sealed refrigerant circuit.</param>
    /// <param name="keptFor">Who has to see the machine before anything more of it is touched; then no test is asked for.</param>
    /// <param name="shown">What tests would show by all that was done before, as outcomes by test id; a test that was made counts before it.</param>
    public FaultReport Examine(
        CaseFile file, IReadOnlyDictionary<string, TaskAccess> access, bool sealedCircuit = false, string? keptFor = null, IReadOnlyDictionary<string, string>? shown = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(access);
        var thought = Think(file, access, sealedCircuit, shown);
        var unjudged = _reader.Unjudged(file);
        var report = keptFor is null ? Conclude(thought, access, file) : Kept(thought, keptFor);
        return report with
        {
            Unjudged = unjudged,
            Say = [.. unjudged.Select(test => Statement.Of("diagnosis.unjudged", ("test", _knowledge.Tests[test].Name))), .. MissesCapacitor(file, sealedCircuit) ? Missing(report.Say) : report.Say, .. new CauseEffects(_knowledge).Of(report.Causes[0].Id, file)],
        };
    }

    /// <summary>A capacitor that is not there comes before all that may be wrong beside it.</summary>
    private static IEnumerable<Statement> Missing(IReadOnlyList<Statement> said) => said.Where(one => one.Id != "diagnosis.most-likely").Prepend(Statement.Of("diagnosis.capacitor-missing"));

    /// <summary>Whether there is no capacitor on a motor that by all else that is known has one.</summary>
    private bool MissesCapacitor(CaseFile file, bool sealedCircuit) =>
        file.HasNoCapacitor && CandidateFamilies.Weights(file, _model, sealedCircuit).Zip(_model.Families).All(one => one.First == 0 || one.Second.HasCapacitor == true);

    /// <summary>What is believed and which test is best, without the words.</summary>
    internal Thought Think(CaseFile file, IReadOnlyDictionary<string, TaskAccess> access, bool sealedCircuit, IReadOnlyDictionary<string, string>? shown = null)
    {
        var weights = CandidateFamilies.Weights(file, _model, sealedCircuit);
        var prior = Prior(weights, file);
        var signs = _reader.Read(file, shown);
        var belief = signs.Aggregate(prior, (held, sign) => held.Given(hypothesis => _model.LogLikelihood(hypothesis, sign)) ?? held);
        return new Thought(prior, belief, signs, Best(belief, Trials(file, access, weights, signs)), Decisions(belief));
    }

    /// <summary>What needs a part that the motor has not is not the cause, and what was made good without a cure hardly is any more.</summary>
    private Belief<Hypothesis> Prior(double[] weights, CaseFile file)
    {
        var parts = new StatedParts(_model, file);
        return Belief<Hypothesis>.Of(_model.Hypotheses
            .Where(hypothesis => hypothesis.Causes.All(parts.Allow))
            .Select(hypothesis => (hypothesis, Math.Log(hypothesis.Prior.Zip(weights, (share, weight) => share * weight).Sum() * (hypothesis.Causes.Any(cause => file.MadeGoodInVain(cause.Id)) ? _model.Uncured : 1))))
            .Where(one => double.IsFinite(one.Item2)));
    }

    private Choice<Hypothesis>? Best(Belief<Hypothesis> belief, IReadOnlyList<Trial<Hypothesis>> trials)
    {
        // what next to nothing speaks for cannot change the choice; leaving it out keeps a turn short
        var likely = Belief<Hypothesis>.Of(belief.Hypotheses.Zip(belief.Probabilities)
            .Where(one => one.Second > Negligible).Select(one => (one.First, Math.Log(one.Second))));
        return Chooser.Best(likely, hypothesis => hypothesis.Decision, trials, depth: 1) is { } best
            && best.Bits >= _knowledge.Rules["diagnosis-test-worth"]["least-bits"] ? best : null;
    }

    private List<Trial<Hypothesis>> Trials(CaseFile file, IReadOnlyDictionary<string, TaskAccess> access, double[] weights, IReadOnlyList<Sign> signs)
    {
        var families = _model.Families.Where((_, at) => weights[at] > 0).ToList();
        var unjudged = _reader.Unjudged(file); // measured, and measured again it would tell no more
        var trials = new List<Trial<Hypothesis>>();
        for (var at = 0; at < _model.Tests.Count; at++)
        {
            var (guide, place) = (_model.Tests[at], at);
            if (!signs.Any(sign => sign is Sign.Shown shown && shown.Test == place) && !(guide.Value is { SpreadOver: null } && unjudged.Contains(guide.Id, StringComparer.Ordinal)) && Makes(guide, families, file, signs) && Cost(guide, file, access) is { } cost)
            {
                trials.Add(new Trial<Hypothesis>
                {
                    Id = guide.Id,
                    Cost = cost,
                    Outcomes = [.. guide.Outcomes.Select(outcome => outcome.Id)],
                    Probability = (hypothesis, outcome) => hypothesis.Shows[place][outcome],
                    Order = guide.How.Count,
                });
            }
        }

        return trials;
    }

    /// <summary>Whether a test makes sense: for one of the kinds that this motor may be, and not one that the person said they cannot do or has told already.</summary>
    private bool Makes(TestGuide guide, List<MotorFamily> families, CaseFile file, IReadOnlyList<Sign> signs) =>
        (guide.Families.Count == 0 || families.Exists(family => guide.Families.Contains(family.Id, StringComparer.Ordinal)))
        && !(guide.NeedsCapacitor && file.HasNoCapacitor)
        && !(guide.NeedsLikeCoils && new StatedParts(_model, file).LikeCoils == false)
        && !signs.Any(sign => sign is Sign.Noticed { Present: true } noticed && guide.ToldBy.Contains(noticed.Id, StringComparer.Ordinal)) // a first start that hummed tells it too
        && !file.Unknowns.Contains(guide.Id) && !file.Unknowns.Contains($"test.{guide.Id}");

    /// <summary>Seconds of a person's time with what has to be confirmed before, dearer by its risk; nothing where the gate or the tools refuse it.</summary>
    private double? Cost(TestGuide guide, CaseFile file, IReadOnlyDictionary<string, TaskAccess> access)
    {
        var task = access[guide.Task];
        if (task.Refused || (guide.Instruments.Count > 0 && guide.Instruments.All(id => file.Instruments.TryGetValue(id, out var present) && !present)))
        {
            return null;
        }

        var atHand = guide.Instruments.Count == 0 || file.Instruments.IsEmpty || guide.Instruments.Any(id => file.Instruments.GetValueOrDefault(id));
        var before = task.Needs.Sum(need => _knowledge.Confirmations[need].Seconds);
        var cost = _knowledge.Rules["diagnosis-cost"];
        return cost["each-seconds"] + (guide.Seconds * _knowledge.GateTasks[guide.Task].CostFactor) + before + (atHand ? 0 : cost["fetch-seconds"]);
    }

    /// <summary>What it looks like to somebody who is not to touch it any more.</summary>
    private FaultReport Kept(Thought thought, string keptFor)
    {
        var (prior, belief, signs, _, decisions) = thought;
        var (causes, top) = (_explainer.Ranked(prior, belief, signs), decisions[0].Likeliest);
        return new FaultReport
        {
            Status = "refer",
            Causes = causes,
            Decision = top.Decision,
            Certainty = decisions[0].Share,
            ReferTo = keptFor,
            Say = Explainer.Kept(Likeliest(causes), keptFor),
            Cautions = top.Cautions,
        };
    }

    private string Likeliest(IReadOnlyList<RankedCause> causes) => _knowledge.Causes[causes[0].Id].Name;

    private FaultReport Conclude(Thought thought, IReadOnlyDictionary<string, TaskAccess> access, CaseFile file)
    {
        var (prior, belief, signs, best, decisions) = thought;
        var causes = _explainer.Ranked(prior, belief, signs);
        var top = decisions[0].Likeliest;
        var settled = decisions[0].Share >= _knowledge.Rules["diagnosis-settled"]["one"];
        var next = settled || best is null ? null : Explainer.Next(belief, best, _knowledge.Tests[best.Trial.Id], access, _knowledge);
        var uncured = settled && file.MadeGoodInVain(top.Id);
        var status = uncured ? "refer" : settled ? "settled" : next is null ? "refer" : Explainer.TwoRemain(decisions, _knowledge) ? "two-remain" : "testing";
        var refused = access[top.Task].Refused;
        return new FaultReport
        {
            Status = status,
            Causes = causes,
            Next = next,
            Decision = top.Decision,
            Certainty = decisions[0].Share,
            ReferTo = status == "refer" || (status == "settled" && refused) ? top.ReferTo : null,
            Say = uncured ? Explainer.NotCured(top) : Explainer.Say(status, Likeliest(causes), decisions, next, refused, _knowledge),
            Cautions = [.. (next is null ? top.Cautions : _knowledge.Tests[next.Test].Cautions.Concat(top.Cautions)).Distinct(StringComparer.Ordinal)],
        };
    }

    /// <summary>The instructions by how likely each is called for, alone or beside another, with its likeliest cause.</summary>
    private static List<Decided> Decisions(Belief<Hypothesis> belief) =>
    [
        .. belief.Hypotheses.SelectMany(hypothesis => hypothesis.Causes).GroupBy(cause => cause.Decision, StringComparer.Ordinal)
            .Select(group => new Decided(
                group.Key,
                belief.Probability(hypothesis => hypothesis.Leads(group.Key)),
                group.Distinct().MaxBy(cause => belief.Probability(hypothesis => hypothesis.Causes.Contains(cause)))!))
            .OrderByDescending(one => Math.Round(one.Share, 12)).ThenBy(one => one.Decision, StringComparer.Ordinal),
    ];
}

/// <summary>What is believed of a case, on what evidence, and the best test.</summary>
internal sealed record Thought(
    Belief<Hypothesis> Prior, Belief<Hypothesis> Belief, IReadOnlyList<Sign> Signs, Choice<Hypothesis>? Best, IReadOnlyList<Decided> Decisions);

/// <summary>An instruction, how likely it is called for, and the likeliest cause that calls for it.</summary>
internal sealed record Decided(string Decision, double Share, Cause Likeliest);
