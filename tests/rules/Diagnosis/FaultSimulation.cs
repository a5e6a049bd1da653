using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Simulated faulty motors: a fault is drawn, a person notices and tells some of it, and the tests that are asked for are answered.</summary>
/// <param name="knowledge">The facts of the trade.</param>
/// <param name="unsharp">How far the world differs from what knowledge says of it: the spread of every log odds; 0 for not at all.</param>
/// <param name="seed">Where the chance starts.</param>
/// <param name="apart">Whether the faults show as in the world that was written apart from knowledge.</param>
internal sealed class FaultSimulation(TradeKnowledge knowledge, double unsharp, int seed, bool apart = false)
{
    /// <summary>What a textbook asks, always in this order.</summary>
    private static readonly string[] Textbook =
    [
        "lamp-in-socket", "press-reset", "plate", "turn-by-hand", "look-and-smell", "capacitor-look", "supply-voltage", "voltage-at-motor-starting", "control-check",
        "earth-continuity", "resistance", "insulation", "brushes", "capacitance", "start-switch", "start-relay", "uncouple-load", "run-current", "line-currents",
        "move-lines-round", "run-speed", "run-direction", "frame-heat", "coast-down-click", "start-current-after-two-seconds", "series-voltage", "induced-voltage", "battery-flick",
    ];

    /// <summary>What people look at before they ask anybody, and how often they say so.</summary>
    private static readonly string[] Glances = ["lamp-in-socket", "press-reset", "turn-by-hand", "look-and-smell", "capacitor-look"];

    private const double Glanced = 0.2;
    private const int MostTests = 20;
    private readonly Random _chance = new(seed);
    private readonly Diagnostician _diagnostician = new(knowledge);
    private IReadOnlyList<Hypothesis>? _faults;
    private readonly IReadOnlyDictionary<string, TaskAccess> _access = TaskAccess.Everywhere(knowledge, TaskAccess.Open);

    public Tally Run(int motors, bool fixedOrder)
    {
        var tally = new Tally();
        for (var i = 0; i < motors; i++)
        {
            One(tally, fixedOrder);
        }

        return tally;
    }

    private void One(Tally tally, bool fixedOrder)
    {
        var (family, fault, facts, world) = Brought();
        var tests = 0;
        var seconds = 0.0;
        var thought = Think(facts);
        tally.Motors++;
        tally.TopThreeAtOnce += Named(thought, fault) ? 1 : 0;
        var likeAtOnce = Alike(thought, fault);
        tally.Told += facts.Count(fact => fact is Fact.Symptom { Present: true });
        tally.Note(family, fault, thought);
        tally.InstructionAtOnce += likeAtOnce ? 1 : 0;
        var (afterFive, likeAfterFive) = (Named(thought, fault), likeAtOnce);
        while (tests < MostTests && thought.Decisions[0].Share < knowledge.Rules["diagnosis-settled"]["one"])
        {
            var test = fixedOrder ? Textbook.FirstOrDefault(id => Makes(id, family, facts)) : thought.Best?.Trial.Id;
            if (test is null)
            {
                break;
            }

            facts.Add(Answer(test, world));
            tests++;
            seconds += knowledge.Tests[test].Seconds * knowledge.GateTasks[knowledge.Tests[test].Task].CostFactor;
            thought = Think(facts);
            (afterFive, likeAfterFive) = tests <= 5 ? (Named(thought, fault), Alike(thought, fault)) : (afterFive, likeAfterFive);
        }

        var settled = thought.Decisions[0].Share >= knowledge.Rules["diagnosis-settled"]["one"];
        tally.TopThreeAfterFive += afterFive ? 1 : 0;
        tally.InstructionAfterFive += likeAfterFive ? 1 : 0;
        tally.Settled += settled ? 1 : 0;
        tally.SettledRightly += settled && fault.Leads(thought.Decisions[0].Decision) ? 1 : 0;
        tally.Tests += tests;
        tally.Seconds += seconds;
    }

    /// <summary>A motor that somebody brings: its kind, its fault, and what they say.</summary>
    private (MotorFamily Family, Hypothesis Fault, List<Fact> Facts, double[][] World) Brought()
    {
        while (true)
        {
            var model = _diagnostician.Model;
            var place = Draw([.. model.Families.Select(family => family.Weight)]);
            var family = model.Families[place];
            _faults ??= apart ? WrittenWorld.Of(knowledge, model) : model.Hypotheses;
            var fault = _faults[Draw([.. _faults.Select(hypothesis => hypothesis.Prior[place] * Math.Exp(unsharp * Normal()))])];
            List<Fact> facts = [.. Described(family)];
            var said = facts.Count;
            for (var at = 0; at < model.Symptoms.Count; at++)
            {
                var present = _chance.NextDouble() < Blurred(fault.Present[at]);
                var noticed = _chance.NextDouble() < (apart ? WrittenWorld.Told(model.Symptoms[at].Id) : model.Symptoms[at].Noticed * model.Symptoms[at].Told);
                if (present && noticed)
                {
                    facts.Add(new Fact.Symptom { Id = model.Symptoms[at].Id });
                }
                else if (!present && _chance.NextDouble() < 0.04)
                {
                    facts.Add(new Fact.Symptom { Id = model.Symptoms[at].Id, Present = false });
                }
            }

            if (facts.Skip(said).Any(fact => fact is Fact.Symptom { Present: true }))
            {
                var world = World(fault);
                facts.AddRange(Glances.Where(test => Makes(test, family, facts) && _chance.NextDouble() < Glanced).ToList().Select(test => Answer(test, world)));
                return (family, fault, facts, world);
            }
        }
    }

