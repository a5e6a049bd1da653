using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Which sentences answer a question, by what is known of the motor at hand.</summary>
public sealed class FaqAnswersTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Faq Questions = new(Knowledge);
    private static readonly Fact.Capacitor Marked = new() { Microfarads = 30, Volts = 370, Use = "run" };
    private static readonly Fact[] Saw = [Plate("volts", 115), Plate("amps", 12), Plate("phases", 1), new Fact.Supply { Volts = 120, Phases = 1 }, Family("capacitor-start")];

    public static TheoryData<string, string, Fact[]> Answers() => new()
    {
        { "bigger-capacitor", "capacitor-no capacitor-range capacitor-volts capacitor-kind", [Marked] },
        { "bigger-capacitor", "capacitor-no capacitor-range capacitor-volts-unread capacitor-kind", [Marked with { Volts = null }] },
        { "bigger-capacitor", "capacitor-no capacitor-unread capacitor-kind", [] },
        { "bigger-capacitor", "capacitor-no capacitor-unread capacitor-kind", [new Fact.Capacitor { Volts = 370 }] },
        { "bigger-capacitor", "capacitor-no capacitor-unread capacitor-kind", [Marked with { Present = false }] },
        { "bigger-capacitor", "capacitor-spare-if capacitor-range capacitor-volts capacitor-kind", [Marked, Marked with { Spare = true, Use = "unknown" }] },
        { "needs-volts", "needs-plate", [new Fact.Supply { Volts = 208 }] },
        { "needs-volts", "needs-one", [Plate("volts", 230)] },
        { "needs-volts", "needs-either", [Plate("volts", 115, 230), new Fact.Supply { Volts = 230 }] },
        { "run-230-on-208", "volts-missing", [] },
        { "run-230-on-208", "volts-only-if-marked volts-torque", [Plate("volts", 230)] }, // 208 V, as the question says
        { "run-230-on-208", "volts-only-if-marked volts-torque volts-amps", [Plate("volts", 230), Plate("amps", 5.2)] },
        { "run-230-on-208", "volts-no volts-torque", [Plate("volts", 460), new Fact.Supply { Volts = 208 }] },
        { "run-230-on-208", "volts-no", [Plate("volts", 115), new Fact.Supply { Volts = 208 }] }, // far more than it is for: no torque is lost
        { "run-230-on-208", "volts-yes", [Plate("volts", 240), new Fact.Supply { Volts = 230 }] },
        { "run-on-other-volts", "supply-missing", [Plate("volts", 115, 230)] },
        { "run-on-other-volts", "volts-missing", [new Fact.Supply { Volts = 230 }] },
        { "run-on-other-volts", "volts-yes-joined", [Plate("volts", 115, 230), new Fact.Supply { Volts = 230 }] },
        { "run-230-on-208", "volts-yes-joined", [Plate("volts", 115, 230), new Fact.Supply { Volts = 230 }] },
        { "run-on-one-phase", "one-phase-own", [Plate("phases", 1), new Fact.Supply { Volts = 230, Phases = 1 }] },
        { "run-on-one-phase", "one-phase-own", [Family("psc")] },
        { "run-on-one-phase", "one-phase-if-three one-phase-drive", [Plate("volts", 230)] },
        { "run-on-one-phase", "one-phase-drive", [Family("three-phase"), new Fact.Supply { Volts = 230, Phases = 1 }] },
        { "run-on-one-phase", "one-phase-drive", [Plate("phases", 3), Plate("volts", 230, 400), new Fact.Supply { Volts = 400, Phases = 3 }] }, // the volts of the other supply are not said
        { "run-on-one-phase", "one-phase-drive-fits", [Plate("phases", 3), Plate("volts", 230, 400), new Fact.Supply { Volts = 230, Phases = 1 }] },
        { "run-on-one-phase", "one-phase-too-few", [Plate("phases", 3), Plate("volts", 400), new Fact.Supply { Volts = 230, Phases = 1 }] },
        { "run-on-one-phase", "one-phase-too-many", [Plate("phases", 3), Plate("volts", 230, 460), new Fact.Supply { Volts = 277, Phases = 1 }] },
        { "run-60-on-50", "hertz-missing", [Plate("volts", 230), new Fact.Supply { Volts = 230, Hertz = 50 }] },
        { "run-60-on-50", "hertz-missing", [Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 50 }] },
        { "run-60-on-50", "hertz-missing", [Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230 }] },
        { "run-60-on-50", "hertz-capacitor", [Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 50 }, Marked] },
        { "run-60-on-50", "hertz-capacitor", [Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 50 }, Marked with { Present = false }, Marked] },
        { "run-60-on-50", "", [Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 50 }, Marked with { Present = false }] },
        { "run-60-on-50", "", [Plate("volts", 230), Plate("hertz", 60), new Fact.Supply { Volts = 230, Hertz = 60 }, Marked] }, // the same hertz
        { "spins-both-ways", "both-ways both-ways-where both-ways-hands-off", [] },
        { "spins-both-ways", "both-ways-three-phase both-ways-hands-off", [Plate("phases", 3)] },
        { "breaker-trips", "breaker-never-larger breaker-when", [] },
        { "breaker-trips", "breaker-never-larger breaker-when", [Seen("trips-at-once", present: false)] },
        { "breaker-trips", "breaker-never-larger breaker-earth", [Seen("trips-earth-fault-device")] },
        { "breaker-trips", "breaker-never-larger breaker-at-once amps-missing", [Seen("trips-at-once")] },
        { "breaker-trips", "breaker-never-larger breaker-at-once breaker-start", [Seen("trips-at-once"), Plate("amps", 5)] },
        { "breaker-trips", "breaker-never-larger breaker-after-a-while", [Seen("trips-after-running")] },
        { "breaker-trips", "breaker-never-larger breaker-after-a-while", [Seen("thermal-cutout-cycles"), Plate("amps", 5)] },
        { "breaker-trips", "breaker-never-larger breaker-load", [Seen("thermal-cutout-cycles"), Plate("amps", 5), new Fact.Running { Amps = 7 }, new Fact.Running { Volts = 230 }] },
        { "can-reverse", "reverse-unknown reverse-not-the-plug reverse-load", [] },
        { "can-reverse", "reverse-two-lines reverse-load", [Family("three-phase")] },
        { "can-reverse", "reverse-start-ends reverse-not-the-plug reverse-load", [Family("split-phase")] },
        { "can-reverse", "reverse-start-ends reverse-not-the-plug reverse-load", [Family("capacitor-start")] },
        { "can-reverse", "reverse-start-ends reverse-not-the-plug reverse-load", [Family("two-value")] },
        { "can-reverse", "reverse-psc reverse-not-the-plug reverse-load", [Family("psc")] },
        { "can-reverse", "reverse-never reverse-not-the-plug reverse-load", [Family("shaded-pole")] },
        { "can-reverse", "reverse-armature reverse-not-the-plug reverse-load", [Family("commutator")] },
        { "can-reverse", "reverse-dc reverse-load", [Family("dc")] },
        { "can-reverse", "reverse-sealed reverse-not-the-plug reverse-load", [Family("sealed")] },
        { "can-reverse", "reverse-swap reverse-not-the-plug reverse-load", [Layout("capacitor-start-dual-6")] },
        { "can-reverse", "reverse-two-lines reverse-load", [Layout("three-phase-9-star")] },
        { "extension-cord", "cord-if amps-missing cord-torque cord-how", [] },
        { "extension-cord", "cord-if cord-start cord-torque cord-how", Saw },
        { "extension-cord", "cord-if cord-start cord-torque cord-how", [.. Saw, Cord(30, null)] },
        { "extension-cord", "cord-if cord-start cord-torque cord-how", [.. Saw, Cord(0, null), Cord(null, "14 gauge")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-how", [.. Saw, Cord(30, null), Cord(null, "thick")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-size-unknown", [.. Saw, Cord(30, null), Cord(null, "0 mm²")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-drop cord-starting cord-bears", [.. Saw, Cord(7.62, null), Cord(null, "10 gauge")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-drop cord-no-start cord-too-much", [.. Saw, Cord(60, null), Cord(null, "16 gauge")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-drop cord-starting cord-bears", [.. Saw, Cord(7.5, null), Cord(null, "2,5 mm²")] },
        { "extension-cord", "cord-if amps-missing cord-torque cord-amps-missing", [Plate("volts", 115), Cord(7, null), Cord(null, "14 gauge")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-amps-missing", [Plate("amps", 5), Cord(7, null), Cord(null, "14 gauge")] },
        { "extension-cord", "cord-if cord-start cord-torque cord-drop cord-starting cord-bears", [Plate("amps", 5), Plate("volts", 230), Family("psc"), Cord(7, null), Cord(null, "14 gauge")] }, // on the volts of the plate
        { "worth-repairing", "worth-symptoms-missing", [] },
        { "worth-repairing", "worth-likely worth-part", [Family("psc"), Test("capacitance", "open"), Seen("hums-no-start")] },
        { "worth-repairing", "worth-likely worth-power-missing", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open")] },
        { "worth-repairing", "worth-likely worth-replace", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open"), Plate("horsepower", 9.9)] },
        { "worth-repairing", "worth-likely worth-rewind", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open"), Plate("horsepower", 10)] },
        { "worth-repairing", "worth-likely worth-rewind", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open"), Plate("kilowatts", 7.5)] },
        { "worth-repairing", "worth-likely worth-replace", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open"), Plate("kilowatts", 7.3)] },
        { "worth-repairing", "worth-likely worth-replace", [Family("three-phase"), Seen("hums-no-start"), Test("resistance", "phase-open"), Plate("kilowatts", 11), Plate("horsepower", 5)] },
        { "worth-repairing", "worth-likely worth-power-missing", [Family("commutator"), Test("brushes", "burnt-bars"), Seen("brush-sparks")] },
        { "worth-repairing", "worth-open", [Family("commutator"), Seen("brush-sparks")] },
        { "worth-repairing", "worth-open worth-replace", [Family("three-phase"), Test("resistance", "phase-open"), Plate("horsepower", 5)] }, // one reading, and nobody said what the motor does
        { "no such question", "", [] },
    };

    [Theory]
    [MemberData(nameof(Answers))]
    public void A_question_is_answered_by_what_is_known(string question, string said, Fact[] facts)
    {
        var answer = Ask(question, facts);
        var ids = string.Join(' ', answer.Select(one => one.Id).Where(id => id.StartsWith("faq.", StringComparison.Ordinal)).Select(id => id["faq.".Length..]));
        Assert.True(said == ids, $"{question}: {ids}");
    }

    [Fact]
    public void Every_figure_says_what_it_was_reckoned_from() => Assert.All(
        Answers().SelectMany(row => Ask(row.Data.Item1, row.Data.Item3)).SelectMany(one => one.Quotes),
        quote => Assert.All(quote.Trail, step => Assert.NotEmpty(step.Inputs)));

    [Fact]
    public void A_spare_is_judged_for_its_own_use_or_for_the_place_it_would_take()
    {
        Assert.Contains(Ask("bigger-capacitor", [Marked, Marked with { Spare = true, Use = "unknown" }]), one => one.Gaps.GetValueOrDefault("use") == "run");
        Assert.Equal("faq.capacitor-spare-yes", Ask("bigger-capacitor", [Marked, Marked with { Spare = true }])[0].Id);
        Assert.Equal("faq.capacitor-spare-no", Ask("bigger-capacitor", [Marked, Marked with { Spare = true, Use = "start" }])[0].Id);
        Assert.Equal("faq.capacitor-spare-no", Ask("bigger-capacitor", [Marked with { Spare = true }])[0].Id); // against nothing
        Assert.NotEqual("faq.capacitor-spare-if", Ask("bigger-capacitor", [Marked with { Use = "unknown" }, Marked with { Spare = true }])[0].Id); // of the spare it is known
    }

    /// <summary>Twice the length at one phase, √3 times at three.</summary>
    [Fact]
    public void The_drop_goes_by_the_phases_of_the_supply_before_those_of_the_plate()
    {
        double Drop(params Fact[] facts) => Ask("extension-cord", [Plate("amps", 5), Plate("volts", 230), Cord(30, null), Cord(null, "2.5 mm²"), .. facts]).Single(one => one.Id == "faq.cord-drop").Quotes[0].Value!.Value;
        Assert.Equal(2 / Math.Sqrt(3), Drop(Plate("phases", 1)) / Drop(Plate("phases", 3)), 1e-3);
        Assert.Equal(Drop(Plate("phases", 3)), Drop(Plate("phases", 1), new Fact.Supply { Volts = 230, Phases = 3 }), 1e-9);
        Assert.Equal(Drop(), Drop(Plate("phases", 1)), 1e-9);
    }

    [Fact]
    public void Of_two_plate_volts_those_of_the_supply_say_how_much_torque_a_cord_leaves()
    {
        Statement Starting(params double[] volts) => Ask("extension-cord", [Plate("volts", volts), Plate("amps", 12), new Fact.Supply { Volts = 120, Phases = 1 }, Family("capacitor-start"), Cord(20, null), Cord(null, "14 gauge")]).Single(one => one.Id == "faq.cord-starting");
        Assert.Equal(Starting(115).Gaps["torque"], Starting(115, 230).Gaps["torque"]);
        Assert.True(Starting(115).Quotes[2].Value > Starting(120).Quotes[2].Value);
        Assert.Equal(Starting(120, 240).Gaps["torque"], Starting(240, 120).Gaps["torque"]);
        Assert.Equal(Starting(60, 120).Gaps["torque"], Starting(120).Gaps["torque"]);
    }

    [Fact]
    public void Of_two_plate_volts_those_nearest_to_the_supply_make_the_flux() => Assert.All(
        new[] { 115.0, 230 },
        volts => Assert.Equal(60 / 50d, Ask("run-60-on-50", [Plate("volts", 115, 230), Plate("hertz", 60), new Fact.Supply { Volts = volts, Hertz = 50 }])[0].Quotes[0].Value!.Value, 1e-9));

    [Fact]
    public void Every_layout_says_how_it_is_turned_round() => Assert.All(Knowledge.Layouts.Values, layout =>
    {
        var said = Ask("can-reverse", [Layout(layout.Id)])[0];
        List<string> pairs = [.. layout.Connections.SelectMany(row => row.ReverseSwap).Select(pair => string.Join(" ↔ ", pair)).Distinct(StringComparer.Ordinal)];
        Assert.Equal(layout.NotReversible ?? (pairs.Count > 0 ? "faq.reverse-swap" : layout.Family == "three-phase" ? "faq.reverse-two-lines" : "faq.reverse-unknown"), said.Id);
        Assert.Equal(said.Id == "faq.reverse-swap" ? string.Join("; ", pairs) : null, said.Gaps.GetValueOrDefault("pairs"));
    });

    [Theory]
    [InlineData(1, "single-phase")]
    [InlineData(3, "design-b")]
    public void A_start_is_reckoned_by_the_phases_of_the_motor(int phases, string kind)
    {
        var start = Ask("extension-cord", [Plate("amps", 10), Plate("phases", phases)]).Single(one => one.Id == "faq.cord-start");
        Assert.All(start.Quotes, quote => Assert.Contains($"({kind})", quote.Trail[^1].Inputs, StringComparison.Ordinal));
    }

    [Fact]
    public void At_85_percent_of_the_volts_72_percent_of_the_torque_are_left()
    {
        var quotes = Ask("extension-cord", []).Single(one => one.Id == "faq.cord-torque").Quotes;
        Assert.Equal(85, quotes[0].Value!.Value, 1e-9);
        Assert.Equal(72.25, quotes[1].Value!.Value, 1e-9);
    }

    [Fact]
    public void All_questions_are_listed_and_none_is_answered_without_a_case()
    {
        Assert.Equal(Answers().Select(row => row.Data.Item1).Except(["no such question"]).Order(StringComparer.Ordinal), Faq.Questions);
        Assert.Throws<ArgumentNullException>("file", () => Questions.Answer("can-reverse", null!));
    }

    private static IReadOnlyList<Statement> Ask(string question, Fact[] facts)
    {
        var answer = Questions.Answer(question, CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts));
        Assert.All(answer, one => Assert.NotEmpty(Knowledge.Sentences.Render(one)));
        return answer;
    }

    private static Fact.Choice Family(string id) => new() { Question = "family", Option = id };

    private static Fact.Choice Layout(string id) => new() { Question = "layout", Option = id };

    private static Fact.Choice Cord(double? metres, string? size) => size is null
        ? new() { Question = "supply.length-metres", Option = FormattableString.Invariant($"{metres}") }
        : new() { Question = "supply.conductor", Option = size };

    private static Fact.Symptom Seen(string id, bool present = true) => new() { Id = id, Present = present };

    private static Fact.BenchTest Test(string test, string outcome) => new() { Test = test, Outcome = outcome };

    private static Fact.Plate Plate(string field, params double[] values) => new() { Field = field, Value = PlateValue.Of(values) };
}
