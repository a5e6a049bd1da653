using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>A connection that somebody else made, said in plain words.</summary>
public sealed class FoundConnectionTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Right = "gives every winding what it is made for";
    private const string CapacitorMotor = "capacitor start motor 115/230 V 60 Hz, leads T1 T2 T3 T4 T5 T8";
    private const string LowJoints = "T1 T7 on L1, T2 T8 on L2, T3 T9 on L3, T4 T5 T6 together";
    private const string HighJoints = "T1 on L1, T2 on L2, T3 on L3, T4 T7 together, T5 T8 together, T6 T9 together";
    private const string DeltaJoints = "T1 T6 T7 on L1, T2 T4 T8 on L2, T3 T5 T9 on L3";
    private const string NineLeads = ", 9 lead motor 230/460 V three phase, supply ";

    [Theory]
    [InlineData(CapacitorMotor, "supply is 230 V single phase", "1 on L1, 4 and 5 are together on L2, 2, 3 and 8 are joined", Right, null)]
    [InlineData(CapacitorMotor, "supply is 230 V single phase", "T2 on L1, T4 and T5 are together on L2, T1, T3 and T8 are joined", "run half T1–T2 and run half T3–T4 work against each other", "Exchange T1 and T2.")]
    [InlineData("three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2", "supply is 400 V three phase 50 Hz", "U1 on L1, V1 on L2, W1 on L3, U2, V2 and W2 are joined", Right, null)]
    [InlineData(
        "three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2", "supply is 400 V three phase 50 Hz",
        "U1 and W2 together on L1, V1 and U2 together on L2, W1 and V2 together on L3", "winding U1–U2 gets 174 % of the volts it is made for", "The connection for this supply: J1: U1 to L1")]
    [InlineData(
        "three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2", "supply is 400 V three phase 50 Hz",
        "U1 on L1, V1 on L2, U2, V2 and W2 are joined", "L3 goes to no lead", "Put L3 on W1.")]
    public async Task The_verdict_and_the_way_out_are_said(string motor, string supply, string joints, string verdict, string? change)
    {
        var (_, reply) = await Told(motor, supply, joints);
        Assert.Contains(verdict, Said(reply), StringComparison.Ordinal);
        Assert.True(change is null || Said(reply).Contains(change, StringComparison.Ordinal), Said(reply));
    }

    /// <summary>Nine printed marks stand on motors in star and in delta.</summary>
    [Theory]
    [InlineData(HighJoints + NineLeads + "460 V", Right)]
    [InlineData(HighJoints + NineLeads + "230 V", "As found, the connection is wrong. No power.")]
    [InlineData("T7 on L1, T2 on L2, T3 on L3, T4 T1 together, T5 T8 together, T6 T9 together" + NineLeads + "460 V", "Exchange T1 and T7.")]
    [InlineData(LowJoints + NineLeads + "460 V", "As found, the connection is dangerous. No power.")]
    public async Task Where_star_and_delta_agree_the_verdict_is_said_at_once(string told, string verdict)
    {
        var (_, reply) = await Told(told);
        Assert.Contains(verdict, Said(reply), StringComparison.Ordinal);
        Assert.Contains("this verdict holds whichever it is", Said(reply), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LowJoints, true, Right)]
    [InlineData(LowJoints, false, "As found, the connection is wrong. No power.")]
    [InlineData(DeltaJoints, false, Right)]
    [InlineData(DeltaJoints, true, "No power.")]
    public async Task Where_they_do_not_agree_readings_decide(string joints, bool star, string verdict)
    {
        var (id, reply) = await Told(joints + NineLeads + "230 V");
        Assert.Contains("One or two readings tell which it is", Said(reply), StringComparison.Ordinal);
        Assert.DoesNotContain("As found, the connection", Said(reply), StringComparison.Ordinal);
        var said = string.Empty;
        reply = await Answered(id, new { questionId = "isolated", confirmed = true });
        for (var asked = 0; Asked(reply).StartsWith("found-reading.", StringComparison.Ordinal) && asked < 3; asked++)
        {
            Assert.DoesNotContain("As found", said, StringComparison.Ordinal);
            var pair = Asked(reply).Split('.')[1..];
            var inDelta = Array.Exists<string[]>([["T1", "T4", "T9"], ["T2", "T5", "T7"], ["T3", "T6", "T8"]], corner => pair.All(corner.Contains));
            var inStar = Array.Exists<string[]>([["T1", "T4"], ["T2", "T5"], ["T3", "T6"], ["T7", "T8", "T9"]], winding => pair.All(winding.Contains));
            reply = await Answered(id, new { questionId = Asked(reply), reading = (star ? inStar : inDelta) ? new { ohms = (double?)1.8, open = (bool?)null } : new { ohms = (double?)null, open = (bool?)true } });
            said += Said(reply);
        }

        Assert.Contains(verdict, said, StringComparison.Ordinal);
    }

    /// <summary>460 V alone may be the higher or the only voltage of nine leads: what a winding is made for is not known then.</summary>
    [Fact]
    public async Task A_plate_with_one_voltage_of_several_is_asked_for_the_others()
    {
        var (id, reply) = await Told(HighJoints + ", 9 lead motor 460 V three phase, supply 460 V three phase");
        Assert.Contains("The plate gives 460 V only", Said(reply), StringComparison.Ordinal);
        Assert.DoesNotContain("As found", Said(reply), StringComparison.Ordinal);
        Assert.Equal("plate.volts", Asked(await Answered(id, new { questionId = "isolated", confirmed = true })));
        Assert.Contains(Right, Said(await service.Post($"/api/sessions/{id}/messages", new { text = "230/460 V" })), StringComparison.Ordinal);
    }

    /// <summary>Six leads T1 to T6 are also those of a two-speed motor, whose plate does not say 230/400 V.</summary>
    [Fact]
    public async Task The_voltages_of_the_plate_rule_out_a_motor()
    {
        var (_, reply) = await Told("T1 on L1, T2 on L2, T3 on L3, T4 T5 T6 together, 6 lead motor 230/400 V three phase, supply 400 V three phase");
        Assert.Contains(Right, Said(reply), StringComparison.Ordinal);
        Assert.DoesNotContain("two-speed", Said(reply), StringComparison.Ordinal);
    }

    /// <summary>A bad touch reads open: one open reading is not yet a proof of a star.</summary>
    [Fact]
    public async Task One_open_reading_does_not_decide()
    {
        var (id, _) = await Told(LowJoints + NineLeads + "230 V");
        _ = await Answered(id, new { questionId = "isolated", confirmed = true });
        var reply = await Answered(id, new { questionId = "found-reading.T1.T9", reading = new { open = true } });
        Assert.DoesNotContain("As found", Said(reply), StringComparison.Ordinal);
        Assert.Equal("found-reading.T7.T8", Asked(reply));
    }

    [Theory]
    [InlineData("done", null)]
    [InlineData("otherwise", "T1 on L1, T4 and T5 are together on L2, T2, T3 and T8 are joined")]
    [InlineData("T1 on L1, T4 and T5 are together on L2, T2, T3 and T8 are joined", null)]
    public async Task After_the_change_the_connection_is_judged_anew(string answer, string? joints)
    {
        var (id, _) = await Told(CapacitorMotor, "supply is 230 V single phase", "T2 on L1, T4 and T5 are together on L2, T1, T3 and T8 are joined");
        var reply = await Answered(id, new { questionId = "isolated", confirmed = true });
        Assert.Equal("joints-changed", Asked(reply));
        reply = await service.Post($"/api/sessions/{id}/messages", new { text = answer });
        if (joints is not null)
        {
            Assert.Equal("joints", Asked(reply));
            reply = await service.Post($"/api/sessions/{id}/messages", new { text = joints });
        }

        Assert.Contains(Right, Said(reply), StringComparison.Ordinal);
    }

    /// <summary>Leads that are known by the way are not asked for by name again; whether they are all decides.</summary>
    [Theory]
    [InlineData("all of them", "probe-zero")]
    [InlineData("there are more", "leads")]
    public async Task Leads_that_were_spoken_of_are_known(string answer, string next)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", text = "what kind of motor is it? no plate, single phase, no capacitor. red to black 2.2, white to yellow 2.3" });
        var id = session.GetProperty("id").GetString()!;
        var reply = await Answered(id, new { questionId = "isolated", confirmed = true });
        Assert.Equal("other-leads", Asked(reply));
        Assert.Equal(next, Asked(await service.Post($"/api/sessions/{id}/messages", new { text = answer })));
    }

    /// <summary>A switch that is off isolates nothing, whatever was said before it.</summary>
    [Fact]
    public async Task A_switch_is_no_isolation()
    {
        var (id, _) = await Told(CapacitorMotor);
        var reply = await service.Post($"/api/sessions/{id}/messages", new { text = "yes, it's off at the switch" });
        Assert.Contains("is not isolation", Said(reply), StringComparison.Ordinal);
        Assert.Equal("isolated", Asked(reply));
    }

    private async Task<(string Id, JsonElement Reply)> Told(params string[] lines)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", instruments = new[] { "multimeter" }, text = "Check a connection that somebody else made" });
        var id = session.GetProperty("id").GetString()!;
        var reply = session;
        foreach (var line in lines)
        {
            reply = await service.Post($"/api/sessions/{id}/messages", new { text = line });
        }

        return (id, reply);
    }

    private Task<JsonElement> Answered(string id, object answer) => service.Post($"/api/sessions/{id}/answers", answer);

    private static string Said(JsonElement reply) => string.Join(' ', reply.GetProperty("say").EnumerateArray().Select(one => one.GetProperty("text").GetString()));

    private static string Asked(JsonElement reply) => reply.TryGetProperty("ask", out var ask) && ask.ValueKind == JsonValueKind.Object ? ask.GetProperty("id").GetString()! : string.Empty;
}
