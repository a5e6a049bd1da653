using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using WireCoach.Service.Tests.Conversations;

namespace WireCoach.Browser.Tests;

/// <summary>For who uses no mouse, large letters, own colours or no movement.</summary>
public sealed class AccessTest(Bench bench)
{
    private const int SameRow = 80;

    // What has the focus: its place on the page, whether a thick line shows it, and whether something lies over it.
    private const string Focused = """
        () => {
          const e = document.activeElement;
          if (!e || e === document.body) return null;
          const seen = e.matches('.end input, .units input, .ol input, .tile input') ? e.closest('label') ?? e.nextElementSibling : e;
          const style = getComputedStyle(seen), box = seen.getBoundingClientRect();
          const top = document.elementFromPoint(box.left + Math.min(box.width, innerWidth) / 2, Math.max(1, box.top) + Math.min(box.height, 30) / 2);
          return {
            id: e.id || e.getAttribute('href') || e.textContent.trim().slice(0, 30),
            tag: e.tagName,
            column: e.closest('.bench > div')?.className ?? '',
            top: Math.round(box.top + scrollY + (e.closest('.bench > div')?.scrollTop ?? 0)),
            outline: style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth),
            covered: !(top && (seen.contains(top) || top.contains(seen) || e === top)),
          };
        }
        """;

