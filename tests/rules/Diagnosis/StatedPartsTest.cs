using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Nothing that sits in a part which the motor has not is its fault.</summary>
public sealed class StatedPartsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Diagnostician Diagnostician = new(Knowledge);
    private static readonly IReadOnlyDictionary<string, TaskAccess> Open = TaskAccess.Everywhere(Knowledge, TaskAccess.Open);

    private static readonly Fact.Capacitor Start = new() { Use = "start" };
    private static readonly Fact.Capacitor Run = new() { Use = "run" };
    private static readonly Fact.Capacitor None = new() { Present = false };
    private static readonly Fact.Choice NoBrushes = new() { Question = "brushes", Option = "no" };

    public static TheoryData<string, string, string, Fact[]> Motors() => new()
    {
        { "nothing was said of parts", "start-capacitor run-capacitor capacitor brushes like-coils", "", [] },
        { "no capacitor", "brushes", "start-capacitor run-capacitor capacitor", [None] },
        { "no capacitor on a sealed compressor", "", "start-capacitor run-capacitor capacitor", [None, Family("sealed")] },
        { "no capacitor on a kind that has one", "", "start-capacitor capacitor", [None, Family("capacitor-start")] },
        { "a capacitor that was found afterwards", "start-capacitor run-capacitor capacitor", "", [None, new Fact.Capacitor()] },
        { "none for the start", "run-capacitor capacitor brushes", "start-capacitor", [Start with { Present = false }] },
        { "none for the start beside one to run", "run-capacitor capacitor", "start-capacitor", [Run, Start with { Present = false }] },
        { "none for the start on a kind that has both", "run-capacitor capacitor", "start-capacitor", [Family("two-value"), Start with { Present = false }] },
        { "none to run", "start-capacitor capacitor", "run-capacitor", [Run with { Present = false }] },
        { "no brushes", "start-capacitor run-capacitor capacitor", "brushes", [NoBrushes] },
        { "no brushes on a kind that has them", "", "brushes", [NoBrushes, Family("commutator")] },
        { "brushes", "brushes", "start-capacitor", [NoBrushes with { Option = "yes" }] },
        { "two run halves", "like-coils", "", [Layout("dual-voltage-4")] },
        { "one run winding", "", "like-coils", [Layout("split-phase-4")] },
    };

    [Theory]
    [MemberData(nameof(Motors))]
    public void A_cause_stands_only_where_the_part_may_be_that_it_needs(string known, string may, string never, Fact[] facts)
    {
        var file = File(facts);
        var parts = Diagnostician.Think(file, Open, sealedCircuit: false).Belief.Hypotheses.SelectMany(one => one.Causes).Select(cause => cause.Needs).ToHashSet();
        Assert.All(may.Split(' ', StringSplitOptions.RemoveEmptyEntries), part => Assert.True(parts.Contains(part), $"{known}: nothing of {part}"));
        Assert.All(never.Split(' ', StringSplitOptions.RemoveEmptyEntries), part => Assert.False(parts.Contains(part), $"{known}: {part}"));
    }

    /// <summary>Either it is missing or the kind was named wrongly: both are said, and no other cause is called likeliest before that is settled.</summary>
    [Theory]
    [InlineData("capacitor-start", true)]
    [InlineData("psc", true)]
    [InlineData("split-phase", false)]
    [InlineData("sealed", false)]
    [InlineData(null, false)]
    public void A_capacitor_that_such_a_motor_needs_and_has_not_is_spoken_of_first(string? family, bool missing)
    {
        var said = Diagnostician.Examine(File([None, .. family is null ? Array.Empty<Fact>() : [Family(family)]]), Open).Say.Select(one => one.Id).ToList();
        Assert.Equal(missing, said[0] == "diagnosis.capacitor-missing");
        Assert.Equal(missing, !said.Contains("diagnosis.most-likely"));
    }

    [Theory]
    [InlineData("it hums and won't start, there's no start cap on it", "start")]
    [InlineData("hums, no run capacitor", "run")]
    [InlineData("it doesn't have a capacitor and won't start", "unknown")]
    [InlineData("no cap on it, and it won't start", "unknown")]
    public void Which_capacitor_is_missing_is_heard(string text, string use)
    {
        var heard = new WireCoach.Rules.Language.Listener(Knowledge).Understand(text).Facts.OfType<Fact.Capacitor>().Single();
        Assert.Equal((false, use), (heard.Present, heard.Use));
    }

    [Theory]
    [InlineData("dual-voltage-4", true)]
    [InlineData("split-phase-4", false)]
    public void Halves_are_held_against_each_other_only_where_there_are_two(string layout, bool asked)
    {
        string[] ofHalves = [.. Knowledge.Tests.Values.Where(test => test.NeedsLikeCoils).Select(test => test.Id)];
        List<string> tests = [];
        for (var file = File([Layout(layout)]); Diagnostician.Examine(file, Open).Next is { } next; file = file.With(new Fact.Unknown { Question = next.Test }))
        {
            tests.Add(next.Test);
        }

        Assert.Equal(asked, tests.Intersect(ofHalves).Any());
    }

    private static Fact.Choice Layout(string id) => new() { Question = "layout", Option = id };

    private static Fact.Choice Family(string id) => new() { Question = "family", Option = id };

    private static CaseFile File(Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Symptom { Id = "hums-no-start" }, .. facts]);
}
