using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using WireCoach.Service.Access;

namespace WireCoach.Service.Tests.Access;

/// <summary>A service that is shared behind a stated proxy, in process, with a code for each role.</summary>
internal sealed partial class SharedService : IDisposable
{
    private readonly WebApplicationFactory<Program> _factory;

    public SharedService(string folder)
    {
        foreach (var role in Enum.GetValues<AccessRole>())
        {
            new AccessCodes(folder).Set(role, Code(role));
        }

        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("Data:Folder", folder)
            .UseSetting("Sharing:Address", "http://127.0.0.1:0")
            .UseSetting("Sharing:Proxy", "127.0.0.1")
            .UseSetting("Sharing:Hosts", "coach.fernhollow.example"));
    }

    public IServiceProvider Services => _factory.Services;

    public static string Code(AccessRole role) => $"ZQXCODE-{role}";

    /// <summary>A browser that follows no redirect.</summary>
    public HttpClient Browser() => _factory.CreateClient(new() { BaseAddress = new Uri("https://coach.fernhollow.example"), AllowAutoRedirect = false, HandleCookies = true });

    public async Task<HttpClient> SignedIn(AccessRole role)
    {
        var browser = Browser();
        using var response = await SignIn(browser, role.ToString(), Code(role));
        Assert.Equal(HttpStatusCode.Redirect, response.StatusCode);
        return browser;
    }

    public static async Task<HttpResponseMessage> SignIn(HttpClient browser, string role, string code)
    {
        var token = Token(await browser.GetStringAsync("/sign-in", TestContext.Current.CancellationToken));
        return await Post(browser, "/sign-in", ("_handler", "sign-in"), ("__RequestVerificationToken", token), ("Form.Role", role), ("Form.Code", code));
    }

    public static string Token(string page) => WebUtility.HtmlDecode(TokenField().Match(page).Groups[1].Value);

    public static async Task<HttpResponseMessage> Post(HttpClient browser, string path, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return await browser.PostAsync(path, form, TestContext.Current.CancellationToken);
    }

    public static async Task<HttpResponseMessage> Open(HttpClient browser, string role) =>
        await browser.PostAsJsonAsync("/api/sessions", new { role, region = "na" }, TestContext.Current.CancellationToken);

    public static async Task<string> Id(HttpResponseMessage opened)
    {
        using (opened)
        {
            return (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        }
    }

    public static async Task<HttpStatusCode> Get(HttpClient browser, string path)
    {
        using var response = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        return response.StatusCode;
    }

    public void Dispose() => _factory.Dispose();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"", RegexOptions.NonBacktracking)]
    private static partial Regex TokenField();
}
