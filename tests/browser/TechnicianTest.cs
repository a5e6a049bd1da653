using System.Text.Json;
using WireCoach.Service.Tests.Conversations;

namespace WireCoach.Browser.Tests;

/// <summary>The main job by tapping: from the start page to a motor that was run and found right.</summary>
public sealed class TechnicianTest(Bench bench)
{
    private const string FirstWords =
        "Brine pump from the dairy: plate says 3/4 hp 115/230 V 10.4/5.2 A 1140 rpm 60 Hz single phase. Six leads tagged 1 2 3 4 5 6, no marks. "
        + "It goes on 240 V. I have a multimeter, a clamp meter, an insulation tester and a low-voltage AC supply.";

    private static readonly Dictionary<string, string> Tags = new(StringComparer.Ordinal)
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
            await visitor.Answer(ask, answers.Answer(ask, session.GetProperty("assessment").GetProperty("plan")));
            session = await visitor.Read();
        }

        await visitor.Picture("job-done", whole: true);
        await Look(visitor, device, "done");
        Assert.Equal("verified", session.GetProperty("status").GetString());
        Assert.Contains("Done", await visitor.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);

        await visitor.Go($"/sessions/{visitor.Session}/plan");
        await visitor.Picture("plan", whole: true);
        await Look(visitor, device, "plan");
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

    /// <summary>One state of each kind is looked at closely; the desk never scrolls as a whole, and a phone shows the question without a touch.</summary>
    private static async Task Look(Visitor visitor, string device, string state)
    {
        if ((device is "phone" or "desk") && (state is "isolated" or "capacitor" or "probe-zero" or "reading.1.2" or "connected" or "first-start" or "run-volts" or "run-direction" or "done" or "plan" or "log"
            || state.StartsWith("ends.", StringComparison.Ordinal)))
        {
            if (Device.Of(device).Scripts)
            {
                await visitor.Check();
            }

            await visitor.CheckNarrow();
        }

        if (state is not ("plan" or "log"))
        {
            var scroll = await visitor.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight - window.innerHeight");
            Assert.True(device is not ("desk" or "desk-no-scripts") || scroll <= 0, $"{state} scrolls by {scroll} px.");
            var question = await visitor.Page.Locator("h1").First.BoundingBoxAsync();
            Assert.True(question!.Y + question.Height < 700, $"{state}: the question ends at {question.Y + question.Height} px.");
        }
    }
}
