using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>What a cause costs in figures, and from which readings they are taken.</summary>
public sealed class CauseEffectsTest
{
    private static readonly CauseEffects Effects = new(Trade.Knowledge);

    [Theory]
    [InlineData("start-capacitor-weak", "effect.weak-capacitor")]
    [InlineData("low-supply-voltage", "effect.low-volts")]
    [InlineData("undersized-cord-or-long-run", "effect.low-volts")]
    [InlineData("lost-phase", "effect.line-lost effect.line-lost-start")]
    [InlineData("run-half-reversed", "effect.half-reversed")]
    [InlineData("worn-bearing", "")]
    public void Each_cause_that_costs_torque_or_amps_says_how_much(string cause, string said) =>
        Assert.Equal(said, string.Join(' ', Said(cause, Plate(230), new Fact.Supply { Volts = 200 }, Weak(100, 60)).Select(one => one.Id)));

    [Theory]
    [InlineData(100.0, 60.0, "start", true, true)]
    [InlineData(100.0, 60.0, "unknown", true, true)]
    [InlineData(100.0, 60.0, "run", true, false)] // a run capacitor hardly helps the start
    [InlineData(100.0, 100.0, "start", true, false)] // as marked
    [InlineData(100.0, 130.0, "start", true, false)]
    [InlineData(100.0, 0.0, "start", true, false)] // open: another cause
    [InlineData(0.0, 60.0, "start", true, false)]
    [InlineData(100.0, 60.0, "start", false, false)]
    public void A_start_capacitor_that_lost_some_of_its_mark_leaves_less_torque(double marked, double measured, string use, bool present, bool said) =>
        Assert.Equal(said, Said("start-capacitor-weak", Weak(marked, measured) with { Use = use, Present = present }).Count > 0);

    [Fact]
    public void A_good_run_capacitor_read_after_it_changes_nothing_of_a_weak_one_for_the_start() =>
        Assert.NotEmpty(Said("start-capacitor-weak", Weak(100, 60) with { Use = "start" }, Weak(30, 29) with { Use = "run" }));

    /// <summary>(volts ÷ rated)² of the torque: 80 % of the volts leave 64 %.</summary>
    [Fact]
    public void Low_volts_are_those_at_the_motor_then_those_of_the_run_then_those_of_the_supply()
    {
        Fact[] supply = [Plate(200), new Fact.Supply { Volts = 180 }];
        Fact[] run = [.. supply, new Fact.Running { Volts = 160 }, new Fact.Running { Amps = 5 }];
        Fact[] start = [.. run, new Fact.BenchTest { Test = "voltage-at-motor-starting", Value = 120 }, new Fact.BenchTest { Test = "voltage-at-motor-starting", Outcome = "sags" }];
        Fact[] dead = [.. supply, new Fact.Running { Volts = 0 }, new Fact.BenchTest { Test = "voltage-at-motor-starting", Value = 0 }];
        Assert.Equal(81, Assert.Single(Said("low-supply-voltage", dead)).Quotes[0].Value!.Value, 1e-6); // no volts at all are no low volts
        Assert.Equal([81, 64, 36], new[] { supply, run, start }.Select(facts => Math.Round(Assert.Single(Said("low-supply-voltage", facts)).Quotes[0].Value!.Value, 6)));
    }

    [Theory]
    [InlineData(230.0, 230.0, null)]
    [InlineData(230.0, 240.0, null)]
    [InlineData(230.0, 220.0, "230 V")]
    public void Volts_that_are_not_low_cost_nothing(double plate, double volts, string? named) =>
        Assert.Equal(named, Said("low-supply-voltage", Plate(plate), new Fact.Supply { Volts = volts }).SingleOrDefault()?.Gaps["plate"]);

    [Fact]
    public void Of_two_plate_volts_those_nearest_to_the_supply_count()
    {
        Assert.Equal("115 V", Said("low-supply-voltage", Plate(115, 230), new Fact.Supply { Volts = 110 }).Single().Gaps["plate"]);
        Assert.Equal("230 V", Said("low-supply-voltage", Plate(115, 230), new Fact.Supply { Volts = 208 }).Single().Gaps["plate"]);
        Assert.Equal("230 V", Said("low-supply-voltage", Plate(115, 230), new Fact.Supply { Volts = 230 }, new Fact.Running { Volts = 120 }).Single().Gaps["plate"]); // joined for the supply, however far the volts fall
        Assert.Equal("115 V", Said("low-supply-voltage", Plate(115, 230), new Fact.Running { Volts = 100 }).Single().Gaps["plate"]);
        Assert.Empty(Said("low-supply-voltage", new Fact.Supply { Volts = 100 }));
        Assert.Empty(Said("low-supply-voltage", Plate(230)));
    }

    private static Fact.Capacitor Weak(double marked, double measured) => new() { Microfarads = marked, MeasuredMicrofarads = measured, Use = "start" };

    private static Fact.Plate Plate(params double[] volts) => new() { Field = "volts", Value = PlateValue.Of(volts) };

    private static IReadOnlyList<Statement> Said(string cause, params Fact[] facts)
    {
        var said = Effects.Of(cause, CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts));
        Assert.All(said, one => Assert.NotEmpty(Trade.Knowledge.Sentences.Render(one)));
        return said;
    }
}
