using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Which kinds of motor a case leaves, and how much more usual some are where it stands.</summary>
public sealed class KindsTest
{
    private const string OnePhase = "split-phase capacitor-start psc two-value shaded-pole commutator sealed";
    private const string All = "split-phase capacitor-start psc two-value shaded-pole commutator dc three-phase sealed";
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly CauseModel Model = new(Knowledge);

    private static readonly Fact.Capacitor Start = new() { Use = "start" };
    private static readonly Fact.Capacitor Run = new() { Use = "run" };
    private static readonly Fact.Capacitor None = new() { Present = false };

    public static TheoryData<string, string, Fact[]> Cases() => new()
    {
        { "nothing is known", All, [] },
        { "it was named", "psc", [Choice("family", "psc")] },
        { "its layout was chosen", "split-phase", [Choice("layout", "dual-voltage-4")] },
        { "three amps of lines", "three-phase", [.. Enumerable.Repeat(Test("line-currents", 5), 3)] },
        { "two amps of lines", All, [.. Enumerable.Repeat(Test("line-currents", 5), 2)] },
        { "three volts between lines", "three-phase", [.. Enumerable.Repeat(Test("supply-voltage", 230), 3)] },
        { "two volts", All, [.. Enumerable.Repeat(Test("supply-voltage", 230), 2)] },
        { "three times what the volts were, without a figure", All, [.. Enumerable.Repeat(new Fact.BenchTest { Test = "supply-voltage", Outcome = "low" }, 3)] },
        { "three values of another test", All, [.. Enumerable.Repeat(Test("run-current", 5), 3)] },
        { "plate volts that one phase never has", "three-phase", [Plate("volts", 380)] },
        { "plate volts that one phase may have", All, [Plate("volts", 379)] },
        { "supply volts that one phase never has", "three-phase", [new Fact.Supply { Volts = 415 }] },
        { "high volts on a plate of one phase", OnePhase, [Plate("volts", 460), Plate("phases", 1)] },
        { "high volts on a supply of one phase", OnePhase, [Plate("volts", 460), new Fact.Supply { Phases = 1 }] },
        { "one phase on the plate", OnePhase, [Plate("phases", 1)] },
        { "three phases on the plate", "three-phase", [Plate("phases", 3)] },
        { "a supply of three phases", "three-phase", [new Fact.Supply { Phases = 3 }] },
        { "a supply by its name", "three-phase", [new Fact.Supply { System = "three-phase-star" }] },
        { "a supply by a name that tells no phases", All, [new Fact.Supply { System = "single-phase" }] },
        { "phases that were counted before a name", OnePhase, [new Fact.Supply { Phases = 1, System = "three-phase-star" }] },
        { "a supply of which only the volts are known", All, [new Fact.Supply { Volts = 230 }] },
        { "a capacitor", "capacitor-start psc two-value sealed", [new Fact.Capacitor()] },
        { "no capacitor", "split-phase shaded-pole commutator dc three-phase sealed", [None] },
        { "a capacitor after none was seen", "capacitor-start psc two-value sealed", [None, new Fact.Capacitor()] },
        { "a start capacitor", "capacitor-start two-value sealed", [Start] },
        { "a run capacitor", "psc two-value sealed", [Run] },
        { "one for the start and one to run", "two-value sealed", [Start, Run] },
        { "one to run beside one for the start that is not there", "psc sealed", [Run, Start with { Present = false }] },
        { "one for the start and one to run in one answer", "two-value sealed", [new Fact.Capacitor { Use = "both" }] },
        { "none for the start, and no word of one to run", "split-phase psc shaded-pole commutator dc three-phase sealed", [Start with { Present = false }] },
        { "neither for the start nor to run", "split-phase shaded-pole commutator dc three-phase sealed", [Start with { Present = false }, Run with { Present = false }] },
        { "no brushes", "split-phase capacitor-start psc two-value shaded-pole three-phase sealed", [Choice("brushes", "no")] },
        { "brushes", "commutator dc three-phase", [Choice("brushes", "yes")] },
        { "a plate of three phases against the name", "psc", [Choice("family", "psc"), Plate("phases", 3)] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_known_leaves_the_kinds_that_fit_it(string known, string left, Fact[] facts) =>
        Assert.True(left == string.Join(' ', Left(facts)), $"{known}: {string.Join(' ', Left(facts))}");

    [Fact]
    public void A_sealed_circuit_leaves_the_sealed_compressor() =>
        Assert.Equal(["sealed"], Model.Families.Where((_, at) => CandidateFamilies.Weights(File([]), Model, sealedCircuit: true)[at] > 0).Select(family => family.Id));

    [Theory]
    [InlineData("split-phase", "grinder", 5)]
    [InlineData("split-phase", "well-pump", 0.1)]
    [InlineData("split-phase", "lathe", 1)]
    [InlineData("commutator", "hand-tool", 5)]
    [InlineData("split-phase", null, 1)]
    public void A_kind_counts_more_where_it_is_usual_and_less_where_it_hardly_ever_is(string family, string? use, double factor)
    {
        var at = Model.Families.ToList().FindIndex(one => one.Id == family);
        var weights = CandidateFamilies.Weights(File(use is null ? [] : [new Fact.Application { Text = use, ApplicationId = use }]), Model, sealedCircuit: false);
        Assert.Equal(factor * Model.Families[at].Weight, weights[at], 1e-9);
    }

    private static IEnumerable<string> Left(Fact[] facts)
    {
        var weights = CandidateFamilies.Weights(File(facts), Model, sealedCircuit: false);
        return Model.Families.Where((_, at) => weights[at] > 0).Select(family => family.Id);
    }

    private static CaseFile File(Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);

    private static Fact.Choice Choice(string question, string option) => new() { Question = question, Option = option };

    private static Fact.BenchTest Test(string test, double value) => new() { Test = test, Value = value };

    private static Fact.Plate Plate(string field, double value) => new() { Field = field, Value = PlateValue.Of(value) };
}
