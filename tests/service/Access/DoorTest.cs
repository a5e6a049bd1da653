using System.Net;
using System.Text.Json;
using WireCoach.Service.Access;
using static WireCoach.Service.Tests.Access.SharedService;

namespace WireCoach.Service.Tests.Access;

/// <summary>The door of a shared service under siege: each test has a service of its own, because it uses up what the door allows.</summary>
public sealed class DoorTest : DataFolderTest
{
    private readonly SharedService _service;

    public DoorTest() => _service = new(Folder);

    [Fact]
    public async Task The_cookies_are_for_this_service_alone_and_no_script_reads_them()
    {
        var browser = _service.Browser();
        using var response = await SharedService.SignIn(browser, "Homeowner", SharedService.Code(AccessRole.Homeowner));
        using var opened = await Open(browser, "homeowner");
        foreach (var cookie in response.Headers.GetValues("Set-Cookie").Concat(opened.Headers.GetValues("Set-Cookie")))
        {
            Assert.StartsWith("__Host-wirecoach", cookie, StringComparison.Ordinal);
            foreach (var flag in (string[])["httponly", "secure", "samesite=strict", "path=/"])
            {
                Assert.Contains(flag, cookie, StringComparison.OrdinalIgnoreCase);
            }
        }
    }

    [Fact]
    public async Task Codes_cannot_be_guessed_fast_and_every_try_is_written_down()
    {
        var browser = _service.Browser();
        for (var number = 0; number < Attempts.AMinute; number++)
        {
            using var wrong = await SharedService.SignIn(browser, "Manager", $"ZQXGUESS{number}");
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        }

        using var late = await SharedService.SignIn(browser, "Manager", SharedService.Code(AccessRole.Manager));
        Assert.Equal(HttpStatusCode.TooManyRequests, late.StatusCode);
        var audit = await File.ReadAllLinesAsync(Path.Combine(Folder, "sign-ins.jsonl"), TestContext.Current.CancellationToken);
        Assert.Equal([.. Enumerable.Repeat("refused", Attempts.AMinute), "too-many"], audit.Select(line => JsonDocument.Parse(line).RootElement.GetProperty("outcome").GetString()));
        _service.Dispose();
        TestFolder.Release(Folder);
        foreach (var file in Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories))
        {
            var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            Assert.DoesNotContain("ZQXGUESS", text, StringComparison.Ordinal);
            Assert.DoesNotContain("ZQXCODE", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Signing_out_closes_the_door()
    {
        var browser = await _service.SignedIn(AccessRole.Manager);
        var token = SharedService.Token(await browser.GetStringAsync("/sign-in", TestContext.Current.CancellationToken));
        using (var left = await SharedService.Post(browser, "/sign-in", ("_handler", "sign-out"), ("__RequestVerificationToken", token)))
        {
            Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        }

        Assert.Equal(HttpStatusCode.Unauthorized, await Get(browser, "/api/sessions"));
    }

    [Fact]
    public async Task Another_name_for_the_address_is_refused_and_a_flood_is_slowed()
    {
        var browser = await _service.SignedIn(AccessRole.Technician);
        using (var rebound = new HttpRequestMessage(HttpMethod.Get, "/api/sessions"))
        {
            rebound.Headers.Host = "evil.example";
            using var response = await browser.SendAsync(rebound, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        }

        var statuses = await Task.WhenAll(Enumerable.Range(0, 400).Select(_ => Get(browser, "/api/sessions?size=1")));
        Assert.Contains(HttpStatusCode.TooManyRequests, statuses);
        Assert.Contains(HttpStatusCode.OK, statuses);
    }

    protected override void Dispose(bool disposing)
    {
        _service.Dispose();
        base.Dispose(disposing);
    }
}
