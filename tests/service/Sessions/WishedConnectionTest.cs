namespace WireCoach.Service.Tests.Sessions;

/// <summary>"Connect it in delta": taken where the supply suits it, refused with the reason where not.</summary>
public sealed class WishedConnectionTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string SixLeads = "three-phase motor 230/400 V 50 Hz, leads U1 V1 W1 U2 V2 W2";
    private const string NineLeads = "9 lead motor 230/460 V three phase, leads T1 T2 T3 T4 T5 T6 T7 T8 T9";

    [Theory]
    [InlineData(SixLeads, "400", "connect it in delta", "The connection 'lower voltage, delta' is for 230 V. On 400 V each winding would get 174 % of its own volts, so it is not given.")]
    [InlineData(SixLeads, "230", "connect it in delta", "You want this connection: lower voltage, delta. By the plate it suits 230 V.")]
    [InlineData(SixLeads, "400", "wire it in star", "higher voltage, star. By the plate it suits 400 V.")]
    [InlineData(SixLeads, "400", "wire it for 690", "690 V is not on this plate (230/400 V)")]
    [InlineData(NineLeads, "230", "wire it for high voltage", "The connection 'higher voltage' is for 460 V. On 230 V each winding would get 50 % of its own volts")]
    [InlineData(NineLeads, "230", "connect for 460", "'higher voltage' is for 460 V.")]
    [InlineData(NineLeads, "460", "hook it up for 460 V", "You want this connection: higher voltage. By the plate it suits 460 V.")]
    public async Task The_wish_is_judged_by_the_plate_and_the_supply(string motor, string supply, string wish, string said)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", text = "I want to connect a three phase motor" });
        var path = $"/api/sessions/{session.GetProperty("id").GetString()}/messages";
        _ = await service.Post(path, new { text = motor });
        _ = await service.Post(path, new { text = $"supply is {supply} V three phase" });
        var reply = await service.Post(path, new { text = wish });
        Assert.Contains(said, string.Join(' ', reply.GetProperty("say").EnumerateArray().Select(one => one.GetProperty("text").GetString())), StringComparison.Ordinal);
        Assert.Empty(reply.GetProperty("notUnderstood").EnumerateArray());
    }
}
