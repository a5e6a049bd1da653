using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>A long log in steps: nothing is lost, and what counts stays in view.</summary>
public sealed class TimelineStepTest
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 8, 0, 0, TimeSpan.Zero);

    private static readonly IReadOnlyList<LogEntry> Log =
    [
        Entry(0, "opened"), Entry(0, "facts-taken", "it hums") with { Facts = [new Fact.Symptom { Present = true, Id = "hums-no-start" }] }, Entry(0, "said", "I read"),
        Entry(0, "caution-shown", "isolate"), Entry(0, "concluded"), Entry(0, "asked", "Isolated?"),
        Entry(1, "facts-taken"), Entry(1, "asked", "Ohms?"),
        Entry(2, "facts-taken"), Entry(2, "said", "a winding"), Entry(2, "said", "another"),
        Entry(3, "reviewed", "do it again"),
    ];

    [Fact]
    public void A_step_begins_with_what_a_person_did_and_keeps_what_followed()
    {
        var steps = TimelineStep.Of(Log);
        Assert.Equal([0, 1, 2, 3], steps.Select(step => (step.At - Start).TotalSeconds));
        Assert.Equal([null, "Isolated?", "Ohms?", null], steps.Select(step => step.Asked));
        Assert.Equal(["caution-shown", "concluded"], steps[0].InView.Select(entry => entry.Type));
        Assert.Equal([1, 0, 2, 0], steps.Select(step => step.Folded.Count));
        Assert.Equal(["reviewed"], steps[3].Given.Select(entry => entry.Type));
    }

    [Fact]
    public void Every_entry_stands_somewhere()
    {
        var steps = TimelineStep.Of(Log);
        var shown = steps.SelectMany(step => step.Given.Concat(step.InView).Concat(step.Folded)).Select(entry => entry.Sequence).ToHashSet();
        var questions = steps.Select(step => step.Leaves).OfType<string>().ToList();
        Assert.All(Log, entry => Assert.True(shown.Contains(entry.Sequence) || questions.Contains(entry.Text!)));
    }

    [Fact]
    public void A_decision_shows_every_rule_that_was_said_with_it()
    {
        var step = new TimelineStep(null,
        [
            Entry(0, "facts-taken"), Entry(0, "said") with { Id = "reply.read" }, Entry(0, "said") with { Id = "coach.winding", Rules = ["winding-resistance"] },
            Entry(0, "said") with { Id = "gate.condition.smoke" }, Entry(0, "said") with { Id = "coach.winding", Rules = ["winding-resistance"] },
            Entry(0, "caution-shown") with { Id = "stop-smoke-or-fire" }, Entry(0, "concluded") with { Id = "open" },
        ]);
        Assert.Equal(["winding-resistance", "gate.condition.smoke"], step.Behind(step.InView[^1]));
        Assert.Equal(["stop-smoke-or-fire"], step.Behind(step.InView[0]));
        Assert.Empty(step.Behind(step.Given[0]));
    }

    private static int _next;

    private static LogEntry Entry(int second, string type, string? text = null) => new() { Sequence = ++_next, At = Start.AddSeconds(second), Type = type, Text = text };
}
