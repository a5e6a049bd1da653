using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>What was understood is said back in words that a person uses, not in the ids of the contract.</summary>
public sealed class EchoTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    [Fact]
    public void Facts_are_said_back_as_people_say_them()
    {
        Assert.Equal("done: isolated, locked and proved dead", Said(new Fact.Confirm { Id = "isolated" }));
        Assert.Equal("done: plug out and in sight", Said(new Fact.Confirm { Id = "isolated" }, Role.Homeowner));
        Assert.Equal("capacitor: off and bridged", Said(new Fact.Choice { Question = "capacitor-bridged", Option = "bridged" }));
        Assert.Equal("looking at the capacitor: bulged, leaking or burst", Said(new Fact.BenchTest { Test = "capacitor-look", Outcome = "swollen" }));
        Assert.Equal("it starts when it is spun", Said(new Fact.Symptom { Id = "starts-if-spun" })); // one flick tells nothing of the other way round
        Assert.Equal("left in the capacitor: 3 V", Said(new Fact.BenchTest { Test = "capacitor-residual", Value = 3, Unit = "volt" }));
        Assert.Equal("joints from 1 to frame: over-range (open)", Said(new Fact.BenchTest { Test = "joint-resistance", Read = ["1", "frame"], Outcome = "open" }));
        Assert.Equal("at the run: it ran up and runs, 241 V, turns the wrong way", Said(new Fact.Running { Outcome = "ran", Volts = 241, Direction = "wrong" }));
        Assert.Equal("plate service factor: 1.15", Said(new Fact.Plate { Field = "serviceFactor", Value = PlateValue.Parse("1.15") }));
        Assert.Equal("supply: 240 V, single-phase, 60 Hz", Said(new Fact.Supply { Volts = 240, Phases = 1, Hertz = 60 }));
        Assert.Equal("danger told of: a shock or a tingle was felt", Said(new Fact.Choice { Question = "danger.shock-felt", Option = "said" }));
        Assert.Equal("still to be said: whether it hums or is silent", Said(new Fact.Choice { Question = "unsettled.no-start", Option = "yes" }));
        Assert.Equal("can't tell: reading between two leads", Said(new Fact.Unknown { Question = "reading.1.2" }));
        Assert.Equal("capacitor: 161 to 193 µF, 250 V, measured 170 µF", Said(new Fact.Capacitor { Present = true, Microfarads = 161, MicrofaradsTo = 193, Volts = 250, MeasuredMicrofarads = 170 }));
    }

    [Fact]
    public void Whatever_knowledge_can_ask_or_confirm_has_words_of_its_own()
    {
        string[] needed =
        [
            .. Knowledge.Confirmations.Keys.Select(id => $"term.confirmed.{id}"),
            .. Knowledge.Questions.Values.Where(card => card.Kind == "confirm").Select(card => $"term.confirmed.{card.Id}"),
            .. Knowledge.Words.Rules.Keys.Where(id => id.StartsWith("danger/", StringComparison.Ordinal) || id.StartsWith("unsettled/", StringComparison.Ordinal)).Select(id => $"term.{id.Replace('/', '.')}"),
            .. Knowledge.Questions["goal"].Options.Select(goal => $"term.goal.{goal.Id}"),
            .. Knowledge.Questions.Values.Where(card => card.Kind == "choice" && card.About is not ("goal" or "plate")).Select(card => $"term.asked.{card.Id}"),
        ];
        Assert.True(needed.Length > 35, $"{needed.Length}");
        Assert.DoesNotContain(needed, id => !Knowledge.Sentences.Ids.Contains(id, StringComparer.Ordinal));
    }

    [Fact]
    public void What_knowledge_has_no_word_for_is_still_said() =>
        Assert.Equal("at hand: wave meter", Said(new Fact.Instrument { Id = "wave-meter", Present = true }));

    private static string Said(Fact fact, Role role = Role.Technician) => Knowledge.Sentences.Render(Echo.Of(fact), role);
}
