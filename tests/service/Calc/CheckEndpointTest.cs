using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class CheckEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/check";

    private const string DualSix = """
        "coils":[{"id":"run-1","leads":["T1","T2"],"role":"run","ratedVolts":115,"ohms":1.5,"axis":"main"},
                 {"id":"run-2","leads":["T3","T4"],"role":"run","ratedVolts":115,"ohms":1.5,"axis":"main"},
                 {"id":"start","leads":["T8","s1"],"role":"start","ratedVolts":115,"ohms":3.5,"axis":"start"}],
        "capacitor":{"microfarads":189,"between":["s1","s2"]},"switch":{"between":["s2","T5"],"closed":true}
        """;

    private const string NineStar = """
        "coils":[{"id":"A1","leads":["T1","T4"],"role":"phase","ratedVolts":133,"axis":"a"},{"id":"B1","leads":["T2","T5"],"role":"phase","ratedVolts":133,"axis":"b"},
                 {"id":"C1","leads":["T3","T6"],"role":"phase","ratedVolts":133,"axis":"c"},{"id":"A2","leads":["T7","n"],"role":"phase","ratedVolts":133,"axis":"a"},
                 {"id":"B2","leads":["T8","n"],"role":"phase","ratedVolts":133,"axis":"b"},{"id":"C2","leads":["T9","n"],"role":"phase","ratedVolts":133,"axis":"c"}]
        """;

    private const string SixDelta = """
        "coils":[{"id":"U","leads":["T1","T4"],"role":"phase","ratedVolts":230,"axis":"a"},{"id":"V","leads":["T2","T5"],"role":"phase","ratedVolts":230,"axis":"b"},
                 {"id":"W","leads":["T3","T6"],"role":"phase","ratedVolts":230,"axis":"c"}]
        """;

    [Theory]
    [InlineData("L1:T1 L2:T4,T5 -:T2,T3,T8", "main-follows-start")]
    [InlineData("L1:T1 L2:T4,T8 -:T2,T3,T5", "start-follows-main")]
    public async Task The_high_connection_of_a_six_lead_motor_is_right_and_turns_as_the_table_says(string joints, string rotation)
    {
        var answer = await Check(DualSix, joints, """{"volts":230,"phases":1,"hertz":60}""");
        Assert.Equal("correct", answer.GetProperty("verdict").GetString());
        Assert.Empty(answer.GetProperty("findings").EnumerateArray());
        Assert.Equal(rotation, answer.GetProperty("rotation").GetString());
        Assert.All(answer.GetProperty("coils").EnumerateArray(), coil => Assert.Equal(100, coil.GetProperty("percentOfRated").GetDouble(), 0.1));
        Assert.True(answer.GetProperty("lineAmps").GetDouble() > 10);
    }

    [Theory]
    [InlineData("L1:T2 L2:T4,T5 -:T1,T3,T8", 230, "wrong", "halves-opposed", "Exchange T1 and T2.")]
    [InlineData("L1:T1,T8 L2:T4,T5 -:T2,T3", 230, "dangerous", "start-branch-over-volts", "Move T5 to T2 + T3.")]
    [InlineData("L1:T1,T3,T8 L2:T2,T4,T5", 230, "dangerous", "over-volts", null)]
    [InlineData("L1:T1 L2:T4,T5 -:T2,T3,T8", 115, "wrong", "under-volts", null)]
    [InlineData("L1:T1,T3,T8 L2:T2,T4,T5 -:T1,T2", 115, "dangerous", "line-shorted", "Take T1 out of the joint with T2.")]
    [InlineData("L1:T1 L2:T4,T5 -:T3,T8", 230, "incomplete", "lead-open", "Join T3 + T8 with T2.")]
    [InlineData("L1:T1 L2:T4,T5 -:T2,T8", 230, "dangerous", "start-branch-over-volts", "Join T2 + T8 with T3.")]
    [InlineData("L1:T1,T3 L2:T2,T4,T5", 115, "incomplete", "start-branch-open", "Join L1 with T8.")]
    [InlineData("L1:T1,T8 L2:T2,T5", 115, "incomplete", "lead-open", null)]
    [InlineData("L1:T1,T3,T8 L2:T2,T4,T5 PE:T6x", 115, "dangerous", "lead-on-earth", "Take T6x off and cap it alone.")]
    [InlineData("L1:T1,T3,T8 PE:T2,T4,T5", 115, "dangerous", "lead-on-earth", null)]
    public async Task What_is_wrong_with_a_six_lead_motor_is_found_and_the_smallest_change_named(string joints, int volts, string verdict, string rule, string? change)
    {
        var answer = await Check(DualSix, joints, $$"""{"volts":{{volts}},"phases":1,"hertz":60}""");
        Assert.Equal(verdict, answer.GetProperty("verdict").GetString());
        Assert.Contains(rule, answer.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()));
        Assert.Equal(change, answer.GetProperty("change").ValueKind == JsonValueKind.Null ? null : answer.GetProperty("change").GetProperty("what").GetString());
        Assert.NotEmpty(answer.GetProperty("seen").EnumerateArray());
    }

    [Theory]
    [InlineData(NineStar, "L1:T1 L2:T2 L3:T3 -:T4,T7 -:T5,T8 -:T6,T9", 460, "correct", null)]
    [InlineData(NineStar, "L1:T1,T7 L2:T2,T8 L3:T3,T9 -:T4,T5,T6", 230, "correct", null)]
    [InlineData(NineStar, "L1:T1,T7 L2:T2,T8 L3:T3,T9", 230, "incomplete", "lead-open")]
    [InlineData(NineStar, "L1:T1 L2:T2 L3:T3 -:T4,T8 -:T5,T7 -:T6,T9", 460, "wrong", "phases-mixed")]
    [InlineData(NineStar, "L1:T4 L2:T2 L3:T3 -:T1,T7 -:T5,T8 -:T6,T9", 460, "wrong", "halves-opposed")]
    [InlineData(SixDelta, "L1:T1,T6 L2:T2,T4 L3:T3,T5", 230, "correct", null)]
    [InlineData(SixDelta, "L1:T1,T6 L2:T2,T4 L3:T3,T5 -:T4,T5,T6", 230, "dangerous", "line-shorted")]
    [InlineData(SixDelta, "L1:T1,T5 L2:T2,T4 L3:T3,T6", 230, "dangerous", "coil-shorted")]
    [InlineData(SixDelta, "L1:T1,T2 L2:T5,T4 L3:T3,T6", 230, "dangerous", null)]
    [InlineData(SixDelta, "L1:T4,T6 L2:T2,T1 L3:T3,T5", 230, "wrong", "phase-reversed")]
    [InlineData(SixDelta, "L1:T1,T6 L2:T2,T4 L3:T3,T5", 400, "dangerous", "over-volts")]
    public async Task Three_phase_connections_are_judged(string coils, string joints, int volts, string verdict, string? rule)
    {
        var answer = await Check(coils, joints, $$"""{"volts":{{volts}},"phases":3,"hertz":60}""");
        var rules = answer.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()!).ToList();
        Assert.True(verdict == answer.GetProperty("verdict").GetString(), string.Join(", ", rules));
        Assert.True(rule is null || rules.Contains(rule), string.Join(", ", rules));
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("lineAmps").ValueKind);
    }

    [Fact]
    public async Task At_rest_the_start_branch_pulls_its_half_down_and_while_running_it_does_not()
    {
        const string Joints = "L1:T1 L2:T4,T5 -:T2,T3,T8";
        const string Split = """
            "coils":[{"id":"run-1","leads":["T1","T2"],"role":"run","ratedVolts":115,"ohms":1.5,"axis":"main"},
                     {"id":"run-2","leads":["T3","T4"],"role":"run","ratedVolts":115,"ohms":1.5,"axis":"main"},
                     {"id":"start","leads":["T8","T5"],"role":"start","ratedVolts":115,"ohms":3.5,"axis":"start"}]
            """;
        var rest = await Check(Split + ""","slip":1""", Joints, """{"volts":230,"phases":1,"hertz":60}""");
        var running = await Check(DualSix.Replace("\"closed\":true", "\"closed\":false", StringComparison.Ordinal) + ""","slip":0.05""", Joints, """{"volts":230,"phases":1,"hertz":60}""");
        double[] Percent(JsonElement answer) => [.. answer.GetProperty("coils").EnumerateArray().Select(coil => coil.GetProperty("percentOfRated").GetDouble())];
        Assert.InRange(Percent(rest)[0], 102, 120);
        Assert.InRange(Percent(rest)[1], 80, 98);
        Assert.Equal("correct", rest.GetProperty("verdict").GetString());
        Assert.Equal(100, Percent(running)[0], 1);
        Assert.Equal(100, Percent(running)[1], 1);
    }

    private const string TwoCapacitors = """
        "coils":[{"id":"run","leads":["T1","T4"],"role":"run","ratedVolts":230,"ohms":3,"axis":"main"},{"id":"start","leads":["T8","s1"],"role":"start","ratedVolts":230,"ohms":6,"axis":"start"}],
        "capacitor":[{"microfarads":20,"between":["s1","T5"]},{"microfarads":120,"between":["s1","s2"]}],"switch":{"between":["s2","T5"],"closed":true},
        "protector":{"between":["P1","P2"]}
        """;

    private const string Compound = """
        "coils":[{"id":"armature","leads":["A1","A2"],"role":"armature","ratedVolts":180},{"id":"series","leads":["S1","S2"],"role":"series-field","ratedVolts":180},
                 {"id":"shunt","leads":["F1","F2"],"role":"shunt-field","ratedVolts":180}]
        """;

    [Theory]
    [InlineData("L1:P1 -:P2,T1,T8 L2:T4,T5", "correct", null)]
    [InlineData("L1:P1 -:P2,T1,T5 L2:T4,T8", "correct", null)]
    [InlineData("L1:P1 -:P2,T1,T8 L2:T4", "incomplete", "start-branch-open")]
    [InlineData("L1:P1 -:P2,T1,T8 L2:T4,T5 -:T5,s2", "wrong", "switch-bridged")] // the start capacitor would stay in circuit
    [InlineData("L1:P1 -:P2,T1,T8 L2:T4,T5 -:s1,s2", "wrong", "capacitor-bridged")]
    [InlineData("L1:P1 -:P2,T1,s1 L2:T4,T5,T8", "wrong", "capacitor-misplaced")] // both capacitors across the line
    public async Task A_motor_with_a_start_and_a_run_capacitor_and_a_protector_is_judged(string joints, string verdict, string? rule)
    {
        var answer = await Check(TwoCapacitors, joints, """{"volts":230,"phases":1,"hertz":60}""");
        var rules = answer.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()!).ToList();
        Assert.True(verdict == answer.GetProperty("verdict").GetString(), string.Join(", ", rules));
        Assert.True(rule is null || rules.Contains(rule), string.Join(", ", rules));
    }

    [Theory]
    [InlineData("+:F1,A1 minus:F2,S2 -:A2,S1", 180, "correct", null)]
    [InlineData("+:F1,A2 minus:F2,S2 -:A1,S1", 180, "correct", null)]
    [InlineData("+:F1,A1 minus:S2 -:A2,S1,F2", 180, "correct", null)] // short shunt
    [InlineData("+:F1,A1 minus:F2,S1 -:A2,S2", 180, "wrong", "fields-opposed")]
    [InlineData("+:F1,A1 minus:S2 -:A2,S1", 180, "dangerous", "field-open")]
    [InlineData("+:F1,A1,S1 minus:F2,A2,S2", 180, "dangerous", "series-field-across")]
    [InlineData("+:A1 minus:F2,S2 -:A2,F1 -:S1", 180, "wrong", "armature-behind-field")]
    [InlineData("+:F1,A1 minus:F2,A2", 180, "incomplete", "winding-not-fed")]
    [InlineData("+:F1,A1 minus:F2,S2 -:A2,S1", 90, "wrong", "under-volts")]
    [InlineData("+:F1,A1 minus:F2,S2,A2,S1 -:A1,A2", 180, "dangerous", "line-shorted")]
    public async Task A_compound_motor_is_judged(string joints, int volts, string verdict, string? rule)
    {
        var answer = await Check(Compound, joints, $$"""{"volts":{{volts}},"phases":1,"hertz":0}""");
        var rules = answer.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()!).ToList();
        Assert.True(verdict == answer.GetProperty("verdict").GetString(), string.Join(", ", rules));
        Assert.True(rule is null || rules.Contains(rule), string.Join(", ", rules));
    }

    [Theory]
    [InlineData("L1:HI,LO L2:C", "dangerous", "coil-shorted")] // two speeds at once
    [InlineData("L1:HI L2:LO", "dangerous", "taps-alone")]
    [InlineData("L1:LO L2:C", "correct", null)]
    public async Task A_fan_motor_with_speed_taps_is_judged(string joints, string verdict, string? rule)
    {
        const string Tapped = """
            "coils":[{"id":"run","leads":["C","HI"],"role":"run","ratedVolts":115,"axis":"main"},{"id":"tap-1","leads":["HI","MED"],"role":"speed-tap","ratedVolts":115,"axis":"main"},
                     {"id":"tap-2","leads":["MED","LO"],"role":"speed-tap","ratedVolts":115,"axis":"main"},{"id":"start","leads":["C","CAP"],"role":"start","ratedVolts":115,"axis":"start"}],
            "capacitor":{"microfarads":5,"between":["LO","CAP"]}
            """;
        var answer = await Check(Tapped, joints, """{"volts":115,"phases":1,"hertz":60}""");
        var rules = answer.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()!).ToList();
        Assert.True(verdict == answer.GetProperty("verdict").GetString(), string.Join(", ", rules));
        Assert.True(rule is null || rules.Contains(rule), string.Join(", ", rules));
    }

    [Theory]
    [InlineData("""{"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils")]
    [InlineData("""{"coils":[],"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"ratedVolts":115,"axis":"main"}],"joints":[]}""", 409, "not-ready", "supply.volts")]
    [InlineData("""{"coils":[{"id":"a","leads":["1"],"ratedVolts":115,"axis":"main"}],"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils[0].leads")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"axis":"main"}],"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils[0].ratedVolts")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"ratedVolts":115,"axis":"q"}],"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils[0].axis")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"ratedVolts":115,"axis":"main"}],"joints":[{"leads":["1"],"conductor":"L9"}],"supply":{"volts":115}}""", 400, "invalid-fact", "joints[0].conductor")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"ratedVolts":115,"axis":"main"}],"joints":[],"supply":{"volts":-1}}""", 400, "invalid-fact", "supply.volts")]
    [InlineData("""{"coils":[{"id":"a","leads":["1","2"],"ratedVolts":"x","axis":"main"}],"joints":[],"supply":{"volts":115}}""", 400, "invalid-fact", "coils[0].ratedVolts")]
    public async Task A_wrong_body_is_refused_by_its_member(string json, int status, string type, string field)
    {
        var (got, problem) = await service.PostText(Path, json);
        Assert.Equal((status, type), (got, problem.GetProperty("type").GetString()));
        Assert.Contains(field, problem.GetProperty("errors").EnumerateObject().Select(member => member.Name));
    }

    private async Task<JsonElement> Check(string motor, string joints, string supply)
    {
        var written = joints.Split(' ').Select(joint => joint.Split(':')).Select(joint =>
            $$"""{"leads":[{{string.Join(',', joint[1].Split(',').Select(lead => $"\"{lead}\""))}}]{{(joint[0] == "-" ? string.Empty : $",\"conductor\":\"{(joint[0] == "minus" ? "-" : joint[0])}\"")}}}""");
        var (status, answer) = await service.PostText(Path, $$"""{ {{motor}}, "joints":[{{string.Join(',', written)}}], "supply":{{supply}} }""");
        Assert.True(status == 200, answer.GetRawText());
        return answer;
    }
}
