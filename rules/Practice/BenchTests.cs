using System.Numerics;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Practice;

/// <summary>Bench tests on the practice motor: low volts, a cell, an LCR meter, and the motor turning on one half.</summary>
internal sealed class BenchTests(TradeKnowledge knowledge, Wound wound, CoupledModel model)
{
    private readonly TradeRule _meter = knowledge.Rules["practice-meter"];

    /// <summary>The result of a test.</summary>
    public Answer<Fact.BenchTest> Answer(string test, TestSetup setup)
    {
        var result = new Fact.BenchTest { Test = test, Drive = setup.Drive, Tie = setup.Tie, Read = setup.Read, AppliedVolts = setup.AppliedVolts, How = FactEntry.Probe };
        if (setup.Read.Count != 2 || (test != "series-impedance" && setup.Drive.Count != 2))
        {
            return new Problem("invalid-fact", "setup", Statement.Of("practice.setup"));
        }

        return test switch
        {
            "series-voltage" or "induced-voltage" => result with { Value = Shown(Volts(setup, turning: false).Magnitude, setup), Unit = "volt" },
            "half-run" => result with { Value = Shown(Volts(setup, turning: true).Magnitude, setup), Unit = "volt" },
            "series-impedance" => result with { Value = Shown(Impedance(setup), setup), Unit = "ohm" },
            "battery-flick" => result with { Outcome = Flick(setup) },
            _ => new Problem("invalid-fact", "test", Statement.Of("practice.no-such-test", ("test", test))),
        };
    }

    private Complex Volts(TestSetup setup, bool turning)
    {
        var node = Joined(setup.Tie);
        var (elements, couplings) = model.Build(node, wound.Hertz, turning, switchClosed: !turning, bridged: true);
        var (plus, minus) = (node(wound.NodeOf(setup.Drive[0])), node(wound.NodeOf(setup.Drive[1])));
        if (plus == minus)
        {
            return Complex.Zero; // the fuse has gone
        }

        elements.Add(new Element.Source("feed", plus, minus, setup.AppliedVolts ?? 1));
        elements.Add(new Element.Resistor("meter", node(wound.NodeOf(setup.Read[0])), node(wound.NodeOf(setup.Read[1])), 1e7));
        return CoupledModel.Solve(elements, couplings, wound.Hertz, minus).Value is { } solution ? solution.Elements["meter"].Volts : Complex.Zero;
    }

    private double Impedance(TestSetup setup)
    {
        var node = Joined(setup.Tie);
        var (elements, couplings) = model.Build(node, wound.Hertz, turning: false, switchClosed: true, bridged: true);
        var (plus, minus) = (node(wound.NodeOf(setup.Read[0])), node(wound.NodeOf(setup.Read[1])));
        elements.Add(new Element.Source("feed", plus, minus, 1));
        return CoupledModel.Solve(elements, couplings, wound.Hertz, minus).Value is { } solution && solution.Elements["feed"].Amps.Magnitude is > 1e-9 and var amps
            ? 1 / amps : 0;
    }

    private string Flick(TestSetup setup)
    {
        var kick = Volts(setup with { AppliedVolts = 1 }, turning: false);
        return kick.Magnitude < 2 * _meter["probe-ohms"] * 0.2 ? "no-kick" : kick.Real > 0 ? "up-on-make" : "down-on-make";
    }

    private double Shown(double value, TestSetup setup)
    {
        var chance = new SeededSequence(wound.Seed, string.Join('|', setup.Drive.Concat(setup.Read)) + string.Join('|', setup.Tie.SelectMany(tie => tie)));
        return Math.Round(value * (1 + (chance.Between(-1, 1) * _meter["volts-percent"] / 100)), 2);
    }

    private Func<string, string> Joined(IReadOnlyList<IReadOnlyList<string>> ties)
    {
        var joint = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var tie in ties)
        {
            foreach (var lead in tie)
            {
                joint[wound.NodeOf(lead)] = wound.NodeOf(tie[0]);
            }
        }

        return node => joint.GetValueOrDefault(node, node);
    }
}