    /// <summary>Most people know what kind of motor it is, the others whether it has a capacitor and how many phases.</summary>
    private IEnumerable<Fact> Described(MotorFamily family)
    {
        if (_chance.NextDouble() < 0.8)
        {
            yield return new Fact.Choice { Question = "family", Option = family.Id };
        }
        else
        {
            yield return new Fact.Plate { Field = "phases", Value = PlateValue.Of(family.Phases) };
            if (family.HasCapacitor is { } has)
            {
                yield return new Fact.Capacitor { Present = has };
            }
        }
    }

    /// <summary>The true chances of the outcomes of each test on this very motor.</summary>
    private double[][] World(Hypothesis fault) => [.. fault.Shows.Select(shares => Scaled([.. shares.Select(share => share * Math.Exp(unsharp * Normal()))]))];

    private Fact.BenchTest Answer(string test, double[][] world)
    {
        var at = _diagnostician.Model.Tests.ToList().FindIndex(guide => guide.Id == test);
        return new Fact.BenchTest { Test = test, Outcome = _diagnostician.Model.Tests[at].Outcomes[Draw(world[at])].Id };
    }

    private Thought Think(List<Fact> facts) =>
        _diagnostician.Think(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts), _access, sealedCircuit: false);

    /// <summary>Whether one of the true causes is among the first three.</summary>
    private static bool Named(Thought thought, Hypothesis fault) => First(thought).Any(first => fault.Causes.Any(cause => cause.Id == first.Id));

    /// <summary>Whether one of the first three leads to the same instruction as a true one: two causes with one instruction need no test between them.</summary>
    private static bool Alike(Thought thought, Hypothesis fault) => First(thought).Any(first => fault.Leads(first.Decision));

    private static IEnumerable<Cause> First(Thought thought)
    {
        var causes = new Dictionary<string, Cause>(StringComparer.Ordinal);
        var shares = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var i = 0; i < thought.Belief.Hypotheses.Count; i++)
        {
            foreach (var cause in thought.Belief.Hypotheses[i].Causes)
            {
                causes[cause.Id] = cause;
                shares[cause.Id] = shares.GetValueOrDefault(cause.Id) + thought.Belief.Probabilities[i];
            }
        }

        return shares.OrderByDescending(share => share.Value).Take(3).Select(share => causes[share.Key]);
    }

    private bool Makes(string test, MotorFamily family, List<Fact> facts) =>
        !facts.Exists(fact => fact is Fact.BenchTest done && done.Test == test)
        && (knowledge.Tests[test].Families.Count == 0 || knowledge.Tests[test].Families.Contains(family.Id))
        && !(knowledge.Tests[test].NeedsCapacitor && family.HasCapacitor == false);

    private double Blurred(double share) => 1 / (1 + Math.Exp(-(Math.Log(share / (1 - share)) + (unsharp * Normal()))));

    private double Normal() => unsharp == 0 ? 0 : Math.Sqrt(-2 * Math.Log(1 - _chance.NextDouble())) * Math.Cos(2 * Math.PI * _chance.NextDouble());

    private static double[] Scaled(double[] shares)
    {
        var sum = shares.Sum();
        return Array.ConvertAll(shares, share => share / sum);
    }

    private int Draw(double[] weights)
    {
        var left = _chance.NextDouble() * weights.Sum();
        for (var i = 0; i < weights.Length; i++)
        {
            left -= weights[i];
            if (left < 0)
            {
                return i;
            }
        }

        return Array.FindLastIndex(weights, weight => weight > 0);
    }

    /// <summary>What came of it.</summary>
    internal sealed class Tally
    {
        public int Motors { get; set; }

        /// <summary>Symptoms that were told of all motors.</summary>
        public long Told { get; set; }

        /// <summary>By family and fault: how many there were, how many were not among the first three, and what stood there instead.</summary>
        public SortedDictionary<string, (int All, int Missed, SortedDictionary<string, int> Instead)> ByFault { get; } = new(StringComparer.Ordinal);

        public void Note(MotorFamily family, Hypothesis fault, Thought thought)
        {
            var key = $"{family.Id} {string.Join('+', fault.Causes.Select(cause => cause.Id))}";
            var (all, missed, instead) = ByFault.GetValueOrDefault(key, (0, 0, new(StringComparer.Ordinal)));
            var named = Named(thought, fault);
            if (!named)
            {
                var first = thought.Decisions[0].Likeliest.Id;
                instead[first] = instead.GetValueOrDefault(first) + 1;
            }

            ByFault[key] = (all + 1, missed + (named ? 0 : 1), instead);
        }

        public int TopThreeAtOnce { get; set; }

        public int InstructionAtOnce { get; set; }

        public int TopThreeAfterFive { get; set; }

        public int InstructionAfterFive { get; set; }

        public int Settled { get; set; }

        public int SettledRightly { get; set; }

        public long Tests { get; set; }

        public double Seconds { get; set; }

        public double Share(int count) => (double)count / Motors;
    }
}
