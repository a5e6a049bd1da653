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
