using Microsoft.Extensions.Configuration;
using WireCoach.Service.Access;

namespace WireCoach.Service.Tests.Access;

/// <summary>Nothing is reachable from a network by mistake.</summary>
public sealed class SharingSettingsTest : DataFolderTest
{
    [Theory]
    [InlineData("http://0.0.0.0:5187")]
    [InlineData("http://*:5187")]
    [InlineData("http://+:5187")]
    [InlineData("http://[::]:5187")]
    [InlineData("http://192.168.7.20:5187")]
    [InlineData("http://127.0.0.1:5187;http://192.168.7.20:5187")]
    [InlineData("http://fernhollow:5187")]
    public void An_address_that_the_network_reaches_is_refused(string urls) =>
        Assert.Contains("Sharing:Address", Refused(("urls", urls)), StringComparison.Ordinal);

    [Theory]
    [InlineData(null)]
    [InlineData("http://127.0.0.1:5187")]
    [InlineData("http://localhost:5187;http://[::1]:5187")]
    public void This_machines_own_addresses_are_not_shared(string? urls) => Assert.Null(Read(("urls", urls)));

    [Fact]
    public void Sharing_takes_https_or_a_stated_proxy()
    {
        SetCodes();
        Assert.Contains("HTTPS", Refused(("Sharing:Address", "http://192.168.7.20:5187")), StringComparison.Ordinal);
        Assert.Contains("certificate", Refused(("Sharing:Address", "https://192.168.7.20:5187")), StringComparison.Ordinal);
        Assert.Contains("IP address", Refused(("Sharing:Address", "http://192.168.7.20:5187"), ("Sharing:Proxy", "any")), StringComparison.Ordinal);
        Assert.NotNull(Read(("Sharing:Address", "http://192.168.7.20:5187"), ("Sharing:Proxy", "192.168.7.1")));
    }

    [Fact]
    public void Sharing_takes_codes() =>
        Assert.Contains("access code", Refused(("Sharing:Address", "http://192.168.7.20:5187"), ("Sharing:Proxy", "192.168.7.1")), StringComparison.Ordinal);

    [Fact]
    public void Any_host_name_is_too_many()
    {
        SetCodes();
        Assert.Contains("Sharing:Hosts", Refused(("Sharing:Address", "http://192.168.7.20:5187"), ("Sharing:Proxy", "192.168.7.1"), ("Sharing:Hosts", "*")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_code_is_kept_as_a_hash_that_only_the_owner_reads()
    {
        var codes = new AccessCodes(Folder);
        codes.Set(AccessRole.Manager, "eleven stirrers");
        Assert.True(codes.IsRight(AccessRole.Manager, "eleven stirrers"));
        Assert.False(codes.IsRight(AccessRole.Manager, "eleven stirrer"));
        Assert.False(codes.IsRight(AccessRole.Manager, null));
        Assert.False(codes.IsRight(AccessRole.Technician, "eleven stirrers"));
        var file = Path.Combine(Folder, "access-codes.json");
        Assert.DoesNotContain("stirrers", File.ReadAllText(file), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }

        Assert.Throws<SharingException>(() => codes.Set(AccessRole.Manager, "short"));
    }

    [Fact]
    public async Task The_command_reads_the_code_from_its_input_and_a_start_without_it_says_what_is_missing()
    {
        var (code, _, errors) = await ServiceProcess.Fail(Folder, "--Sharing:Address", "http://127.0.0.1:0", "--Sharing:Proxy", "127.0.0.1");
        Assert.NotEqual(0, code);
        Assert.Contains("access-code manager", errors, StringComparison.Ordinal);
        Assert.Equal(1, (await ServiceProcess.Command(Folder, "access-code", "manager")).Code); // nothing on its input: too short
        Assert.Equal(2, (await ServiceProcess.Command(Folder, "access-code", "owner")).Code);
    }

    private void SetCodes()
    {
        foreach (var role in (AccessRole[])[AccessRole.Manager, AccessRole.Technician])
        {
            new AccessCodes(Folder).Set(role, $"code of the {role}");
        }
    }

    private string Refused(params (string Name, string? Value)[] settings) => Assert.Throws<SharingException>(() => Read(settings)).Message;

    private Sharing? Read(params (string Name, string? Value)[] settings) => Sharing.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(setting => KeyValuePair.Create(setting.Name, setting.Value))).Build(), new AccessCodes(Folder));
}