    // What can be touched, scrolled to where it is seen, and still lies partly beside the screen.
    private const string Lost = """
        () => [...document.querySelectorAll('main button, main summary, main select, main textarea, main input:not([type=hidden])')]
          .filter(e => e.checkVisibility({ visibilityProperty: true }) && e.getBoundingClientRect().width > 0)
          .filter(e => {
            e.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
            const box = e.getBoundingClientRect();
            return box.left < -1 || box.right > innerWidth + 1;
          })
          .map(e => `${location.pathname}: ${e.outerHTML.slice(0, 80)} leaves the screen.`)
        """;

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    [InlineData("desk-dark")]
    public async Task The_whole_job_is_done_by_keyboard_alone(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await TabTo(visitor, "#words");
        await visitor.Page.Keyboard.TypeAsync(TechnicianTest.FirstWords);
        await Submit(visitor, visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }));
        var answers = new BenchAnswers(new BenchMotor(TechnicianTest.Tags, 1.5, 3.4)) { Supply = 240 };
        var session = await visitor.Read();
        for (var turn = 0; session.GetProperty("assessment").GetProperty("next") is { ValueKind: JsonValueKind.Object } ask; turn++)
        {
            Assert.True(turn < 60, $"The conversation does not end at {ask}.");
            await Answer(visitor, JsonSerializer.SerializeToElement(answers.Answer(ask, session.GetProperty("assessment").GetProperty("plan"))));
            session = await visitor.Read();
        }

        Assert.Equal("verified", session.GetProperty("status").GetString());
    }

    [Theory]
    [InlineData("phone", "/")]
    [InlineData("phone", "job")]
    [InlineData("desk", "job")]
    [InlineData("desk-dark", "job")]
    [InlineData("phone", "log")]
    [InlineData("desk", "/practice")]
    [InlineData("phone", "/sessions")]
    [InlineData("desk", "/calculators/supply")]
    [InlineData("phone-dark", "/figures")]
    [InlineData("desk", "readings")]
    public async Task The_focus_goes_down_the_page_and_is_always_seen(string device, string path)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await Open(visitor, path);
        var (before, within, seen) = (-1, string.Empty, new List<string>());
        for (var tabs = 0; tabs < 80; tabs++)
        {
            await visitor.Page.Keyboard.PressAsync("Tab");
            if (await visitor.Page.EvaluateAsync<JsonElement?>(Focused) is not { ValueKind: JsonValueKind.Object } focus)
            {
                break;
            }

            var id = $"{focus.GetProperty("tag").GetString()} {focus.GetProperty("id").GetString()}";
            Assert.True(focus.GetProperty("outline").GetDouble() >= 3, $"{id} shows its focus with {focus.GetProperty("outline")} px.");
            Assert.False(focus.GetProperty("covered").GetBoolean(), $"{id} has the focus under something else.");
            var top = focus.GetProperty("top").GetInt32();
            var column = focus.GetProperty("column").GetString()!;
            var besides = device.StartsWith("desk", StringComparison.Ordinal) && path != "job"; // pages with cards side by side begin again at the top of the next card
            Assert.True(column != within || besides || top >= before - SameRow, $"{id} at {top} comes after something at {before}.");
            (before, within) = (top, column);
            seen.Add(id);
        }

        Assert.True(seen.Count > 5, string.Join(", ", seen));
    }

    [Theory]
    [InlineData(640, 400)]
    [InlineData(320, 256)]
    public async Task At_two_and_four_times_the_size_nothing_is_lost(int width, int height)
    {
        await using var visitor = await bench.Visit(Device.Desk with { Name = $"zoom-{width}", Width = width, Height = height });
        foreach (var path in new[] { "/", "job", "readings", "log", "/sessions", "/practice", "/figures", "/calculators/supply", "/demonstration", "/retention" })
        {
            await Open(visitor, path);
            await visitor.Picture($"zoom{path.Replace('/', '-')}", whole: true);
            await visitor.CheckWidth();
            Assert.Empty(await visitor.Page.EvaluateAsync<string[]>(Lost));
            var cut = await visitor.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('main p, main h1, main h2, main label, main button, main td, main th, main legend, main summary')]
                  .filter(e => e.checkVisibility() && !e.closest('.unseen, .scroll, .job') && !e.matches('.job, .unseen') && getComputedStyle(e).overflow !== 'visible' && e.scrollWidth > e.clientWidth + 1).map(e => e.textContent.trim().slice(0, 40))
                """);
            Assert.Empty(cut);
        }
    }

    [Fact]
    public async Task In_forced_colours_what_is_chosen_and_what_can_be_pressed_still_show()
    {
        await using var visitor = await bench.Visit(Device.Phone with { Name = "forced" });
        await visitor.Page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active });
        foreach (var path in new[] { "/", "job", "readings", "practice-job" })
        {
            await Open(visitor, path);
            await visitor.Picture($"forced{path.Replace('/', '-')}", whole: true);
            var bare = await visitor.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('button, .tile label, .end label, .pair .ol, input:not([type=hidden], [type=radio], [type=checkbox]), textarea, select')]
                  .filter(e => e.checkVisibility() && (parseFloat(getComputedStyle(e).borderTopWidth) < 1 || getComputedStyle(e).borderTopStyle === 'none')).map(e => e.outerHTML.slice(0, 60))
                """);
            Assert.Empty(bare);
            var same = await visitor.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('.units input, .end input')].filter(e => e.checkVisibility()).flatMap(e => {
                  const before = getComputedStyle(e.nextElementSibling).outlineStyle;
                  const was = e.checked; e.checked = true;
                  const after = getComputedStyle(e.nextElementSibling).outlineStyle;
                  const shown = after !== 'none';
                  e.checked = was;
                  return shown ? [] : [`${e.id}: ${before} to ${after}`];
                })
                """);
            Assert.Empty(same);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("job")]
    [InlineData("readings")]
    public async Task Who_wants_no_movement_sees_none(string path)
    {
        await using var visitor = await bench.Visit(Device.Desk);
        await Open(visitor, path);
        const string Moving = "() => [...document.querySelectorAll('*')].filter(e => getComputedStyle(e).transitionDuration.split(',').some(time => parseFloat(time) > 0) || getComputedStyle(e).animationName !== 'none' || getComputedStyle(e).scrollBehavior === 'smooth').length";
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>(Moving));
        await visitor.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.NoPreference });
        Assert.True(path != "/" || await visitor.Page.EvaluateAsync<int>(Moving) > 0, "There is nothing that could move: the question would prove nothing.");
    }

    /// <summary>A page, or a state of a job.</summary>
    private static async Task Open(Visitor visitor, string path)
    {
        if (path.StartsWith('/'))
        {
            await visitor.Go(path);
            return;
        }

        await visitor.Go("/");
        if (path == "practice-job")
        {
            await visitor.Press("Start with a practice motor");
            return;
        }

        await visitor.Page.FillAsync("#words", TechnicianTest.FirstWords);
        await visitor.Press("Begin");
        await visitor.Pick("Yes, done");
        await visitor.Press(visitor.Page.Locator(".ask button.go").First);
        if (path != "job")
        {
            await visitor.Go($"/sessions/{visitor.Session}/{path}");
        }
    }

    private static async Task Answer(Visitor visitor, JsonElement answer)
    {
        var save = visitor.Page.Locator(".ask button.go").First;
        if (answer.TryGetProperty("unknown", out _))
        {
            await Submit(visitor, visitor.Page.Locator("button[name='Given.CannotTell']"));
            return;
        }

        if (answer.TryGetProperty("choice", out var choice))
        {
            await Choose(visitor, $"Given-Choice-{choice.GetString()}");
        }
        else if (answer.TryGetProperty("confirmed", out var confirmed))
        {
            await Choose(visitor, $"Given-Choice-{(confirmed.GetBoolean() ? "yes" : "no")}");
        }
        else if (answer.TryGetProperty("quantity", out var quantity))
        {
            await Fill(visitor, quantity.GetProperty("value"));
        }
        else if (answer.GetProperty("reading").TryGetProperty("ohms", out var ohms))
        {
            await Fill(visitor, ohms);
        }
        else
        {
            await Choose(visitor, "Given-Shown-open");
        }

        await Submit(visitor, save);
    }

    private static async Task Fill(Visitor visitor, JsonElement number)
    {
        await TabTo(visitor, "#value");
        await visitor.Page.Keyboard.TypeAsync(number.GetDouble().ToString("0.####", CultureInfo.InvariantCulture));
    }

    /// <summary>Tab leads into a group of answers, the arrows within it, the space bar picks.</summary>
    private static async Task Choose(Visitor visitor, string id)
    {
        var wanted = visitor.Page.Locator($"[id='{id}']");
        await TabTo(visitor, wanted, "one => one === document.activeElement || (document.activeElement.type === 'radio' && one.name === document.activeElement.name)");
        for (var tries = 0; !await wanted.EvaluateAsync<bool>("one => one === document.activeElement"); tries++)
        {
            Assert.True(tries < 12, $"The arrows do not lead to {id}.");
            await visitor.Page.Keyboard.PressAsync("ArrowDown");
        }

        await visitor.Page.Keyboard.PressAsync("Space");
        Assert.True(await wanted.IsCheckedAsync());
    }

    private static async Task Submit(Visitor visitor, ILocator button)
    {
        await TabTo(visitor, button, "one => one === document.activeElement");
        await visitor.Press(button, () => visitor.Page.Keyboard.PressAsync("Enter"));
        await visitor.Page.WaitForFunctionAsync("() => ['asked', 'main', 'BODY'].includes(document.activeElement.id || document.activeElement.tagName)");
    }

    private static Task TabTo(Visitor visitor, string selector) => TabTo(visitor, visitor.Page.Locator(selector), "one => one === document.activeElement");

    private static async Task TabTo(Visitor visitor, ILocator target, string reached)
    {
        for (var tabs = 0; tabs < 60; tabs++)
        {
            if (await target.EvaluateAsync<bool>(reached))
            {
                return;
            }

            await visitor.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab does not lead to {target} on {visitor.Page.Url}.");
    }
}
