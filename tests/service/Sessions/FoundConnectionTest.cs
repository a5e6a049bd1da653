namespace WireCoach.Service.Tests.Sessions;

/// <summary>A connection that somebody else made, said in plain words.</summary>
public sealed class FoundConnectionTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData(
        "capacitor start motor 115/230 V 60 Hz, leads T1 T2 T3 T4 T5 T8", "supply is 230 V single phase",
        "1 on L1, 4 and 5 are together on L2, 2, 3 and 8 are joined", "gives every winding what it is made for", null)]
    [InlineData(
        "capacitor start motor 115/230 V 60 Hz, leads T1 T2 T3 T4 T5 T8", "supply is 230 V single phase",
        "T2 on L1, T4 and T5 are together on L2, T1, T3 and T8 are joined", "work against each other", "Exchange T1 and T2.")]
    [InlineData(
        "three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2", "supply is 400 V three phase 50 Hz",
        "U1 on L1, V1 on L2, W1 on L3, U2, V2 and W2 are joined", "gives every winding what it is made for", null)]
    [InlineData(
        "three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2", "supply is 400 V three phase 50 Hz",
        "U1 and W2 together on L1, V1 and U2 together on L2, W1 and V2 together on L3", "gets 174 % of the volts it is made for", null)]
    public async Task The_verdict_and_the_smallest_change_are_said(string motor, string supply, string joints, string verdict, string? change)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", instruments = new[] { "multimeter" }, text = "Check a connection that somebody else made" });
        var path = $"/api/sessions/{session.GetProperty("id").GetString()}/messages";
        _ = await service.Post(path, new { text = motor });
        _ = await service.Post(path, new { text = supply });
        var reply = await service.Post(path, new { text = joints });
        var said = string.Join(' ', reply.GetProperty("say").EnumerateArray().Select(one => one.GetProperty("text").GetString()));
        Assert.Contains(verdict, said, StringComparison.Ordinal);
        Assert.True(change is null || said.Contains(change, StringComparison.Ordinal), said);
    }
}
