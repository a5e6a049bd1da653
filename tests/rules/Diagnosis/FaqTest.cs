using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class FaqTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Faq Questions = new(Knowledge);

    [Theory]
    [InlineData("mine is 30 uF 370 V run cap, can I use a 30 uF 440 V run cap?", "faq.capacitor-spare-yes")]
    [InlineData("mine is 30 uF 370 V run cap, can I use a 30 uF 440 V?", "faq.capacitor-spare-if")]
    [InlineData("mine is 30 uF 370 V run cap, can I use a 35 uF 440 V run cap?", "faq.capacitor-spare-no")]
    [InlineData("mine is 30 uF 370 V run cap, can I use a 30 uF 250 V run cap?", "faq.capacitor-spare-no")]
    [InlineData("mine is 30 uF 370 V run cap, can I use a 30 uF 440 V start cap?", "faq.capacitor-spare-no")]
    [InlineData("can I use a bigger capacitor? it has a 30 uF 370 V run cap", "faq.capacitor-no")]
    public void The_capacitor_at_hand_is_judged_against_the_one_on_the_motor(string said, string first)
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), new Listener(Knowledge).Understand(said).Facts);
        Assert.Equal(first, new Faq(Knowledge).Answer("bigger-capacitor", file)[0].Id);
    }

    [Fact]
    public void A_capacitor_is_not_made_bigger_and_its_own_range_is_given()
    {
        var said = Say("bigger-capacitor", new Fact.Capacitor { Microfarads = 189, MicrofaradsTo = 227, Volts = 250, Use = "start" });
        Assert.StartsWith("No", said[0], StringComparison.Ordinal);
        Assert.Contains("For this one: 189 µF to 227 µF.", said);
        Assert.Contains("Marked volts: 250 V or more, never less.", said);
    }

    /// <summary>A burnt winding beside signs of everything else leaves no cause on the list that is a winding shop's: what the repair costs is said all the same.</summary>
    [Fact]
    public void A_burnt_winding_is_judged_also_where_nothing_on_the_list_is_winding_work()
    {
        var said = Ask(
            "worth-repairing",
            new Fact.BenchTest { Test = "look-and-smell", Outcome = "burnt-winding" }, new Fact.BenchTest { Test = "belt-tension", Outcome = "slack" },
            new Fact.BenchTest { Test = "voltage-at-motor-starting", Outcome = "none" }, new Fact.BenchTest { Test = "lamp-in-socket", Outcome = "dead" },
            new Fact.BenchTest { Test = "series-impedance", Outcome = "unclear" }, new Fact.BenchTest { Test = "series-voltage", Outcome = "as-marked" });
        Assert.Contains("faq.worth-power-missing", said.Select(one => one.Id));
    }

    /// <summary>Nobody measures again what was measured and can only not be judged: the plate is not known.</summary>
    [Fact]
    public void A_value_that_nothing_can_be_held_against_is_not_asked_for_again()
    {
        Fact[] slow = [new Fact.Symptom { Id = "runs-slow" }, new Fact.Confirm { Id = "isolated" }, new Fact.Confirm { Id = "shaft-free-guarded" }, new Fact.BenchTest { Test = "run-speed", Value = 1430, Unit = "rpm" }];
        var open = TaskAccess.Everywhere(Knowledge, TaskAccess.Open);
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), slow);
        var asked = new List<string>();
        for (var report = new Diagnostician(Knowledge).Examine(file, open); report.Next is { } next && asked.Count < 60; report = new Diagnostician(Knowledge).Examine(file, open))
        {
            asked.Add(next.Test);
            file = CaseFile.From(file.Opening, [.. file.Facts, new Fact.Unknown { Question = next.Test }]);
        }

        Assert.NotEmpty(asked);
        Assert.DoesNotContain("run-speed", asked);
    }

    /// <summary>The figures are those of the machine models, each with its rule and its caution.</summary>
    [Fact]
    public void What_a_weak_capacitor_and_a_lost_line_cost_is_said_in_figures()
    {
        var weak = Ask("bigger-capacitor", new Fact.Capacitor { Microfarads = 200, MeasuredMicrofarads = 100, Volts = 250, Use = "start" }).Single(one => one.Id == "effect.weak-capacitor");
        Assert.InRange(weak.Quotes[0].Value!.Value, 10, 100);
        Assert.True(weak.Quotes[0].Value < weak.Quotes[1].Value);
        Assert.DoesNotContain(Ask("bigger-capacitor", new Fact.Capacitor { Microfarads = 200, MeasuredMicrofarads = 205, Use = "start" }), one => one.Id == "effect.weak-capacitor");
        Assert.DoesNotContain(Ask("bigger-capacitor", new Fact.Capacitor { Microfarads = 20, MeasuredMicrofarads = 10, Use = "run" }), one => one.Id == "effect.weak-capacitor");
        var lost = Ask("spins-both-ways", Plate("phases", 3));
        Assert.InRange(lost.Single(one => one.Id == "effect.line-lost").Quotes[0].Value!.Value, 150, 230);
        Assert.Equal(86.6, lost.Single(one => one.Id == "effect.line-lost-start").Quotes[0].Value!.Value, 1);
        Assert.All(lost.Concat([weak]).SelectMany(one => one.Quotes), quote => Assert.NotNull(quote.Caution));
    }

    /// <summary>85 V at the motor of 115 V: (85 ÷ 115)² is 55 % of the torque.</summary>
    [Fact]
    public void The_likeliest_cause_says_what_it_costs()
    {
        var report = new Diagnostician(Knowledge).Examine(
            CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica),
            [
                Plate("volts", 115), Plate("phases", 1), new Fact.Choice { Question = "family", Option = "capacitor-start" }, new Fact.Supply { Volts = 115, Phases = 1 },
                new Fact.Symptom { Id = "slow-to-start" }, new Fact.Symptom { Id = "lights-dim" }, new Fact.BenchTest { Test = "voltage-at-motor-starting", Value = 85, Unit = "volt" },
            ]),
            TaskAccess.Everywhere(Knowledge, TaskAccess.Open), false);
        Assert.Contains(report.Causes[0].Id, new[] { "low-supply-voltage", "undersized-cord-or-long-run" });
        Assert.Equal(54.6, report.Say.Single(one => one.Id == "effect.low-volts").Quotes[0].Value!.Value, 1);
    }

    [Fact]
    public void Without_marks_it_says_what_is_missing() =>
        Assert.Contains(Knowledge.Sentences["faq.capacitor-unread"].Text, Say("bigger-capacitor"));

    [Fact]
    public void A_cord_of_known_length_and_size_is_answered_in_volts_lost_running_and_starting()
    {
        Fact[] motor = [Plate("volts", 115), Plate("amps", 12), Plate("phases", 1), new Fact.Supply { Volts = 120, Phases = 1 }, new Fact.Choice { Question = "family", Option = "capacitor-start" }];
        Fact Length(double metres) => new Fact.Choice { Question = "supply.length-metres", Option = $"{metres}" };
        Fact Size(string size) => new Fact.Choice { Question = "supply.conductor", Option = size };
        // 2 × 12 A × 4.99 Ω per 1000 ft × 100 ft = 11.98 V, a tenth of the supply
        var thin = Ask("extension-cord", [.. motor, Length(30.48), Size("16 gauge")]);
        Assert.Equal(11.976, thin.Single(one => one.Id == "faq.cord-drop").Quotes[0].Value!.Value, 2);
        Assert.Contains(thin, one => one.Id == "faq.cord-too-much");
        Assert.Contains(thin, one => one.Id == "faq.cord-starting");
        // 2 × 12 A × 1.24 Ω per 1000 ft × 25 ft = 0.74 V
        var thick = Ask("extension-cord", [.. motor, Length(7.62), Size("10 awg")]);
        Assert.Equal(0.744, thick.Single(one => one.Id == "faq.cord-drop").Quotes[0].Value!.Value, 2);
        Assert.Contains(thick, one => one.Id == "faq.cord-bears");
        Assert.Contains(Ask("extension-cord", motor), one => one.Id == "faq.cord-how");
        Assert.Contains(Ask("extension-cord", Length(30), Size("16 gauge")), one => one.Id == "faq.cord-amps-missing");
        Assert.Contains(Ask("extension-cord", [.. motor, Length(30), Size("17 gauge")]), one => one.Id == "faq.cord-size-unknown");
    }

    /// <summary>C = 2 × 750 W ÷ (√3 × 2π × 50 Hz × (230 V)²) = 52 µF, where the plate's lower volts are those of the supply and the power is small.</summary>
    [Fact]
    public void A_three_phase_motor_on_one_phase_gets_a_capacitor_only_where_its_volts_fit()
    {
        Fact[] motor = [Plate("phases", 3), Plate("kilowatts", 0.75)];
        Assert.Equal(52.1, Ask("run-on-one-phase", [.. motor, Plate("volts", 230, 400), new Fact.Supply { Volts = 230, Phases = 1, Hertz = 50 }])[0].Quotes[0].Value!.Value, 0.1);
        // (230 / 400)² = 33 %
        var few = Ask("run-on-one-phase", [.. motor, Plate("volts", 400), new Fact.Supply { Volts = 230, Phases = 1, Hertz = 50 }]);
        Assert.Equal(33.1, Assert.Single(few).Quotes[0].Value!.Value, 0.1);
        Assert.Equal("heat.three-phase-on-one-too-big", Ask("run-on-one-phase", Plate("phases", 3), Plate("kilowatts", 5.5), Plate("volts", 230, 400), new Fact.Supply { Volts = 230, Phases = 1, Hertz = 50 })[0].Id);
    }

    [Fact]
    public void A_230_volt_motor_on_208_needs_the_mark_and_loses_a_fifth_of_its_torque()
    {
        var answer = Ask("run-230-on-208", Plate("volts", 115, 230), Plate("amps", 10.4, 5.2), new Fact.Supply { Volts = 208, Phases = 1 });
        Assert.Equal("faq.volts-only-if-marked", answer[0].Id);
        // (208 / 230)² = 81.8 % and 5.2 A × 230 / 208 = 5.75 A
        Assert.Equal(81.784, answer.SelectMany(one => one.Quotes).First(quote => quote.Rule == "low-volt-torque").Value!.Value, 3);
        Assert.Equal(5.75, answer.SelectMany(one => one.Quotes).First(quote => quote.Rule == "faq-amps-at-low-volts").Value!.Value, 3);
    }

    [Fact]
    public void A_motor_marked_208_may_run_on_208() =>
        Assert.Equal("faq.volts-yes-joined", Ask("run-230-on-208", Plate("volts", 208, 460), new Fact.Supply { Volts = 208, Phases = 3 })[0].Id);

    [Fact]
    public void Sixty_hertz_windings_on_fifty_at_the_same_volts_are_stopped() =>
        // 230/50 over 230/60 is 1.2
        Assert.Equal(1.2, Ask("run-60-on-50", Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 50 })[0].Quotes[0].Value!.Value, 6);

    [Theory]
    [InlineData("capacitor-start-dual-6", "T5 ↔ T8")]
    [InlineData("three-phase-9-star", "two of the three lines")]
    public void Direction_follows_the_layout(string layout, string swap) =>
        Assert.Contains(swap, Say("can-reverse", new Fact.Choice { Question = "layout", Option = layout })[0], StringComparison.Ordinal);

    [Fact]
    public void A_motor_that_cannot_be_reversed_is_not() =>
        Assert.Equal(Knowledge.Layouts["shaded-pole-2"].NotReversible, Ask("can-reverse", new Fact.Choice { Question = "layout", Option = "shaded-pole-2" })[0].Id);

    [Fact]
    public void Swapping_the_plug_is_ruled_out_for_a_single_phase_motor() =>
        Assert.Contains(Ask("can-reverse", new Fact.Choice { Question = "family", Option = "psc" }), one => one.Id == "faq.reverse-not-the-plug");

    [Fact]
    public void A_cord_is_judged_by_the_starting_amps_of_the_kind_of_motor()
    {
        var answer = Ask("extension-cord", new Fact.Choice { Question = "family", Option = "capacitor-start" }, Plate("amps", 10));
        var start = Assert.Single(answer, one => one.Id == "faq.cord-start");
        Assert.Equal([40, 60], start.Quotes.Select(quote => quote.Value!.Value)); // four to six times the plate
        Assert.Equal(72.25, answer.SelectMany(one => one.Quotes).First(quote => quote.Rule == "low-volt-torque").Value!.Value, 6);
    }

    [Fact]
    public void Spinning_both_ways_means_the_start_branch_on_one_phase_and_a_lost_line_on_three()
    {
        Assert.Equal("faq.both-ways", Ask("spins-both-ways", Plate("phases", 1))[0].Id);
        Assert.Equal("faq.both-ways-three-phase", Ask("spins-both-ways", Plate("phases", 3))[0].Id);
    }

    [Fact]
    public void A_breaker_is_never_made_larger_and_the_moment_of_tripping_decides()
    {
        Assert.Equal("faq.breaker-when", Ask("breaker-trips")[^1].Id);
        var answer = Ask("breaker-trips", new Fact.Symptom { Id = "trips-after-running" }, Plate("amps", 5.2), new Fact.Running { Amps = 7.9, Outcome = "ran" });
        Assert.Equal("faq.breaker-never-larger", answer[0].Id);
        Assert.Equal("It draws 7.9 A against 5.2 A on the plate; that is what trips it if it is more.", Knowledge.Sentences.Render(answer[^1]));
    }

    [Fact]
    public void A_small_motor_is_not_rewound_and_a_capacitor_always_pays()
    {
        Fact[] burnt = [new Fact.Choice { Question = "family", Option = "psc" }, new Fact.BenchTest { Test = "resistance", Outcome = "start-open" }, new Fact.Symptom { Id = "hums-no-start" }, Plate("horsepower", 0.5)];
        Assert.Equal("faq.worth-replace", Ask("worth-repairing", burnt)[^1].Id);
        Fact[] capacitor = [new Fact.Choice { Question = "family", Option = "psc" }, new Fact.BenchTest { Test = "capacitance", Outcome = "open" }, new Fact.Symptom { Id = "hums-no-start" }];
        Assert.Equal("faq.worth-part", Ask("worth-repairing", capacitor)[^1].Id);
    }

    [Fact]
    public void Every_question_has_an_answer_even_where_nothing_is_known() =>
        Assert.All(Faq.Questions, question => Assert.All(Ask(question), said => Assert.NotEmpty(Knowledge.Sentences.Render(said))));

    private static Fact.Plate Plate(string field, params double[] values) => new() { Field = field, Value = PlateValue.Of(values) };

    private static IReadOnlyList<Statement> Ask(string question, params Fact[] facts)
    {
        var answer = Questions.Answer(question, CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts));
        Assert.NotEmpty(answer);
        return answer;
    }

    private static List<string> Say(string question, params Fact[] facts) => [.. Ask(question, facts).Select(said => Knowledge.Sentences.Render(said))];
}
