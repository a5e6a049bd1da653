using Microsoft.Extensions.Configuration;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class PhrasingEndpointsTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Without_configuration_nothing_is_reworded_and_nothing_is_asked()
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na" });
        var (status, answer) = await service.Get($"/api/sessions/{session.GetProperty("id").GetString()}/rewordings");
        Assert.Equal(200, status);
        Assert.Equal("off", answer.GetProperty("state").GetString());
        Assert.Equal(0, answer.GetProperty("items").GetArrayLength());
        Assert.Equal(0, (await service.Get("/api/phrasing")).Body.GetProperty("asked").GetInt32());
    }

    [Fact]
    public async Task An_unknown_session_is_said_so() => Assert.Equal(404, (await service.Get("/api/sessions/none/rewordings")).Status);

    [Theory]
    [InlineData("ftp://127.0.0.1/v1", "m", "8")]
    [InlineData("http://192.0.2.1/v1", "m", "8")]
    [InlineData("http://127.0.0.1.example/v1", "m", "8")]
    [InlineData("http://a:b@127.0.0.1/v1", "m", "8")]
    [InlineData("http://127.0.0.1/v1", "", "8")]
    [InlineData("http://127.0.0.1/v1", "m", "0")]
    [InlineData("http://127.0.0.1/v1", "m", "soon")]
    public void Settings_that_cannot_be_used_stop_the_start(string endpoint, string model, string seconds) =>
        Assert.Throws<PhrasingSettingsException>(() => Settings(endpoint, model, seconds));

    [Fact]
    public void The_key_is_never_printed() =>
        Assert.DoesNotContain("secret", $"{Settings("http://[::1]:8081/v1", "m", "8")}", StringComparison.Ordinal);

    private static PhrasingSettings? Settings(string endpoint, string model, string seconds) => PhrasingSettings.Of(new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
    {
        ["Phrasing:Endpoint"] = endpoint,
        ["Phrasing:Model"] = model,
        ["Phrasing:Key"] = "secret",
        ["Phrasing:TimeoutSeconds"] = seconds,
    }).Build());
}
