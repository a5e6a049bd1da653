using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Practice;

/// <summary>What a look at the practice motor, or a turn of its shaft by hand, tells: the options of the questions that ask for it.</summary>
internal sealed class BenchLooks(Wound wound)
{
    /// <summary>What is seen without touching anything.</summary>
    public IEnumerable<Fact> Seen()
    {
        yield return Option("both-ways", TurnsBothWays() ? "both" : "one");
        yield return Option("brushes", HasArmature() || HasRings() ? "yes" : "no");
        yield return Option("several-speeds", HasSpeeds() ? "several" : "single");
        if (wound.Form.HasCapacitor)
        {
            yield return Option("capacitor-wires", wound.Form.Parts.Any(part => part.IsCapacitor) ? "inside" : "outside");
        }
    }

    /// <summary>What the meter does between two leads while the shaft is turned by hand.</summary>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag.</param>
    public string Turned(string from, string to) =>
        wound.Form.Way(Marking(from), Marking(to)) is { } way && way.Any(coil => coil.ChangesWithShaft) ? "jumps" : "steady";

    /// <summary>Whether magnets hold the shaft back while the ends of the armature meet.</summary>
    public string Dragged() => HasArmature() && !wound.Form.Coils.Any(coil => coil.Role.EndsWith("-field", StringComparison.Ordinal)) ? "drags" : "same";

    /// <summary>Which of two leads comes from slip rings: the option of the question that asks for it.</summary>
    /// <param name="first">A tag.</param>
    public string FromRings(string first) => HasRings() && wound.Form.Way(Marking(first), wound.Form.Leads.First(lead => IsOfRotor(lead.Marking)).Marking) is not null ? "first" : "second";

    private static Fact.Choice Option(string question, string option) => new() { Question = question, Option = option, How = FactEntry.Probe };

    /// <summary>A washer's motor: the line goes from one side of the capacitor to the other.</summary>
    private bool TurnsBothWays() => wound.Form.Connections.Any(row => row.OuterPart is { } part && row.ReverseSwap.Any(swap => swap.Contains(part.From) && swap.Contains(part.To)));

    private bool HasArmature() => wound.Form.Coils.Any(coil => coil.ChangesWithShaft);

    private bool HasRings() => wound.Form.Coils.Any(coil => coil.Role == "rotor");

    private bool IsOfRotor(string marking) => wound.Form.Coils.Any(coil => coil.Role == "rotor" && (coil.From == wound.Form.NodeOf(marking) || coil.To == wound.Form.NodeOf(marking)));

    private bool HasSpeeds() => wound.Form.Coils.Any(coil => coil.Role == "speed-tap") || wound.Form.Connections.Any(row => row.For is "slow" or "first-winding");

    private string Marking(string tag) => wound.TagOf.First(pair => pair.Value == tag).Key;
}
