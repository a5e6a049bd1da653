using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Safety;

namespace WireCoach.Rules.Tests.Safety;

/// <summary>What is said to somebody who asks whether they may do it.</summary>
public sealed class OpenWorkTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    [Theory]
    [InlineData(Role.Technician, false, "once you isolate, lock, and prove dead: looking, turning by hand and reading the plate; measuring ohms")]
    [InlineData(Role.Technician, true, "Open to you now: looking, turning by hand and reading the plate; measuring ohms")]
    [InlineData(Role.Apprentice, false, "once you isolate, lock, and prove dead; have a named competent person beside you: a test with a cell")]
    [InlineData(Role.Homeowner, false, "once you pull the plug and keep it in sight: looking, turning by hand and reading the plate; measuring ohms")]
    [InlineData(Role.Homeowner, true, "Not for you here: a test with a cell")]
    public void It_is_said_in_the_words_of_who_asks(Role role, bool isolated, string said) =>
        Assert.Contains(Say(role, isolated), sentence => sentence.Contains(said, StringComparison.Ordinal));

    /// <summary>Every task stands in exactly one of the sentences.</summary>
    [Theory]
    [InlineData(Role.Technician)]
    [InlineData(Role.Apprentice)]
    [InlineData(Role.Homeowner)]
    [InlineData(Role.Manager)]
    public void Each_kind_of_work_is_named_once(Role role)
    {
        foreach (var isolated in new[] { false, true })
        {
            var said = string.Join(' ', Say(role, isolated));
            Assert.All(Trade.Knowledge.GateTasks.Values, task => Assert.Equal(2, said.Split(task.Name).Length));
        }
    }

    /// <summary>Somebody at home who felt a shock is told of no work that is open.</summary>
    [Fact]
    public void Where_the_machine_is_to_be_left_alone_nothing_is_open()
    {
        var file = CaseFile.From(new CaseOpening(Role.Homeowner, Region.NorthAmerica), [new Fact.Symptom { Id = "shock-from-frame", Present = true }]);
        var gate = Coach.Assess(file).Gate;
        Assert.NotNull(gate.KeptFor);
        Assert.Equal("asked.may-not", Assert.Single(OpenWork.Say(gate, Trade.Knowledge)).Id);
    }

    private static List<string> Say(Role role, bool isolated)
    {
        var file = CaseFile.From(new CaseOpening(role, Region.NorthAmerica), [new Fact.Symptom { Id = "hums-no-start", Present = true }, new Fact.Capacitor { Present = false }, new Fact.Plate { Field = "volts", Value = PlateValue.Of(115) }, .. isolated ? [new Fact.Confirm { Id = "isolated" }] : Array.Empty<Fact>()]);
        return [.. OpenWork.Say(Coach.Assess(file).Gate, Trade.Knowledge).Select(one => Trade.Knowledge.Sentences.Render(one, role))];
    }
}
