using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;

namespace WireCoach.Rules.Tests.Safety;

public sealed class SafetyGateTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly SafetyGate Guard = new(Knowledge);

    /// <summary>Everything that can be confirmed, said last, so that only refusals stay closed.</summary>
    private static readonly Fact[] AllConfirmed = [.. Knowledge.Confirmations.Keys.Select(id => new Fact.Confirm { Id = id })];

    public static TheoryData<string, string, string> Cells() => Cells(_ => true);

    /// <summary>"I can't" is taken back by a later confirmation; it then is no condition any more.</summary>
    public static TheoryData<string, string, string> CellsThatStay() => Cells(condition => !condition.Contains("cannot", StringComparison.Ordinal));

    private static TheoryData<string, string, string> Cells(Func<string, bool> wanted)
    {
        var cells = new TheoryData<string, string, string>();
        foreach (var (condition, technician, homeowner, apprentice, manager) in GateTable.Rows.Where(row => wanted(row.Condition)))
        {
            cells.Add(condition, "technician", technician);
            cells.Add(condition, "homeowner", homeowner);
            cells.Add(condition, "apprentice", apprentice);
            cells.Add(condition, "manager", manager);
        }

        return cells;
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void Each_cell_is_as_the_paper_table_says(string condition, string role, string letters)
    {
        var gate = Judge(role, [.. GateTable.Facts(condition)]);
        var read = string.Concat(GateTable.Tasks.Select(task => gate.Opens(task) ? 'A' : gate.CouldOpen(task) ? 'C' : 'R'));
        Assert.Equal(letters, read);
    }

    [Theory]
    [MemberData(nameof(CellsThatStay))]
    public void What_is_confirmed_opens_what_waits_and_nothing_that_is_refused(string condition, string role, string letters)
    {
        var gate = Judge(role, [.. GateTable.Facts(condition), .. AllConfirmed]);
        var read = string.Concat(GateTable.Tasks.Select(task => gate.Opens(task) ? 'A' : 'R'));
        Assert.Equal(letters.Replace('C', 'A'), read);
    }

    [Fact]
    public void No_path_opens_a_task_that_the_table_refuses()
    {
        var conditions = GateTable.Rows.Where(row => !row.Condition.Contains("cannot", StringComparison.Ordinal)).ToArray();
        var path = Gen.Select(
            Gen.Int[0, GateTable.Roles.Length - 1], Gen.Int[0, conditions.Length - 1].Array[0, 4], Gen.Int[0, AllConfirmed.Length - 1].Array[0, 12], Gen.Bool.Array[20]);
        path.Sample(
            (role, held, confirmed, interleave) =>
            {
                var facts = new List<Fact>();
                var (at, said) = (0, 0);
                foreach (var takeCondition in interleave)
                {
                    if (takeCondition && at < held.Length)
                    {
                        facts.AddRange(GateTable.Facts(conditions[held[at++]].Condition));
                    }
                    else if (said < confirmed.Length)
                    {
                        facts.Add(AllConfirmed[confirmed[said++]]);
                    }
                }

                // a later "there is no capacitor" does not take an earlier one away, so the letters of every condition met still bind
                var gate = Judge(GateTable.Roles[role], [.. facts]);
                foreach (var index in held.Take(at))
                {
                    var letters = Letters(conditions[index], role);
                    for (var task = 0; task < GateTable.Tasks.Length; task++)
                    {
                        if (letters[task] == 'R' && conditions[index].Condition != "capacitor-unknown" && conditions[index].Condition != "insulation-low")
                        {
                            Assert.False(gate.CouldOpen(GateTable.Tasks[task]), $"{GateTable.Roles[role]} {GateTable.Tasks[task]} under {conditions[index].Condition}");
                        }
                    }
                }
            },
            iter: 3000);
    }

    [Fact]
    public void Nothing_that_touches_a_lead_is_open_before_isolation_is_confirmed()
    {
        foreach (var role in GateTable.Roles)
        {
            foreach (var row in GateTable.Rows)
            {
                var gate = Judge(role, [.. GateTable.Facts(row.Condition), .. AllConfirmed.Where(fact => fact.Id != "isolated")]);
                Assert.DoesNotContain(gate.Allowed, task => Knowledge.GateTasks[task].Group == "dead");
            }
        }
    }

    [Fact]
    public void Power_takes_the_isolation_back()
    {
        Fact[] dead = [new Fact.Capacitor { Use = "start" }, new Fact.Confirm { Id = "isolated" }, new Fact.Confirm { Id = "capacitor-discharged" }];
        Assert.True(Judge("technician", dead).Opens("measure-dead"));
        var ran = Judge("technician", [.. dead, new Fact.Running { Amps = 4 }]);
        Assert.False(ran.Opens("measure-dead"));
        Assert.Equal(["isolated", "capacitor-discharged"], ran.WaitsFor("measure-dead"));
        Assert.True(Judge("technician", [.. dead, new Fact.Running { Amps = 4 }, .. dead[1..]]).Opens("measure-dead"));
    }

    [Fact]
    public void A_live_test_counts_as_power()
    {
        var gate = Judge("technician", [new Fact.Confirm { Id = "isolated" }, new Fact.BenchTest { Test = "run-current", Value = 5 }]);
        Assert.Equal(["isolated"], gate.WaitsFor("measure-dead"));
    }

    [Fact]
    public void A_charged_capacitor_keeps_the_leads_closed()
    {
        var gate = Judge("technician", [new Fact.Capacitor { Use = "run" }, new Fact.Confirm { Id = "isolated" }]);
        Assert.Equal(["capacitor-discharged"], gate.WaitsFor("measure-dead"));
        Assert.Contains(gate.Cautions, caution => caution.Id == "discharge-capacitor");
    }

    [Theory]
    [InlineData("shock-from-frame", "stop-shock", "licensed-electrician")]
    [InlineData("smoke-or-burnt-smell", "stop-smoke-or-fire", "motor-shop")]
    [InlineData("got-wet", "stop-water", "motor-shop")]
    public void A_danger_word_stops_everything_and_comes_first(string symptom, string caution, string referTo)
    {
        foreach (var role in GateTable.Roles)
        {
            var gate = Judge(role, [new Fact.Confirm { Id = "isolated" }, GateTable.Seen(symptom)]);
            Assert.True(gate.Stop);
            Assert.Empty(gate.Allowed);
            Assert.Equal(caution, gate.Cautions[0].Id);
            Assert.NotNull(gate.Reason);
        }

        var home = Judge("homeowner", [GateTable.Seen(symptom)]);
        Assert.True(home.ReferOut);
        Assert.Equal(referTo, home.ReferTo);
    }

    [Fact]
    public void A_stop_ends_with_isolation_that_comes_after_it()
    {
        var gate = Judge("technician", [GateTable.Seen("shock-from-frame"), new Fact.Confirm { Id = "isolated" }]);
        Assert.False(gate.Stop);
        Assert.True(gate.Opens("measure-dead"));
        Assert.Equal(["shaft-free-guarded", "insulation-passed", "earth-proved"], gate.WaitsFor("measure-live"));
    }

    [Fact]
    public void Readings_prove_insulation_and_earth()
    {
        var gate = Judge(
            "technician",
            [
                GateTable.Seen("shock-from-frame"), new Fact.Confirm { Id = "isolated" }, new Fact.Insulation { Megohms = 200 },
                new Fact.Reading { From = "frame", To = "earth", Ohms = 0.2 }, new Fact.Confirm { Id = "shaft-free-guarded" },
            ]);
        Assert.True(gate.Opens("measure-live"));
    }

    [Fact]
    public void An_insulation_reading_from_before_the_water_proves_nothing()
    {
        var gate = Judge("technician", [new Fact.Insulation { Megohms = 200 }, GateTable.Seen("got-wet"), new Fact.Confirm { Id = "isolated" }]);
        Assert.Contains("insulation-passed", gate.WaitsFor("first-start"));
    }

    [Fact]
    public void Who_cannot_isolate_is_referred()
    {
        var gate = Judge("technician", [new Fact.Confirm { Id = "isolated", Confirmed = false }]);
        Assert.True(gate.ReferOut);
        Assert.Equal("licensed-electrician", gate.ReferTo);
        Assert.DoesNotContain("look", gate.Allowed);
    }

    [Fact]
    public void A_person_at_home_measures_ohms_only_where_no_capacitor_can_be()
    {
        Fact[] shadedPole = [new Fact.Choice { Question = "family", Option = "shaded-pole" }, new Fact.Confirm { Id = "isolated" }];
        Assert.True(Judge("homeowner", shadedPole).Opens("measure-dead"));
        Assert.False(Judge("homeowner", [new Fact.Confirm { Id = "isolated" }]).CouldOpen("measure-dead"));
        Assert.Contains(Judge("homeowner", []).Cautions, caution => caution.Id == "no-live-work");
    }

    [Fact]
    public void A_practice_motor_is_worked_as_a_technician_would_but_is_isolated_all_the_same()
    {
        var opening = new CaseOpening(Role.Apprentice, Region.NorthAmerica, Practice: true);
        Assert.Equal(["isolated"], Guard.Judge(CaseFile.From(opening, [])).WaitsFor("low-voltage-test"));
        Assert.True(Guard.Judge(CaseFile.From(opening, [new Fact.Confirm { Id = "isolated" }])).Opens("low-voltage-test"));
    }

    /// <summary>A sealed compressor has its capacitor, if any, in the box beside it.</summary>
    [Theory]
    [InlineData("sealed-compressor-3", true)]
    [InlineData("split-phase-4", false)]
    public void A_layout_without_a_capacitor_rules_one_out_only_where_its_kind_has_none(string layout, bool unknown) =>
        Assert.Equal(unknown, Judge("technician", [new Fact.Choice { Question = "layout", Option = layout }]).Holding.Contains("capacitor-possible"));

    [Theory]
    [InlineData(110, true)]
    [InlineData(50, false)]
    [InlineData(8, false)]
    public void A_frame_that_was_measured_live_is_a_shock_that_nobody_felt_yet(double volts, bool stops)
    {
        var gate = Judge("technician", [new Fact.BenchTest { Test = "frame-voltage", Value = volts, Unit = "volt" }, new Fact.Confirm { Id = "isolated" }]);
        Assert.Equal(stops, gate.Cautions.Any(caution => caution.Id == "stop-shock"));
        Assert.Equal(stops, gate.WaitsFor("first-start").Contains("earth-proved"));
    }

    [Fact]
    public void The_card_says_what_the_next_person_must_know()
    {
        var gate = Judge(
            "homeowner", [new Fact.Application { Text = "shelf conveyor at Fernhollow" }, GateTable.Seen("shock-from-frame"), new Fact.Symptom { Id = "lights-dim", Present = false }]);
        var card = gate.TellThem.Select(line => Knowledge.Sentences.Render(line, Role.Homeowner)).ToList();
        Assert.Equal(
            [
                "Machine: shelf conveyor at Fernhollow.",
                "It does this: a shock or a tingle from the frame.",
                "It does not do this: the lights dim when it starts.",
                "The frame was live, or somebody felt a shock from it: prove the earth and test the insulation before any power.",
                "Until they have seen it: no power, nothing bypassed, no larger fuse.",
            ],
            card);
    }

    [Fact]
    public void Every_sentence_of_the_gate_is_written()
    {
        foreach (var role in GateTable.Roles)
        {
            foreach (var row in GateTable.Rows)
            {
                var gate = Judge(role, [.. GateTable.Facts(row.Condition)]);
                Assert.All(
                    gate.Closed.Select(closed => closed.Reason).Concat(gate.Cautions.Select(caution => caution.Text)).Concat(gate.TellThem).Append(gate.Reason!).Where(said => said is not null),
                    said => Assert.NotEmpty(Knowledge.Sentences.Render(said, Role.Homeowner)));
            }
        }
    }

    private static string Letters((string Condition, string Technician, string Homeowner, string Apprentice, string Manager) row, int role) =>
        role switch { 0 => row.Technician, 1 => row.Homeowner, 2 => row.Apprentice, _ => row.Manager };

    private static Gate Judge(string role, Fact[] facts) => Guard.Judge(CaseFile.From(
        new CaseOpening(Enum.Parse<Role>(role, ignoreCase: true), Region.NorthAmerica), facts));

    /// <summary>What a few volts of a multimeter read is no insulation test, however many megohms; a warm winding passes with fewer.</summary>
    [Theory]
    [InlineData(30, 9.0, null, false)]
    [InlineData(30, 500.0, 15.0, true)] // 5.3 MΩ at 40 °C
    [InlineData(25, 500.0, 15.0, false)] // 4.4 MΩ at 40 °C
    [InlineData(8, 500.0, 60.0, true)]
    [InlineData(200, 500.0, null, true)]
    [InlineData(10, 500.0, null, false)]
    public void Insulation_opens_the_gate_only_by_a_reading_that_is_judged_a_pass(double megohms, double testVolts, double? celsius, bool opens)
    {
        var gate = Judge("technician", [GateTable.Seen("got-wet"), new Fact.Confirm { Id = "isolated" }, new Fact.Insulation { Megohms = megohms, TestVolts = testVolts, Celsius = celsius }]);
        Assert.Equal(!opens, gate.WaitsFor("first-start").Contains("insulation-passed"));
    }
}
