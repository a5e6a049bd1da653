using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using WireCoach.Service.Access;
using static WireCoach.Service.Tests.Access.SharedService;

namespace WireCoach.Service.Tests.Access;

/// <summary>On a shared service the pages offer what the role may do, and every form that changes something carries its token.</summary>
public sealed partial class LimitedPagesTest(SharedFixture shared) : IClassFixture<SharedFixture>
{
    private static readonly string[] Pages = ["/", "/sessions", "/practice", "/demonstration", "/calculators", "/figures", "/retention", "/sign-in"];
    private static readonly string[] OfSession = ["", "/log", "/readings", "/plan"];

    [Fact]
    public async Task A_stranger_is_offered_nothing_but_the_door()
    {
        var page = await shared.Service.Browser().GetStringAsync("/sign-in", TestContext.Current.CancellationToken);
        Assert.DoesNotContain("<nav", page, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"sessions\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(AccessRole.Homeowner, "Homeowner", false)]
    [InlineData(AccessRole.Apprentice, "Homeowner Apprentice", false)]
    [InlineData(AccessRole.Technician, "Technician Homeowner Manager Apprentice", true)]
    [InlineData(AccessRole.Manager, "Technician Homeowner Manager Apprentice", true)]
    internal async Task A_role_is_offered_what_it_may_open_and_the_way_out(AccessRole role, string expected, bool seesFigures)
    {
        var page = await (await shared.As(role)).GetStringAsync("/", TestContext.Current.CancellationToken);
        Assert.Equal(expected.Split(' ').Order(StringComparer.Ordinal), RoleTile().Matches(page).Select(match => match.Groups[1].Value).Order(StringComparer.Ordinal));
        Assert.Equal(seesFigures, page.Contains("href=\"figures\"", StringComparison.Ordinal));
        Assert.Contains("href=\"sign-in\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(AccessRole.Manager, true)]
    [InlineData(AccessRole.Technician, false)]
    internal async Task Only_a_manager_is_shown_the_forms_that_sign_off_and_delete(AccessRole role, bool expected)
    {
        var browser = await shared.As(role);
        var id = await Id(await Open(browser, "technician"));
        var log = await browser.GetStringAsync($"/sessions/{id}/log", TestContext.Current.CancellationToken);
        Assert.Equal(expected, log.Contains("value=\"review\"", StringComparison.Ordinal));
        Assert.Equal(expected, log.Contains("value=\"delete\"", StringComparison.Ordinal));
        var list = await browser.GetStringAsync("/sessions", TestContext.Current.CancellationToken);
        Assert.Equal(expected, list.Contains("href=\"retention\"", StringComparison.Ordinal));
        var token = Token(await browser.GetStringAsync("/", TestContext.Current.CancellationToken));
        using var deleted = await SharedService.Post(browser, $"/sessions/{id}/log", ("_handler", "delete"), ("__RequestVerificationToken", token), ("Deleting.Why", "asked to"));
        Assert.Equal(expected ? HttpStatusCode.NotFound : HttpStatusCode.OK, await Get(browser, $"/api/sessions/{id}"));
    }

    [Fact]
    public async Task Every_form_that_posts_carries_its_token_and_none_is_taken_without()
    {
        var browser = await shared.As(AccessRole.Manager);
        var id = await Id(await Open(browser, "technician"));
        using (var said = await browser.PostAsJsonAsync($"/api/sessions/{id}/messages", new { text = "1-4 is 1.7" }, TestContext.Current.CancellationToken))
        {
            Assert.Equal(HttpStatusCode.OK, said.StatusCode);
        }

        var handlers = new HashSet<string>(StringComparer.Ordinal);
        foreach (var path in Pages.Concat(OfSession.Select(part => $"/sessions/{id}{part}")))
        {
            var page = await browser.GetStringAsync(path, TestContext.Current.CancellationToken);
            foreach (var form in Form().Matches(page).Select(match => match.Value).Where(form => form.Contains("method=\"post\"", StringComparison.Ordinal)))
            {
                Assert.Contains("__RequestVerificationToken", form, StringComparison.Ordinal);
                var handler = Handler().Match(form).Groups[1].Value;
                handlers.Add(handler);
                using var taken = await SharedService.Post(browser, path, ("_handler", handler), ("Verdict.Verdict", "ok"), ("Deleting.Why", "x"));
                Assert.Equal(HttpStatusCode.BadRequest, taken.StatusCode);
            }
        }

        Assert.Subset(handlers, new HashSet<string>(["open", "practice", "review", "delete", "sign-out"], StringComparer.Ordinal));
        Assert.Equal(HttpStatusCode.OK, await Get(browser, $"/api/sessions/{id}"));
    }

    [GeneratedRegex("id=\"role-([A-Za-z]+)\"", RegexOptions.NonBacktracking)]
    private static partial Regex RoleTile();

    [GeneratedRegex("<form[^>]*>(?:[^<]|<[^/]|</[^f])*", RegexOptions.NonBacktracking)]
    private static partial Regex Form();

    [GeneratedRegex("name=\"_handler\" value=\"([^\"]+)\"", RegexOptions.NonBacktracking)]
    private static partial Regex Handler();
}
