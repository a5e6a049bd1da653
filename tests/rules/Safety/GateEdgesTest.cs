using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Safety;

/// <summary>Where exactly each condition begins and ends, what lapses with what, and whose reason is told.</summary>
public sealed class GateEdgesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Fact.Confirm Isolated = new() { Id = "isolated" };
    private static readonly Fact.Confirm Guarded = new() { Id = "shaft-free-guarded" };
    private static readonly Fact.Confirm EarthProved = new() { Id = "earth-proved" };
    private static readonly Fact.Capacitor NoCapacitor = new() { Present = false };
    private static readonly Fact Shock = GateTable.Seen("shock-from-frame");

    [Theory]
    [InlineData("three-phase-star", true)]
    [InlineData("single-phase", false)]
    public void The_kind_of_supply_tells_its_phases(string system, bool three) =>
        Assert.Equal(three, Holds("three-phase", new Fact.Supply { System = system }));

    /// <summary>Who takes over sees all three currents, and of other tests what they showed last.</summary>
    [Fact]
    public void The_card_names_all_three_lines()
    {
        var card = Judge(Role.Manager, Shock, Amps(55), Amps(62), Amps(58), Amps(70), new Fact.BenchTest { Test = "frame-heat", Value = 80, Unit = "celsius" }, new Fact.BenchTest { Test = "frame-heat", Value = 95, Unit = "celsius" }).TellThem;
        var found = Assert.Single(Spoken.Lines(card), line => line.Contains("62 A", StringComparison.Ordinal));
        Assert.Contains("62 A, 58 A, 70 A", found, StringComparison.Ordinal);
        Assert.Contains("95 °C", found, StringComparison.Ordinal);
        Assert.DoesNotContain("80 °C", found, StringComparison.Ordinal);

        static Fact Amps(double value) => new Fact.BenchTest { Test = "line-currents", Value = value, Unit = "amp" };
    }

    [Theory]
    [InlineData("converter", true)]
    [InlineData("mains", false)]
    public void A_converter_is_warned_of(string fed, bool warned) =>
        Assert.Equal(warned, Holds("converter-fed", new Fact.Choice { Question = "fed-by", Option = fed }));

    [Theory]
    [InlineData(600, false)]
    [InlineData(601, true)]
    public void Above_600_volts_begins_above_600(double volts, bool above)
    {
        Assert.Equal(above, Holds("above-600-volts", new Fact.Supply { Volts = volts }));
        Assert.Equal(above, Holds("above-600-volts", new Fact.Plate { Field = "volts", Value = PlateValue.Of(volts) }));
    }

    [Theory]
    [InlineData(400.0, false)]
    [InlineData(690.0, true)]
    [InlineData(null, false)]
    public void With_a_choice_of_volts_on_the_plate_the_supply_tells_whether_it_is_above_600(double? supply, bool above)
    {
        var plate = new Fact.Plate { Field = "volts", Value = PlateValue.Of(400, 690) };
        Assert.Equal(above, supply is { } volts ? Holds("above-600-volts", plate, new Fact.Supply { Volts = volts }) : Holds("above-600-volts", plate));
        Assert.True(Holds("above-600-volts", new Fact.Plate { Field = "volts", Value = PlateValue.Of(2300, 4160) }, new Fact.Supply { Volts = 400 }));
    }

    [Theory]
    [InlineData(115, 230, true)]
    [InlineData(230, 230, false)]
    [InlineData(230, 115, false)]
    public void Links_for_far_less_than_it_is_fed_are_warned_of(double plate, double supply, bool warned)
    {
        var gate = Judge(Role.Technician, new Fact.Plate { Field = "volts", Value = PlateValue.Of(plate) }, new Fact.Supply { Volts = supply });
        Assert.Equal(warned, gate.Holding.Contains("fed-too-high"));
    }

    [Theory]
    [InlineData(1.0, false)]
    [InlineData(0.99, true)]
    public void Insulation_is_low_below_its_limit_by_the_latest_reading(double megohms, bool low)
    {
        Assert.Equal(low, Holds("insulation-low", new Fact.Insulation { Megohms = megohms }));
        Assert.False(Holds("insulation-low", new Fact.Insulation { Megohms = 0.1 }, new Fact.Insulation { Megohms = 50 }));
    }

    [Fact]
    public void A_danger_that_was_heard_stops_until_isolation_that_comes_after_it()
    {
        var heard = SafetyGate.Heard("smoke", "it smokes");
        Assert.Equal(new Fact.Choice { Question = "danger.smoke", Option = "said", Span = "it smokes" }, heard);
        Assert.False(Judge(Role.Technician, heard, Isolated, new Fact.Choice { Question = "installed", Option = "fixed" }).Stop);
        Assert.True(Judge(Role.Technician, new Fact.Choice { Question = "installed", Option = "fixed" }, Isolated, heard).Stop);
        Assert.DoesNotContain("shock-felt", Judge(Role.Technician, heard).Holding);
    }

    [Fact]
    public void A_danger_in_the_words_for_the_machine_stops_until_isolation_that_comes_after_them()
    {
        var burning = new Fact.Application { Text = "the brine pump, it is smoking" };
        Assert.True(Judge(Role.Technician, Isolated, burning).Stop);
        Assert.False(Judge(Role.Technician, burning, Isolated).Stop);
        Assert.True(Judge(Role.Technician, burning, new Fact.Application { Text = "the brine pump" }).Stop);
    }

    [Fact]
    public void A_danger_that_is_told_twice_counts_from_the_last_time()
    {
        Assert.True(Judge(Role.Technician, GateTable.Seen("got-wet"), Isolated, SafetyGate.Heard("water")).Stop);
        Assert.True(Judge(Role.Technician, SafetyGate.Heard("water"), Isolated, GateTable.Seen("got-wet")).Stop);
        Assert.False(Judge(Role.Technician, SafetyGate.Heard("water"), GateTable.Seen("got-wet"), Isolated).Stop);
    }

    [Fact]
    public void A_condition_that_does_not_renew_leaves_what_was_confirmed_before_it()
    {
        var turning = GateTable.Seen("starts-if-spun");
        Assert.True(Judge(Role.Technician, Guarded, turning).Opens("first-start"));
        Assert.True(Judge(Role.Technician, NoCapacitor, Guarded, turning).Opens("first-start"));
        Assert.True(Judge(Role.Technician, Guarded).Opens("first-start"));
    }

    [Fact]
    public void Guards_lapse_when_it_is_isolated_anew_and_not_with_power()
    {
        Assert.Equal(["shaft-free-guarded"], Judge(Role.Technician, Guarded, Isolated).WaitsFor("first-start"));
        Assert.True(Judge(Role.Technician, Isolated, Guarded).Opens("first-start"));
        Assert.True(Judge(Role.Technician, Guarded, new Fact.Running { Amps = 4 }).Opens("measure-live"));
    }

    [Fact]
    public void What_neither_power_nor_isolation_changes_stays_confirmed()
    {
        Assert.DoesNotContain("earth-proved", Judge(Role.Technician, Shock, EarthProved, Isolated).WaitsFor("first-start"));
        Assert.DoesNotContain("earth-proved", Judge(Role.Technician, Shock, EarthProved, new Fact.Running { Amps = 4 }, Isolated).WaitsFor("first-start"));
    }

    [Fact]
    public void I_can_not_confirms_nothing() =>
        Assert.Contains("earth-proved", Judge(Role.Technician, Shock, Isolated, EarthProved with { Confirmed = false }).WaitsFor("first-start"));

    [Fact]
    public void A_reading_right_after_the_danger_counts_and_one_right_before_it_does_not()
    {
        foreach (var (reading, proves) in new (Fact, string)[] { (new Fact.Insulation { Megohms = 500 }, "insulation-passed"), (new Fact.Reading { From = "earth", To = "frame", Ohms = 0.2 }, "earth-proved"), (EarthProved, "earth-proved") })
        {
            Assert.DoesNotContain(proves, Judge(Role.Technician, Shock, reading).WaitsFor("first-start"));
            Assert.Contains(proves, Judge(Role.Technician, reading, Shock).WaitsFor("first-start"));
        }
    }

    [Fact]
    public void Where_gas_is_smelled_nobody_is_asked_to_isolate_whatever_else_is_wrong()
    {
        Assert.True(Judge(Role.Technician, Shock).Stop);
        Assert.False(Judge(Role.Technician, Shock, SafetyGate.Heard("gas-smelled")).Stop);
    }

    /// <summary>What opens the gate, what the test shows and what is said of it go by one limit in each region.</summary>
    [Theory]
    [InlineData(Region.NorthAmerica, 0.5, "pass", "good")]
    [InlineData(Region.NorthAmerica, 0.51, "marginal", "weak")]
    [InlineData(Region.NorthAmerica, 1.01, "fail", "open")]
    [InlineData(Region.Iec, 0.3, "pass", "good")]
    [InlineData(Region.Iec, 0.31, "marginal", "weak")]
    [InlineData(Region.Iec, 1, "marginal", "weak")]
    [InlineData(Region.Iec, 1.01, "fail", "open")]
    public void The_earth_is_judged_alike_wherever_it_is_judged(Region region, double ohms, string verdict, string outcome)
    {
        Fact[] readings = [new Fact.Reading { From = "earth", To = "frame", Ohms = ohms }, new Fact.BenchTest { Test = "earth-continuity", Value = ohms }];
        Assert.Equal(verdict, EarthJudge.Judge(Knowledge, ohms, region).Value!.Verdict);
        Assert.Equal(outcome, Outcomes.Of(Knowledge.Tests["earth-continuity"], [ohms], CaseFile.From(new CaseOpening(Role.Technician, region), [])));
        Assert.All(readings, reading => Assert.NotEqual(verdict == "pass", new SafetyGate(Knowledge).Judge(CaseFile.From(new CaseOpening(Role.Technician, region), [Shock, Isolated, reading])).WaitsFor("first-start").Contains("earth-proved")));
    }

    [Fact]
    public void A_beep_proves_the_earth_and_an_open_reading_or_another_test_does_not()
    {
        Assert.DoesNotContain("earth-proved", Judge(Role.Technician, Shock, Isolated, new Fact.Reading { From = "frame", To = "earth", Short = true }).WaitsFor("first-start"));
        Assert.Contains("earth-proved", Judge(Role.Technician, Shock, Isolated, new Fact.Reading { From = "frame", To = "earth", Open = true }).WaitsFor("first-start"));
        Assert.Contains("earth-proved", Judge(Role.Technician, Shock, Isolated, new Fact.BenchTest { Test = "earth-continuity", Value = 0.1 }, new Fact.BenchTest { Test = "earth-continuity", Outcome = "open" }).WaitsFor("first-start"));
        Assert.Contains("earth-proved", Judge(Role.Technician, Shock, Isolated, new Fact.BenchTest { Test = "winding-balance", Value = 0.01 }).WaitsFor("first-start"));
        Assert.Contains("earth-proved", Judge(Role.Technician, Shock, Isolated, new Fact.Reading { From = "1", To = "frame", Ohms = 0.1 }).WaitsFor("first-start"));
        Assert.Contains("earth-proved", Judge(Role.Technician, new Fact.Reading { From = "frame", To = "earth", Ohms = 0.1 }, Shock, Isolated).WaitsFor("first-start"));
    }

    public static TheoryData<string, bool, bool, Fact[]> Capacitors() => new()
    {
        { "nothing is known", false, true, [] },
        { "swollen", true, false, [GateTable.Seen("capacitor-swollen")] },
        { "on the plate", true, false, [new Fact.Plate { Field = "capacitor", Value = PlateValue.Parse("run") }] },
        { "microfarads on the plate", true, false, [new Fact.Plate { Field = "microfarads", Value = PlateValue.Of(30) }] },
        { "none was found", false, false, [NoCapacitor] },
        { "none for the start, and there may be one to run", false, true, [NoCapacitor with { Use = "start" }] },
        { "none for the start, on a kind that has one to run", true, false, [NoCapacitor with { Use = "start" }, new Fact.Choice { Question = "family", Option = "psc" }] },
        { "neither for the start nor to run", false, false, [NoCapacitor with { Use = "start" }, NoCapacitor with { Use = "run" }] },
        { "a layout with one", true, false, [new Fact.Choice { Question = "layout", Option = "capacitor-start-4" }] },
        { "a layout without", false, false, [new Fact.Choice { Question = "layout", Option = "split-phase-4" }] },
        { "a kind with one", true, false, [new Fact.Choice { Question = "family", Option = "psc" }] },
        { "a kind without", false, false, [new Fact.Choice { Question = "family", Option = "shaded-pole" }] },
        { "three phases on the plate", false, false, [new Fact.Plate { Field = "phases", Value = PlateValue.Of(3) }] },
        { "one phase on the plate", false, true, [new Fact.Plate { Field = "phases", Value = PlateValue.Of(1) }] },
    };

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void Whether_there_is_a_capacitor_is_told_by_what_is_known(string known, bool present, bool possible, Fact[] facts)
    {
        var holding = Judge(Role.Technician, facts).Holding;
        Assert.True((holding.Contains("capacitor"), holding.Contains("capacitor-possible")) == (present, possible), known);
    }

    [Fact]
    public void A_task_is_allowed_or_closed_and_waits_for_its_own()
    {
        var gate = Judge(Role.Technician, NoCapacitor, Isolated);
        Assert.Empty(gate.Allowed.Intersect(gate.Closed.Select(closed => closed.Task)));
        Assert.Equal(Knowledge.GateTasks.Keys.Order(), gate.Allowed.Concat(gate.Closed.Select(closed => closed.Task)).Order());
        Assert.Equal(["shaft-free-guarded"], gate.WaitsFor("first-start"));
        Assert.Equal(["licensed"], gate.WaitsFor("fixed-wiring"));
        Assert.Empty(gate.WaitsFor("measure-dead"));
        Assert.Empty(gate.WaitsFor("sealed-circuit"));
    }

    [Fact]
    public void The_weightiest_condition_gives_the_reason_and_says_who_takes_over()
    {
        var gate = Judge(Role.Homeowner, new Fact.Application { Text = "the pool pump" }, GateTable.Seen("smoke-or-burnt-smell"));
        Assert.Equal((true, "motor-shop", "gate.condition.smoke"), (gate.ReferOut, gate.ReferTo, gate.Reason?.Id));
        Assert.All(gate.Closed.Where(closed => Knowledge.GateTasks[closed.Task].Group is "dead" or "powered"), closed => Assert.Equal("gate.condition.smoke", closed.Reason.Id));
        Assert.Equal(["stop-smoke-or-fire", "stop-water"], gate.Cautions.Select(caution => caution.Id).Where(id => id.StartsWith("stop", StringComparison.Ordinal)));
        Assert.Contains(gate.Cautions, caution => caution.Id == "call-motor-shop");
    }

    [Fact]
    public void What_stops_gives_the_reason_before_what_refers_and_that_before_what_only_closes()
    {
        var pool = new Fact.Application { Text = "the pool pump" };
        Assert.Equal("gate.condition.shock-felt", Judge(Role.Technician, pool, Shock).Reason?.Id);
        Assert.Equal("gate.condition.pool", Judge(Role.Technician, NoCapacitor, pool, Shock, Isolated).Reason?.Id);
        Assert.Equal("gate.condition.rotating-parts", Judge(Role.Technician, NoCapacitor, GateTable.Seen("hums-no-start")).Reason?.Id);
        Assert.Null(Judge(Role.Technician, NoCapacitor, GateTable.Seen("wrong-direction")).Reason);
        Assert.Null(Judge(Role.Homeowner, NoCapacitor).Reason);
    }

    [Fact]
    public void Who_is_refused_without_being_sent_on_is_sent_to_nobody()
    {
        var gate = Judge(Role.Technician, NoCapacitor, new Fact.Insulation { Megohms = 0.4 });
        Assert.Equal((false, (string?)null, "gate.condition.insulation-low"), (gate.ReferOut, gate.ReferTo, gate.Closed.Single(closed => closed.Task == "first-start").Reason.Id));
        Assert.DoesNotContain(gate.Cautions, caution => caution.Id.StartsWith("call-", StringComparison.Ordinal));
    }

    [Fact]
    public void A_doubted_symptom_holds_from_where_it_was_said()
    {
        Fact.Choice[] said = [new() { Question = Fact.Choice.Doubted + "got-wet", Option = "yes" }, new() { Question = "installed", Option = "plugged" }];
        var signs = new CaseSigns(Knowledge, CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [NoCapacitor, .. said]));
        Assert.Equal(1, signs.Position(new() { Symptom = "got-wet" }, "technician"));
        Assert.Null(signs.Position(new() { Symptom = "runs-hot" }, "technician"));
    }

    [Fact]
    public void What_waits_is_told_in_the_order_in_which_it_is_asked()
    {
        var waits = Judge(Role.Technician, new Fact.Capacitor { Use = "run" }).Conditions.Single(condition => condition.Task == "measure-dead");
        Assert.Equal(["isolated", "capacitor-discharged"], waits.Needs);
        Assert.Equal("First: isolate, lock, and prove dead; discharge the capacitor through a resistor and read under 5 V.", Trade.Knowledge.Sentences.Render(waits.Text));
    }

    [Fact]
    public void The_caution_of_isolation_stands_where_one_task_waits_for_it_and_not_where_none_does()
    {
        Assert.Contains(Judge(Role.Homeowner, NoCapacitor).Cautions, caution => caution.Id == "isolate-and-prove-dead");
        Assert.DoesNotContain(Judge(Role.Homeowner, NoCapacitor, Isolated).Cautions, caution => caution.Id == "isolate-and-prove-dead");
        var both = Judge(Role.Technician, new Fact.Capacitor { Use = "run" }).Cautions.Select(caution => caution.Id).ToList();
        Assert.Contains("isolate-and-prove-dead", both);
        Assert.Contains("discharge-capacitor", both);
    }

    [Fact]
    public void The_card_tells_the_plate_and_all_that_was_seen_in_order()
    {
        var gate = Judge(
            Role.Technician,
            new Fact.Plate { Field = "volts", Value = PlateValue.Of(230) }, new Fact.Plate { Field = "rpm", Value = PlateValue.Of(1440) },
            GateTable.Seen("trips-at-once"), GateTable.Seen("hums-no-start"));
        var card = gate.TellThem.Select(line => Knowledge.Sentences.Render(line, Role.Technician)).ToList();
        Assert.Equal("Plate: speed 1440 rpm, volts 230 V.", card[0]);
        var seen = new[] { Knowledge.Symptoms["trips-at-once"].Name, Knowledge.Symptoms["hums-no-start"].Name }.Order(StringComparer.Ordinal);
        Assert.Equal($"It does this: {string.Join("; ", seen)}.", card[1]);
        Assert.DoesNotContain(Judge(Role.Technician).TellThem, line => line.Id is "safety.card-does" or "safety.card-does-not");
    }

    [Fact]
    public void The_card_tells_what_each_test_showed_last()
    {
        var card = Judge(
            Role.Homeowner,
            new Fact.BenchTest { Test = "turn-by-hand", Outcome = "stiff" }, new Fact.BenchTest { Test = "turn-by-hand", Outcome = "free" },
            new Fact.BenchTest { Test = "earth-continuity", Value = 0.2, Unit = "ohm" }, new Fact.BenchTest { Test = "probe-zero", Value = 0.1, Unit = "ohm" }).TellThem;
        Assert.Equal("Looked at and measured: turning the shaft by hand (turns freely and coasts), frame to earth pin (0.2 Ω).", Knowledge.Sentences.Render(Assert.Single(card, line => line.Id == "safety.card-found"), Role.Homeowner));
        Assert.DoesNotContain(Judge(Role.Homeowner).TellThem, line => line.Id == "safety.card-found");
    }

    [Fact]
    public void A_caution_speaks_at_home_of_nothing_that_nobody_has_at_home() => Assert.All(
        Knowledge.Cautions.Values.Where(caution => caution.Homeowner is not null),
        caution => Assert.DoesNotContain("tester", Knowledge.Sentences.Render(Statement.Named($"caution.{caution.Id}"), Role.Homeowner), StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void At_home_nobody_is_asked_for_links_that_lie_in_a_closed_box()
    {
        string[] asked = ["test.plate.ask", .. Knowledge.Tests["plate"].Outcomes.Select(outcome => $"test.plate.reading-{outcome.Id}")];
        Assert.All(asked, id => Assert.DoesNotContain("link", Knowledge.Sentences.Render(Statement.Named(id), Role.Homeowner), StringComparison.Ordinal));
        Assert.All(asked, id => Assert.DoesNotContain("join", Knowledge.Sentences.Render(Statement.Named(id), Role.Homeowner), StringComparison.Ordinal));
    }

    [Fact]
    public void A_state_holds_from_the_beginning_so_that_what_was_confirmed_stays()
    {
        var condition = Knowledge.GateConditions["three-phase"] with { Id = "made-up", Stops = true, Renews = true };
        var gate = new SafetyGate(Knowledge with { GateConditions = new Dictionary<string, GateCondition> { [condition.Id] = condition } });
        Assert.False(gate.Judge(CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), [Isolated, new Fact.Supply { Phases = 3 }])).Stop);
        Assert.True(gate.Judge(CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), [new Fact.Supply { Phases = 3 }])).Stop);
    }

    [Theory]
    [InlineData(Role.Homeowner, "licensed-electrician")]
    [InlineData(Role.Manager, "licensed-electrician")]
    [InlineData(Role.Apprentice, null)]
    [InlineData(Role.Technician, null)]
    public void Whoever_is_kept_off_is_told_for_whom_the_machine_waits(Role role, string? waitsFor)
    {
        Assert.Equal(waitsFor, Judge(role, Shock).KeptFor);
        Assert.Null(Judge(role, NoCapacitor).KeptFor);
    }

    [Fact]
    public void The_machine_waits_for_the_first_who_is_named_and_for_nobody_where_nobody_is()
    {
        var condition = Knowledge.GateConditions["shock-felt"];
        var nameless = condition.Rows[0];
        Assert.Null(nameless.ReferTo);
        Assert.Equal("motor-shop", KeptFor([nameless, nameless with { ReferTo = "motor-shop" }, nameless with { ReferTo = "licensed-electrician" }]));
        Assert.Null(KeptFor([nameless]));

        string? KeptFor(IReadOnlyList<GateRow> rows) => new SafetyGate(Knowledge with { GateConditions = new Dictionary<string, GateCondition> { [condition.Id] = condition with { Rows = rows } } })
            .Judge(CaseFile.From(new CaseOpening(Role.Homeowner, Region.Iec), [Shock])).KeptFor;
    }

    [Fact]
    public void A_role_that_is_none_is_refused_and_so_is_no_case()
    {
        Assert.Contains("does not know this role", Assert.Throws<ArgumentOutOfRangeException>(() => Judge((Role)99)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("file", () => new SafetyGate(Knowledge).Judge(null!));
    }

    private static bool Holds(string condition, params Fact[] facts) => Judge(Role.Technician, facts).Holding.Contains(condition);

    private static Gate Judge(Role role, params Fact[] facts) => new SafetyGate(Knowledge).Judge(CaseFile.From(new CaseOpening(role, Region.Iec), facts));
}
