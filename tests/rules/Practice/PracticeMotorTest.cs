using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Practice;

public sealed class PracticeMotorTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    public static TheoryData<string> Ids() => [.. Knowledge.Layouts.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_same_seed_is_the_same_motor_to_the_last_reading(string layout)
    {
        for (var seed = 0; seed < 5; seed++)
        {
            Assert.Equal(Told(Motor(layout, null, seed)), Told(Motor(layout, null, seed)));
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Joined_as_its_table_says_it_runs_at_the_plates_volts_and_the_way_the_table_says(string layout)
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var motor = Motor(layout, null, seed);
            var form = Form(motor);
            foreach (var row in form.Connections.Where(row => !row.Starting))
            {
                var run = motor.Power(Joints(motor, row), Supply(motor, row));
                Assert.True(run.Outcome == "ran", $"{layout} {form.Form} seed {seed} {row.Id}: {run.Outcome} {run.Amps}");
                if (row.Rotation is { } rotation)
                {
                    var seenFromShaft = row.SeenFrom == "shaft-end" ? rotation : rotation == "clockwise" ? "counterclockwise" : "clockwise";
                    Assert.Equal(seenFromShaft, run.Direction);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_exchange_that_reverses_turns_it_round(string layout)
    {
        for (var seed = 0; seed < 8; seed++)
        {
            var motor = Motor(layout, null, seed);
            foreach (var row in Form(motor).Connections.Where(row => !row.Starting && row.ReverseSwap.Count > 0))
            {
                var swap = row.ReverseSwap.SelectMany(pair => new[] { (pair[0], pair[1]), (pair[1], pair[0]) }).ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal);
                var first = motor.Power(Joints(motor, row), Supply(motor, row));
                var second = motor.Power(Joints(motor, row, lead => swap.GetValueOrDefault(lead, lead)), Supply(motor, row));
                Assert.Equal("ran", second.Outcome);
                Assert.NotEqual(first.Direction, second.Direction);
            }

            foreach (var row in Form(motor).Connections.Where(row => !row.Starting && row.Lines.Count == 3))
            {
                var first = motor.Power(Joints(motor, row), Supply(motor, row));
                var second = motor.Power([.. Joints(motor, row).Select(joint => joint with { Conductor = joint.Conductor switch { "L1" => "L2", "L2" => "L1", var other => other } })], Supply(motor, row));
                Assert.NotEqual(first.Direction, second.Direction);
            }
        }
    }

    [Fact]
    public void Two_single_phase_lines_exchanged_change_nothing()
    {
        var motor = Motor("capacitor-start-dual-6", null, 3);
        var row = Form(motor).Connections[0];
        var exchanged = Joints(motor, row).Select(joint => joint with { Conductor = joint.Conductor switch { "L1" => "L2", "L2" => "L1", var other => other } }).ToList();
        Assert.Equal(motor.Power(Joints(motor, row), Supply(motor, row)).Direction, motor.Power(exchanged, Supply(motor, row)).Direction);
    }

    [Fact]
    public void One_run_half_turned_round_never_runs()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var motor = Motor("capacitor-start-dual-6", null, seed);
            foreach (var row in Form(motor).Connections)
            {
                var turned = motor.Power(Joints(motor, row, lead => lead switch { "T3" => "T4", "T4" => "T3", _ => lead }), Supply(motor, row));
                Assert.True(turned.Outcome is "hummed" or "tripped", $"seed {seed} {row.Id}: {turned.Outcome}");
            }
        }
    }

    [Fact]
    public void The_high_connection_on_the_low_supply_starts_slowly_and_the_low_one_on_the_high_supply_trips()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var motor = Motor("capacitor-start-dual-6", null, seed);
            var form = Form(motor);
            if (form.Connections.Count == 0)
            {
                continue;
            }

            var (high, low) = (form.Connections.First(row => row.For == "high"), form.Connections.First(row => row.For == "low"));
            Assert.Equal("slow", motor.Power(Joints(motor, high), Supply(motor, low)).Outcome);
            Assert.Equal("tripped", motor.Power(Joints(motor, low), Supply(motor, high)).Outcome);
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_sound_motor_reads_open_to_the_frame_and_above_twenty_megohms(string layout)
    {
        for (var seed = 0; seed < 5; seed++)
        {
            var motor = Motor(layout, null, seed);
            Assert.True(motor.Touch(motor.Tags[0], "frame", motor.Tags.Skip(1).ToList()).Value!.Open);
            Assert.True(motor.Insulation().Megohms > 20);
            Assert.False(motor.Touch("frame", "earth").Value!.Open);
        }
    }

    [Fact]
    public void A_start_branch_kicks_through_its_capacitor_and_reads_ohms_when_that_is_bridged()
    {
        var motor = Motor("capacitor-start-4", null, 1);
        var (from, to) = (motor.Truth.Leads["T5"], motor.Truth.Leads["T8"]);
        Assert.True(motor.Touch(from, to).Value is { Open: true, Kick: true });
        Assert.True(motor.Touch(from, to, capacitorsBridged: true).Value is { Open: false, Ohms: > 1 });
        var broken = Motor("capacitor-start-4", "start-capacitor-open", 1);
        Assert.True(broken.Touch(broken.Truth.Leads["T5"], broken.Truth.Leads["T8"]).Value is { Open: true, Kick: false });
        var stuck = Motor("capacitor-start-4", "start-switch-stuck-open", 1);
        Assert.True(stuck.Touch(stuck.Truth.Leads["T5"], stuck.Truth.Leads["T8"], capacitorsBridged: true).Value!.Open);
    }

    [Theory]
    [InlineData("capacitor-start-dual-6", "open-run-winding")]
    [InlineData("capacitor-start-dual-6", "grounded-winding")]
    [InlineData("three-phase-9-star", "open-phase-winding")]
    [InlineData("three-phase-12", "shorted-phase-turns")]
    [InlineData("split-phase-4", "open-start-winding")]
    [InlineData("dc-compound", "field-open")]
    [InlineData("sealed-compressor-3", "protector-open")]
    [InlineData("psc-2", "run-capacitor-open")]
    public void A_fault_shows_in_the_truth_and_somewhere_on_the_meter(string layout, string fault)
    {
        for (var seed = 0; seed < 10; seed++)
        {
            var broken = Motor(layout, fault, seed);
            Assert.Equal(fault, broken.Truth.Fault);
            Assert.NotEmpty(broken.Truth.FaultAt!);
            var shows = fault switch
            {
                "grounded-winding" => !broken.Touch(broken.Tags[0], "frame", broken.Tags.Skip(1).ToList()).Value!.Open && broken.Insulation().Megohms < 1,
                "run-capacitor-open" => broken.Power(Joints(broken, Form(broken).Connections[0]), Supply(broken, Form(broken).Connections[0])).Outcome == "hummed",
                "protector-open" => broken.Touch(broken.Truth.Leads["C"], broken.Truth.Leads["R"]).Value!.Open && !broken.Touch(broken.Truth.Leads["S"], broken.Truth.Leads["R"]).Value!.Open,
                "shorted-phase-turns" => broken.Truth.Ohms.Values.Min() < 0.9 * broken.Truth.Ohms.Values.Max(),
                _ => broken.Truth.Ohms[broken.Truth.FaultAt!] is null,
            };
            Assert.True(shows, $"{layout} {fault} {seed}");
        }
    }

    [Theory]
    [InlineData("dc-shunt", true)]
    [InlineData("dc-compound", true)]
    [InlineData("dc-permanent-magnet", true)]
    [InlineData("series-commutator", false)]
    [InlineData("three-phase-6", false)]
    public void The_plate_of_a_motor_for_direct_current_says_so(string layout, bool direct)
    {
        var phases = Motor(layout, null, 4).Opening().OfType<Fact.Plate>().Single(plate => plate.Field == "phases").Value.Numbers;
        Assert.Equal(direct, phases is [0]);
    }

    /// <summary>Without its field the armature only takes the current that its ohms allow; with a series field left it runs away.</summary>
    [Fact]
    public void A_motor_that_lost_its_shunt_field_trips_or_runs_away()
    {
        for (var seed = 0; seed < 10; seed++)
        {
            foreach (var layout in new[] { "dc-shunt", "dc-compound" })
            {
                var (lost, sound) = (Motor(layout, "field-open", seed), Motor(layout, null, seed));
                var run = lost.Power(Joints(lost, Form(lost).Connections[0]), Supply(lost, Form(lost).Connections[0]));
                var good = sound.Power(Joints(sound, Form(sound).Connections[0]), Supply(sound, Form(sound).Connections[0]));
                Assert.True(good.Outcome == "ran" && good.Rpm < 1.2 * Plate(sound, "rpm"));
                Assert.True(lost.Truth.FaultAt == "series-field" ? run.Outcome == "nothing"
                    : layout == "dc-shunt" ? run.Outcome == "tripped"
                    : run is { Outcome: "ran" } && run.Rpm > 1.5 * Plate(lost, "rpm"), $"{layout} {seed} {lost.Truth.FaultAt}: {run.Outcome} {run.Rpm}");
            }
        }
    }

    [Theory]
    [InlineData("three-phase-4", "open-phase-winding", 5, 8)]
    [InlineData("split-phase-4", "open-start-winding", 2, 8)]
    [InlineData("psc-3", "open-start-winding", 1, 4)]
    public void A_motor_that_stands_hums_and_draws_what_such_motors_draw(string layout, string fault, double least, double most)
    {
        for (var seed = 0; seed < 10; seed++)
        {
            var motor = Motor(layout, fault, seed);
            var row = Form(motor).Connections[0];
            var run = motor.Power(Joints(motor, row), Supply(motor, row));
            Assert.Equal("hummed", run.Outcome);
            Assert.InRange(run.Amps!.Value / Plate(motor, "amps"), least, most);
        }
    }

    [Theory]
    [InlineData("two-speed-6", "slow", "fast", 0.5)]
    [InlineData("two-speed-two-winding-6", "first-winding", "second-winding", 0.667)]
    public void The_slow_speed_is_slower(string layout, string slow, string fast, double share)
    {
        var motor = Motor(layout, null, 4);
        double Rpm(string speed) => Form(motor).Connections.First(row => row.For == speed) is var row ? motor.Power(Joints(motor, row), Supply(motor, row)).Rpm!.Value : 0;
        Assert.InRange(Rpm(slow) / Rpm(fast), share - 0.01, share + 0.01);
    }

    /// <summary>A path that drops most of the volts leaves nothing for the shaft.</summary>
    [Theory]
    [InlineData("series-commutator")]
    [InlineData("dc-shunt")]
    [InlineData("dc-compound")]
    [InlineData("dc-permanent-magnet")]
    public void Coils_behind_brushes_leave_volts_for_the_shaft(string layout)
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var motor = Motor(layout, null, seed);
            var path = Form(motor).Coils.Where(coil => coil.Role is "armature" or "series-field").Sum(coil => motor.Truth.Ohms[coil.Id]!.Value);
            Assert.True(path * Plate(motor, "amps") < 0.4 * Plate(motor, "volts"), $"{seed}: {path}");
            Assert.All(Form(motor).Coils.Where(coil => coil.Role == "shunt-field"), coil => Assert.True(Plate(motor, "volts") / motor.Truth.Ohms[coil.Id]!.Value < 0.25 * Plate(motor, "amps")));
        }
    }

    [Fact]
    public void Two_voltages_stand_on_the_plate_of_a_motor_that_is_joined_for_two()
    {
        foreach (var form in Knowledge.Layouts["two-value-capacitor"].Forms())
        {
            var motor = Enumerable.Range(0, 500).Select(seed => Motor("two-value-capacitor", null, seed)).First(motor => motor.Truth.Form == form.Form);
            var volts = motor.Opening().OfType<Fact.Plate>().Single(plate => plate.Field == "volts").Value.Numbers;
            Assert.Equal(form.Connections.Select(row => row.VoltsShare).Distinct().Count(), volts.Count);
        }
    }

    [Fact]
    public void An_insulation_tester_shows_no_digits_that_it_has_not()
    {
        Assert.Equal(0, Motor("split-phase-4", "grounded-winding", 4).Insulation().Megohms);
        Assert.All(Enumerable.Range(0, 50).Select(seed => Motor("split-phase-4", null, seed).Insulation().Megohms), megohms => Assert.InRange($"{megohms}".Replace(".", "", StringComparison.Ordinal).TrimEnd('0').Length, 1, 3));
    }

    private static double Plate(PracticeMotor motor, string field) => motor.Opening().OfType<Fact.Plate>().Single(plate => plate.Field == field).Value.Numbers[0];

    [Fact]
    public void A_start_winding_that_is_open_leaves_it_humming()
    {
        var motor = Motor("capacitor-start-dual-6", "open-start-winding", 4);
        var row = Form(motor).Connections.First(row => row.For == "low");
        Assert.Equal("hummed", motor.Power(Joints(motor, row), Supply(motor, row)).Outcome);
    }

    /// <summary>Rare forms among them: with protectors, without a capacitor, with a switch outside.</summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_form_of_a_layout_runs_by_its_own_table(string layout)
    {
        foreach (var form in Knowledge.Layouts[layout].Forms())
        {
            var motor = Enumerable.Range(0, 2000).Select(seed => Motor(layout, null, seed)).First(motor => motor.Truth.Form == form.Form);
            Assert.All(form.Connections.Where(row => !row.Starting), row =>
            {
                var run = motor.Power(Joints(motor, row), Supply(motor, row));
                Assert.Equal(("ran", "shaft-end", Supply(motor, row).Volts), (run.Outcome, run.SeenFrom, run.Volts));
                Assert.True(run.Amps > 0 && run.Amps <= motor.Opening().OfType<Fact.Plate>().Single(plate => plate.Field == "amps").Value.Numbers.Max());
            });
        }
    }

    [Theory]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("three-phase-6")]
    [InlineData("dc-shunt")]
    public void The_earth_conductor_carries_nothing_and_a_line_alone_neither(string layout)
    {
        var motor = Motor(layout, null, 2);
        var row = Form(motor).Connections.First(row => !row.Starting);
        var (joints, supply) = (Joints(motor, row), Supply(motor, row));
        var run = motor.Power(joints, supply);
        Assert.All(["PE", "earth"], conductor => Assert.Equal(run, motor.Power([.. joints, new Fact.Joint { Leads = ["frame"], Conductor = conductor }], supply)));
        Assert.Equal(("nothing", 0), (motor.Power([joints[0]], supply).Outcome, motor.Power([joints[0]], supply).Amps));
        Assert.Equal("nothing", motor.Power([], supply).Outcome);
        var shorted = motor.Power([.. joints, new Fact.Joint { Leads = [joints[0].Leads[0], joints[1].Leads[0]] }], supply);
        Assert.Equal(("tripped", null, null, null), (shorted.Outcome, shorted.Amps, shorted.Rpm, shorted.Direction));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_coupling_at_rest_lies_where_the_knowledge_says(string layout)
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var truth = Motor(layout, null, seed).Truth;
            Assert.True(truth.OnOwnPoles ? truth.Coupling < 0.25 : truth.Coupling is >= 0.40 and <= 0.66, $"{layout} {seed}: {truth.Coupling}");
        }
    }

    [Fact]
    public void Without_a_layout_every_layout_comes_up_in_time() =>
        Assert.Equal(Knowledge.Layouts.Count, Enumerable.Range(0, 1500).Select(seed => Motor(null, null, seed).Truth.Layout).Distinct(StringComparer.Ordinal).Count());

    internal static PracticeMotor Motor(string? layout, string? fault, int seed) => PracticeMotor.Make(Knowledge, layout, fault, seed).Value!;

    internal static Layout Form(PracticeMotor motor) => Knowledge.Layouts[motor.Truth.Layout].Forms().Single(form => form.Form == motor.Truth.Form);

    internal static IReadOnlyList<Fact.Joint> Joints(PracticeMotor motor, LayoutConnection row, Func<string, string>? rename = null, IReadOnlyDictionary<string, string>? leads = null)
    {
        leads ??= motor.Truth.Leads;
        IReadOnlyList<string> Tags(IEnumerable<string> marks) => [.. marks.Select(mark => leads[rename?.Invoke(mark) ?? mark])];
        return
        [
            .. row.Lines.Select(line => new Fact.Joint { Leads = Tags(line.Value), Conductor = line.Key }),
            .. row.Joints.Select(joint => new Fact.Joint { Leads = Tags(joint) }),
        ];
    }

    internal static Fact.Supply Supply(PracticeMotor motor, LayoutConnection row)
    {
        var low = motor.Opening().OfType<Fact.Plate>().Single(plate => plate.Field == "volts").Value.Numbers[0];
        return new() { Volts = low * row.VoltsShare, Phases = row.Lines.Count == 3 ? 3 : 1 };
    }

    private static string Told(PracticeMotor motor) => JsonSerializer.Serialize(new
    {
        motor.Machine,
        Opening = motor.Opening(),
        motor.Truth,
        Readings = motor.Tags.SelectMany(one => motor.Tags.Where(other => other != one).Select(other => motor.Touch(one, other).Value)),
    });
}
