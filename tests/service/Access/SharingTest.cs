using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using WireCoach.Service.Access;
using static WireCoach.Service.Tests.Access.SharedService;

namespace WireCoach.Service.Tests.Access;

/// <summary>On a shared service nobody gets in without a code, and nobody further than the role goes.</summary>
public sealed class SharingTest(SharedFixture shared) : IClassFixture<SharedFixture>
{
    private readonly SharedService _service = shared.Service;

    [Theory]
    [InlineData("/api/sessions")]
    [InlineData("/api/figures")]
    [InlineData("/api/sessions/1hf2r3qe70a1b2c3")]
    [InlineData("/openapi/v1.json")]
    public async Task A_program_that_has_not_signed_in_is_told_so(string path)
    {
        using var response = await _service.Browser().GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/sessions")]
    [InlineData("/practice")]
    [InlineData("/no-such-page")]
    public async Task A_person_who_has_not_signed_in_is_led_to_the_door(string path)
    {
        using var response = await _service.Browser().GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal("/sign-in", response.Headers.Location?.ToString());
    }

    [Fact]
    public async Task Without_https_nothing_is_answered_but_health()
    {
        var browser = _service.Browser();
        Assert.Equal(HttpStatusCode.Forbidden, await Get(browser, "http://coach.fernhollow.example/sign-in"));
        Assert.Equal(HttpStatusCode.OK, await Get(browser, "http://localhost/health/live"));
    }

    [Fact]
    public async Task Nothing_but_the_door_health_and_the_looks_is_open_to_strangers()
    {
        _ = await _service.Browser().GetAsync("/health/live", TestContext.Current.CancellationToken);
        var open = _service.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null)
            .Select(endpoint => endpoint.RoutePattern.RawText!)
            .Where(route => !route.Contains("_content/", StringComparison.Ordinal) && !route.Contains("_framework/", StringComparison.Ordinal));
        Assert.Equal(["/health/live", "/health/ready", "/sign-in"], open.Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Signing_in_needs_the_token_of_the_form()
    {
        using var response = await SharedService.Post(_service.Browser(), "/sign-in", ("_handler", "sign-in"), ("Form.Role", "Manager"), ("Form.Code", SharedService.Code(AccessRole.Manager)));
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Fact]
    public async Task A_homeowner_sees_only_what_was_opened_in_the_same_browser()
    {
        var (technician, owner) = (await shared.As(AccessRole.Technician), await shared.As(AccessRole.Homeowner));
        var (theirs, own) = (await Id(await Open(technician, "technician")), await Id(await Open(owner, "homeowner")));
        Assert.Equal(HttpStatusCode.OK, await Get(owner, $"/api/sessions/{own}"));
        foreach (var part in (string[])["", "/events", "/report", "/diagram.svg", "/rewordings"])
        {
            Assert.Equal(HttpStatusCode.NotFound, await Get(owner, $"/api/sessions/{theirs}{part}"));
        }

        using (var said = await owner.PostAsJsonAsync($"/api/sessions/{theirs}/messages", new { text = "it hums" }, TestContext.Current.CancellationToken))
        {
            Assert.Equal(HttpStatusCode.NotFound, said.StatusCode);
        }

        Assert.Equal(HttpStatusCode.Forbidden, await Get(owner, "/api/figures"));
        Assert.Contains(own, await Listed(owner));
        Assert.DoesNotContain(theirs, await Listed(owner));
        Assert.Equal(2, (await Listed(technician)).Count(id => id == own || id == theirs));
        Assert.DoesNotContain(theirs, await owner.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(AccessRole.Homeowner, "technician", HttpStatusCode.Forbidden)]
    [InlineData(AccessRole.Homeowner, "homeowner", HttpStatusCode.Created)]
    [InlineData(AccessRole.Apprentice, "technician", HttpStatusCode.Forbidden)]
    [InlineData(AccessRole.Apprentice, "apprentice", HttpStatusCode.Created)]
    [InlineData(AccessRole.Technician, "technician", HttpStatusCode.Created)]
    internal async Task Nobody_is_asked_for_more_than_the_role_may_do(AccessRole signedIn, string role, HttpStatusCode expected)
    {
        using var response = await Open(await shared.As(signedIn), role);
        Assert.Equal(expected, response.StatusCode);
    }

    [Theory]
    [InlineData(AccessRole.Manager, HttpStatusCode.OK)]
    [InlineData(AccessRole.Technician, HttpStatusCode.Forbidden)]
    [InlineData(AccessRole.Apprentice, HttpStatusCode.Forbidden)]
    internal async Task Only_a_manager_signs_off_and_deletes(AccessRole role, HttpStatusCode expected)
    {
        var browser = await shared.As(role);
        var id = await Id(await Open(browser, role == AccessRole.Apprentice ? "apprentice" : "technician"));
        using var response = await browser.PostAsJsonAsync($"/api/sessions/{id}/review", new { verdict = "ok" }, TestContext.Current.CancellationToken);
        Assert.Equal(expected, response.StatusCode);
        using var deleted = await browser.DeleteAsync($"/api/sessions/{id}?who=Bera&why=asked%20to", TestContext.Current.CancellationToken);
        Assert.Equal(expected, deleted.StatusCode);
    }

    private static async Task<List<string>> Listed(HttpClient browser) =>
        [.. (await browser.GetFromJsonAsync<JsonElement>("/api/sessions", TestContext.Current.CancellationToken)).GetProperty("items").EnumerateArray().Select(item => item.GetProperty("id").GetString()!)];
}
