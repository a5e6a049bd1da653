using Microsoft.Playwright;

namespace WireCoach.Browser.Tests;

/// <summary>The journeys beside the main job, and what every page must bear.</summary>
public sealed class PagesTest(Bench bench)
{
    /// <summary>The supply and the instrument that suit the first practice motor.</summary>
    private static readonly System.Text.RegularExpressions.Regex Expected = new("240 V, two legs|isolating transformer", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1));

    [Theory]
    [InlineData("phone")]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    [InlineData("desk-dark")]
    public async Task Pages_without_a_job_are_sound(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        foreach (var path in new[] { "/", "/sessions", "/practice", "/figures", "/no-such-page", "/sessions/none", "/sessions/none/log", "/sessions/none/plan" })
        {
            await visitor.Go(path);
            await visitor.Picture($"page{path.Replace('/', '-')}", whole: true);
            await visitor.CheckNarrow();
            await visitor.Check();
        }
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("phone-no-scripts")]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    [InlineData("desk-no-scripts")]
    public async Task Somebody_at_home_whose_motor_hums_is_told_whom_to_take_it_to(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Pick("Homeowner");
        await visitor.Page.FillAsync("#words", "The shelf conveyor just hums and does not start.");
        await visitor.Press("Begin");
        for (var turn = 0; await visitor.Page.Locator(".ask").CountAsync() > 0; turn++)
        {
            Assert.True(turn < 20, "The conversation does not end.");
            await visitor.Picture($"home-{turn:00}");
            await visitor.Check();
            if (Device.Of(device).Scripts)
            {
                Assert.Empty(await visitor.Unseen());
            }

            await visitor.Page.Locator(".ask .tile label").First.ClickAsync();
            await visitor.Press(visitor.Page.Locator(".ask button.go").First);
        }

        await visitor.Picture("home-done");
        await visitor.Check();
        Assert.Equal("referred", (await visitor.Read()).GetProperty("status").GetString());
        Assert.Contains("motor shop", await visitor.Page.Locator(".refer").InnerTextAsync(), StringComparison.Ordinal);
        await TakesACardAlong(visitor);
    }

    /// <summary>What the next person has to know stands there to the end, whatever else is asked meanwhile; of leads and plans nobody at home needs a word.</summary>
    private static async Task TakesACardAlong(Visitor visitor)
    {
        var card = await visitor.Page.Locator(".handed > li").AllInnerTextsAsync();
        Assert.InRange(card.Count, 3, 8);
        Assert.Contains(card, line => line.Contains("shelf conveyor", StringComparison.Ordinal));
        await visitor.Page.FillAsync("#typed", "can I just put a bigger capacitor");
        await visitor.Press("Send");
        await visitor.Picture("home-asked");
        Assert.Equal(card, await visitor.Page.Locator(".handed > li").AllInnerTextsAsync());
        Assert.Equal(0, await visitor.Page.Locator("#leads, #plan").CountAsync());
        Assert.Contains("Plug is out", await visitor.Page.Locator(".safe").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("phone", "Homeowner", true)]
    [InlineData("desk", "Technician", false)]
    public async Task A_danger_stands_above_the_question_until_it_is_switched_off_and_stays_for_whom_it_keeps_off(string device, string role, bool stays)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Pick(role);
        await visitor.Page.FillAsync("#words", "The grinder smokes and I got a shock from its case.");
        await visitor.Press("Begin");
        await visitor.Picture($"danger-{role}");
        var danger = visitor.Page.Locator(".talk > .caution.stop-get-qualified-person").First;
        Assert.True((await danger.BoundingBoxAsync())!.Y < (await visitor.Page.Locator("#asked").BoundingBoxAsync())!.Y);
        await visitor.Check();
        await visitor.Pick("Yes, done");
        await visitor.Press(visitor.Page.Locator(".ask button.go").First);
        Assert.Equal(stays, await danger.CountAsync() > 0);
        Assert.Equal(stays, await visitor.Page.Locator(".handed").CountAsync() > 0);
        Assert.Equal(stays, await visitor.Page.Locator("#asked").CountAsync() == 0);
        Assert.NotEmpty(await visitor.Page.Locator("[aria-labelledby=standing] li").AllInnerTextsAsync());
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk-no-scripts")]
    public async Task A_practice_motor_answers_the_meter(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/practice");
        await visitor.Page.Locator("summary", new() { HasText = "A certain motor" }).ClickAsync();
        await visitor.Page.SelectOptionAsync("#layout", "capacitor-start-dual-6");
        await visitor.Page.FillAsync("#seed", "7");
        await visitor.Press("Give me a motor");
        var probed = 0;
        for (var turn = 0; turn < 30 && probed < 3; turn++)
        {
            var probe = visitor.Page.Locator(".probe button");
            if (await probe.CountAsync() > 0)
            {
                await visitor.Picture($"practice-{turn:00}");
                await visitor.Press(probe);
                probed++;
                continue;
            }

            if (await visitor.Choose() == 0)
            {
                await visitor.Press(visitor.Page.Locator(".ask button[name='Given.CannotTell']"));
            }
        }

        Assert.Equal(3, probed);
        Assert.Contains((await visitor.Read()).GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "reading");
        await visitor.Check();
    }

    [Fact]
    public async Task An_empty_answer_is_refused_in_place_and_gets_the_focus()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        await visitor.Go("/");
        await visitor.Press("Begin");
        await visitor.Press("Save");
        Assert.True(await visitor.Page.Locator(".wrong-line").IsVisibleAsync());
        await Settled(visitor, "ask-wrong");
        await visitor.Picture("refused");
        await visitor.Check();
    }

    [Fact]
    public async Task The_keyboard_alone_answers_and_the_focus_goes_to_the_next_question()
    {
        await using var visitor = await bench.Visit(Device.Desk);
        await visitor.Go("/");
        await visitor.Page.FocusAsync("#words");
        await visitor.Page.Keyboard.TypeAsync("Six leads tagged a b c d e f, no marks.");
        var begin = visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true });
        await TabTo(visitor, begin);
        await visitor.Page.Keyboard.PressAsync("Enter");
        await visitor.Page.Locator("#asked").WaitForAsync();
        await visitor.Page.Locator("#main").FocusAsync();
        await TabTo(visitor, visitor.Page.Locator(".ask input[type=radio]").First);
        await visitor.Page.Keyboard.PressAsync("Space");
        var before = await visitor.Page.Locator("#asked").InnerTextAsync();
        await TabTo(visitor, visitor.Page.Locator(".ask button.go").First);
        await visitor.Page.Keyboard.PressAsync("Enter");
        await visitor.Page.WaitForFunctionAsync("before => (document.querySelector('#asked')?.innerText ?? before) !== before", before);
        await Settled(visitor, "asked");
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>("() => Math.round(window.scrollY)"));
    }

    [Fact]
    public async Task A_manager_signs_a_job_off_on_its_log()
    {
        await using var visitor = await bench.Visit(Device.Desk);
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", "The stirrer trips its breaker at once.");
        await visitor.Press("Begin");
        await visitor.Go($"/sessions/{visitor.Session}/log");
        await visitor.Check();
        await visitor.Pick("Do it again");
        await visitor.Page.FillAsync("#note", "Insulation is not written down.");
        await visitor.Page.FillAsync("#judge-who", "F. Holm");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await visitor.Page.GetByText("Do it again Insulation is not written down.").First.WaitForAsync();
        await visitor.Picture("signed", whole: true);
        Assert.Equal("redo", (await visitor.Read()).GetProperty("review").GetProperty("verdict").GetString());
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk-no-scripts")]
    public async Task A_manager_sees_the_other_jobs_on_a_motor_and_deletes_one_for_good(string device)
    {
        var motor = $"stirrer {device}";
        await using var visitor = await bench.Visit(Device.Of(device));
        foreach (var words in new[] { "It hums.", "It trips the breaker." })
        {
            await visitor.Go("/");
            await visitor.Page.FillAsync("#words", words);
            await visitor.Page.Locator("summary", new() { HasText = "More for the log" }).ClickAsync();
            await visitor.Page.FillAsync("#motor", motor);
            await visitor.Press("Begin");
        }

        var session = visitor.Session;
        await visitor.Go($"/sessions/{session}/log");
        Assert.Contains("Other jobs on this motor", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("The same facts lead to the same decisions.", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(0, await visitor.Page.Locator("input[name='Verdict.Verdict']:checked").CountAsync());
        await visitor.Picture("log-before-deleting", whole: true);
        await visitor.Check();
        await visitor.Page.Locator("summary", new() { HasText = "Delete this job" }).ClickAsync();
        await visitor.Press("Delete it");
        Assert.Equal(1, await visitor.Page.Locator("#wrong").CountAsync());
        await visitor.Page.FillAsync("#delete-why", "entered twice");
        await visitor.Press("Delete it");
        Assert.EndsWith("/sessions", visitor.Page.Url, StringComparison.Ordinal);
        await visitor.Page.Locator("summary", new() { HasText = "Deleted jobs" }).ClickAsync();
        await visitor.Picture("sessions-with-deleted", whole: true);
        Assert.Contains($"{session} · entered twice", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Go($"/sessions/{session}/log");
        Assert.Contains("There is no such job", await visitor.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("phone-dark")]
    [InlineData("phone-no-scripts")]
    [InlineData("desk")]
    [InlineData("desk-no-scripts")]
    public async Task An_apprentice_probes_freely_and_compares_with_the_coach(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/practice");
        await visitor.Page.SelectOptionAsync("#family", "single-phase");
        await visitor.Page.SelectOptionAsync("#fault", "open-start-winding");
        await visitor.Page.SelectOptionAsync("#leads", "some");
        await visitor.Press("Give me a motor");
        await visitor.Press("Read the meter");
        Assert.Contains("Choose an end", await visitor.Page.Locator("#wrong").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Page.Locator("input[name='Free.From']").First.CheckAsync();
        await visitor.Page.Locator("input[name='Free.To']").Last.CheckAsync();
        await visitor.Press("Read the meter");
        Assert.Contains("frame", await visitor.Page.Locator(".shown").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Picture("practice-free", whole: true);
        await visitor.Check();
        await visitor.CheckNarrow();
        await visitor.Press("Compare with the coach and see what the motor hides");
        Assert.DoesNotContain("True marking", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Check();
        await visitor.Page.SelectOptionAsync("#fault", "open-start-winding");
        await visitor.Press("Show me");
        var row = await visitor.Page.Locator(".compared", new() { HasText = "Times the meter was put on" }).Locator("dd").AllInnerTextsAsync();
        Assert.Equal("1", row[0]);
        Assert.InRange(int.Parse(row[1], System.Globalization.CultureInfo.InvariantCulture), 2, 60);
        Assert.Contains("True marking", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Picture("practice-compared", whole: true);
        await visitor.Check();
        await visitor.CheckNarrow();
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk-no-scripts")]
    public async Task A_newcomer_has_a_practice_motor_answered_at_once_and_then_told_to_the_end(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        var offer = (await visitor.Page.GetByText("Start with a practice motor").BoundingBoxAsync())!;
        Assert.True(offer.Y + offer.Height <= Device.Of(device).Height, "A newcomer has to look for the practice motor.");
        await visitor.Press("Start with a practice motor");
        await visitor.Page.Locator("input[name='Free.From']").Nth(0).CheckAsync();
        await visitor.Page.Locator("input[name='Free.To']").Nth(1).CheckAsync();
        await visitor.Press("Read the meter");
        Assert.True(await visitor.Page.Locator(".shown").IsVisibleAsync());
        var presses = 4;
        for (; (await visitor.Read()).GetProperty("assessment").GetProperty("plan").ValueKind != System.Text.Json.JsonValueKind.Object; presses++)
        {
            Assert.True(presses < 60, "The practice does not end.");
            var probe = visitor.Page.Locator(".probe button");
            if (await probe.CountAsync() > 0)
            {
                await visitor.Picture($"newcomer-{presses:00}");
                await visitor.Press(probe);
                continue;
            }

            presses += await visitor.Choose(Expected) - 1;
        }

        await visitor.Picture("newcomer-plan", whole: true);
        await visitor.Check();
        await visitor.Press("Compare with the coach and see what the motor hides");
        await visitor.Page.SelectOptionAsync("#layout", "capacitor-start-dual-6");
        await visitor.Press("Show me");
        Assert.Contains("You have it right.", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visitor.Complaints);
    }

    private static async Task TabTo(Visitor visitor, ILocator target)
    {
        for (var tabs = 0; tabs < 40; tabs++)
        {
            if (await target.EvaluateAsync<bool>("one => one === document.activeElement || (one.type === 'radio' && one.name === document.activeElement.name)"))
            {
                return;
            }

            await visitor.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab does not lead to {target}.");
    }

    private static async Task Settled(Visitor visitor, string id) =>
        await visitor.Page.WaitForFunctionAsync("id => document.activeElement?.id === id", id);
}
