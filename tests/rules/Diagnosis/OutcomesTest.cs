using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>What measured values mean, held against the plate, the supply, the marks of the capacitor, or each other.</summary>
public sealed class OutcomesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    public static TheoryData<string, double[], Fact[], string?> Readings() => new()
    {
        { "frame-voltage", [10], [], "none" },
        { "frame-voltage", [10.1], [], "some" },
        { "frame-voltage", [50.1, 4], [], "none" }, // the latest counts
        { "resistance", [2, 2], [], null }, // two are no three
        { "resistance", [2, 2, 2.1], [], "normal" },
        { "resistance", [9, 2, 2, 2.1], [], "normal" }, // the last three
        { "resistance", [2, 2, 2.4], [], "unequal" }, // 12.5 % above their mean
        { "resistance", [2, 1.6, 2], [], "unequal" }, // 14 % below
        { "resistance", [0, 0, 0], [], "normal" },
        { "line-currents", [5, 5, 5.2], [], "equal" },
        { "line-currents", [0, 0, 6], [], "one-zero" },
        { "supply-voltage", [230], [Volts(230)], "right" },
        { "supply-voltage", [207], [Volts(230)], "low" },
        { "supply-voltage", [207.1], [Volts(230)], "right" },
        { "supply-voltage", [254], [Volts(230)], "high" },
        { "supply-voltage", [0], [Volts(230)], "none" },
        { "supply-voltage", [400, 402, 398], [Volts(400)], "right" },
        { "supply-voltage", [400, 420, 380], [Volts(400)], "unequal" },
        { "supply-voltage", [340, 341, 339], [Volts(400)], "low" },
        { "supply-voltage", [356, 364, 360], [Volts(400)], "low" }, // by their mean
        { "supply-voltage", [357, 364, 365], [Volts(400)], "right" }, // their mean, though one is low
        { "supply-voltage", [230], [], null },
        { "supply-voltage", [200], [new Fact.Supply { Volts = 230 }], "low" }, // where no plate was read, the supply says what there should be
        { "supply-voltage", [115], [Volts(115, 230)], null }, // which of the two, nobody said
        { "supply-voltage", [115], [Volts(115, 230), new Fact.Supply { Volts = 120 }], "right" },
        { "supply-voltage", [115], [Volts(115, 230), new Fact.Supply { Volts = 240 }], "low" },
        { "run-current", [5.2], [Amps(5.2)], "at-or-below" },
        { "run-current", [6, 5], [Amps(5.2)], "above" }, // the greatest line
        { "run-current", [8], [Amps(5.2)], "far-above" },
        { "run-current", [0], [Amps(5.2)], "none" },
        { "run-current", [5], [Amps(10.4, 5.2)], null },
        { "run-current", [9], [Amps(10.4, 5.2), Volts(115, 230), new Fact.Supply { Volts = 230 }], "far-above" },
        { "run-current", [9], [Amps(10.4, 5.2), Volts(115, 230), new Fact.Supply { Volts = 115 }], "at-or-below" },
        { "run-current", [9], [Amps(10.4, 5.2), Volts(115, 230, 460), new Fact.Supply { Volts = 460 }], null }, // no amps beside those volts
        { "run-current", [5], [], null },
        { "run-speed", [1500, 1440], [Plate("rpm", 1440)], "right" },
        { "run-speed", [1300], [Plate("rpm", 1440)], "slow" },
        { "run-speed", [700], [Plate("rpm", 1440)], "half" },
        { "run-speed", [1600], [Plate("rpm", 1440)], "fast" },
        { "run-speed", [1440], [], null },
        { "capacitance", [30], [Marked(30)], "good" },
        { "capacitance", [27], [Marked(30)], "weak" },
        { "capacitance", [27.1], [Marked(30)], "good" },
        { "capacitance", [37], [Marked(30)], "over" },
        { "capacitance", [1], [Marked(30)], "open" },
        { "capacitance", [189], [Marked(189, 227)], "good" },
        { "capacitance", [227], [Marked(189, 227)], "good" },
        { "capacitance", [200], [Marked(189, 227)], "good" },
        { "capacitance", [165], [Marked(189, 227)], "weak" },
        { "capacitance", [270], [Marked(189, 227)], "good" }, // a fifth above its upper end at the most
        { "capacitance", [280], [Marked(189, 227)], "over" },
        { "capacitance", [30], [Marked(100), Marked(30), new Fact.Capacitor { MeasuredMicrofarads = 30 }], "good" }, // the last that has a mark
        { "capacitance", [30], [new Fact.Capacitor()], null },
        { "turn-by-hand", [1], [], null }, // nothing is measured there
        { "insulation", [], [], null },
    };

    [Theory]
    [MemberData(nameof(Readings))]
    public void Values_mean_what_the_bands_of_the_test_say(string test, double[] values, Fact[] facts, string? outcome)
    {
        var read = Outcomes.Of(Knowledge.Tests[test], values, CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts));
        Assert.True(outcome == read, $"{test} {string.Join(", ", values)}: {read}");
    }

    [Fact]
    public void Knowledge_that_measures_against_something_unheard_of_is_refused_by_its_name()
    {
        var guide = Knowledge.Tests["insulation"];
        var strange = guide with { Value = guide.Value! with { Against = "the-moon" } };
        Assert.Contains("'the-moon'", Assert.Throws<ArgumentException>(() => Outcomes.Of(strange, [1], CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), []))).Message, StringComparison.Ordinal);
    }

    private static Fact.Plate Volts(params double[] volts) => Plate("volts", volts);

    private static Fact.Plate Amps(params double[] amps) => Plate("amps", amps);

    private static Fact.Plate Plate(string field, params double[] values) => new() { Field = field, Value = PlateValue.Of(values) };

    private static Fact.Capacitor Marked(double from, double? to = null) => new() { Microfarads = from, MicrofaradsTo = to };
}
