using System.Net.Http.Json;
using System.Text.Json;
using WireCoach.Service.Tests.Conversations;
using WireCoach.WebUi.Reports;

namespace WireCoach.Browser.Tests;

/// <summary>The main job by tapping: from the start page to a motor that was run and found right.</summary>
public sealed class TechnicianTest(Bench bench)
{
    internal const string FirstWords =
        "Brine pump from the dairy: plate says 3/4 hp 115/230 V 10.4/5.2 A 1140 rpm 60 Hz single phase. Six leads tagged 1 2 3 4 5 6, no marks. "
        + "It goes on 240 V. I have a multimeter, a clamp meter, an insulation tester and a low-voltage AC supply.";

    internal static readonly Dictionary<string, string> Tags = new(StringComparer.Ordinal)
    {
        ["T1"] = "4", ["T2"] = "1", ["T3"] = "2", ["T4"] = "6", ["T5"] = "3", ["T8"] = "5",
    };

    [Theory]
    [InlineData("phone")]
    [InlineData("phone-no-scripts")]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    [InlineData("desk-no-scripts")]
    public async Task Six_unmarked_leads_become_a_motor_that_was_run_and_verified(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Picture("start");
        await visitor.Page.FillAsync("#words", FirstWords);
        await visitor.Press("Begin");
        var answers = new BenchAnswers(new BenchMotor(Tags, 1.5, 3.4)) { Supply = 240 };
        var session = await visitor.Read();
        var turn = 0;
        for (; session.GetProperty("assessment").GetProperty("next") is { ValueKind: JsonValueKind.Object } ask; turn++)
        {
            Assert.True(turn < 60, $"The conversation does not end at {ask}.");
            await visitor.Picture($"job-{turn:00}-{ask.GetProperty("id").GetString()}");
            await Look(visitor, device, ask.GetProperty("id").GetString()!);
            await LookAtTheStep(visitor, ask, session.GetProperty("assessment").GetProperty("plan"));
            await visitor.Answer(ask, answers.Answer(ask, session.GetProperty("assessment").GetProperty("plan")));
            session = await visitor.Read();
        }

        await visitor.Picture("job-done", whole: true);
        await Look(visitor, device, "done");
        Assert.Equal("verified", session.GetProperty("status").GetString());
        Assert.Contains("Done", await visitor.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal($"sessions/{visitor.Session}/plan", await visitor.Page.Locator(".talk .card a.go").First.GetAttributeAsync("href"));

        await visitor.Go($"/sessions/{visitor.Session}/plan");
        await visitor.Picture("plan", whole: true);
        await Look(visitor, device, "plan");
        Assert.Equal(SessionPaper.Papers, await visitor.Page.Locator("main a[href*='report?']").EvaluateAllAsync<string[]>("all => all.map(one => new URL(one.href).searchParams.get('paper'))"));
        if (device == "desk")
        {
            await visitor.CheckPrint("plan", "A4");
            await visitor.CheckPrint("plan", "Letter");
        }

        await visitor.Go($"/sessions/{visitor.Session}/log");
        await visitor.Picture("log", whole: true);
        await Look(visitor, device, "log");
        Assert.True(await visitor.Page.Locator(".trail > li").CountAsync() > turn);
        await visitor.Go("/sessions");
        await visitor.Picture("sessions");
        Assert.Contains("Brine pump", await visitor.Page.Locator(".rows").InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(visitor.Complaints);
    }

    /// <summary>Joints that are to be made stand beside the question whether they are made; where power comes on, nothing is called safe.</summary>
    private static async Task LookAtTheStep(Visitor visitor, JsonElement ask, JsonElement plan)
    {
        var id = ask.GetProperty("id").GetString();
        Assert.Equal(id == "connected" ? plan.GetProperty("joints").GetArrayLength() : 0, await visitor.Page.Locator(".ask .joints > li").CountAsync());
        if (ask.GetProperty("task").GetString() is "first-start" or "measure-live")
        {
            Assert.Contains("Power on", await visitor.Page.Locator(".safe.not-safe").InnerTextAsync(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("battery", "battery-flick")]
    [InlineData("none", "half-run")]
    public async Task Every_way_to_tell_the_ends_shows_its_set_up_above_its_answer(string instrument, string test)
    {
        await using var visitor = await bench.Visit(Device.Phone);
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", FirstWords.Replace(" and a low-voltage AC supply", string.Empty, StringComparison.Ordinal));
        await visitor.Press("Begin");
        var answers = new BenchAnswers(new BenchMotor(Tags, 1.5, 3.4)) { Supply = 240, Instrument = instrument };
        var tested = 0;
        for (var turn = 0; turn < 40; turn++)
        {
            var session = await visitor.Read();
            var ask = session.GetProperty("assessment").GetProperty("next");
            if (ask.GetProperty("about").GetString() == test)
            {
                tested++;
                await visitor.Go($"/sessions/{visitor.Session}");
                await visitor.Picture($"ends-{instrument}-{turn:00}");
                Assert.True(await visitor.Page.Locator(".setup > li").First.IsVisibleAsync());
                Assert.Empty(await visitor.Unseen());
                await visitor.Check();
            }
            else if (tested > 0)
            {
                break;
            }

            var answered = await bench.Http.PostAsJsonAsync($"/api/sessions/{visitor.Session}/answers", answers.Answer(ask, default));
            Assert.True(answered.IsSuccessStatusCode, await answered.Content.ReadAsStringAsync());
        }

        Assert.True(tested > 0, $"{test} was never asked for.");
    }

    /// <summary>Conversation, leads, plan and trail begin within the screen of a desk.</summary>
    private static async Task AllBesideEachOther(Visitor visitor, string state)
    {
        var unseen = await visitor.Page.EvaluateAsync<string[]>("""
            height => ['h1', '#leads', '#plan', '#trail', '.trail > li'].filter(part => {
              const box = document.querySelector(part)?.getBoundingClientRect();
              return !(box && box.width > 0 && box.top >= 0 && box.bottom <= height);
            })
            """, Device.Desk.Height);
        Assert.True(unseen.Length == 0, $"{state}: not seen: {string.Join(", ", unseen)}");
    }

    /// <summary>Each state is looked at closely on one phone and one desk, some on all; the desk never scrolls as a whole, and a phone shows the question without a touch.</summary>
    private static async Task Look(Visitor visitor, string device, string state)
    {
        if (device is "phone-dark" or "desk-no-scripts" || state is "isolated" or "probe-zero" or "connected" or "first-start" or "done" or "plan" or "log" || state.StartsWith("ends.", StringComparison.Ordinal))
        {
            await visitor.Check();
            await visitor.CheckNarrow();
        }

        if (Device.Of(device).Scripts && await visitor.Page.Locator(".ask").CountAsync() > 0)
        {
            Assert.Empty(await visitor.Unseen());
        }

        if (state is not ("plan" or "log"))
        {
            var scroll = await visitor.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight - window.innerHeight");
            Assert.True(device is not ("desk" or "desk-no-scripts") || scroll <= 0, $"{state} scrolls by {scroll} px.");
            if (device is "desk" or "desk-no-scripts")
            {
                await AllBesideEachOther(visitor, state);
            }

            var question = await visitor.Page.Locator("h1").First.BoundingBoxAsync();
            Assert.True(question!.Y + question.Height < 700, $"{state}: the question ends at {question.Y + question.Height} px.");
        }
    }
}
