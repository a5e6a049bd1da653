using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class MarkedReadingsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Diagnostician Diagnostician = new(Knowledge);

    [Theory]
    [InlineData("three-phase", "U1-V1 OL, V1-W1 OL, U1-W1 OL, U1-U2 2.1, V1-V2 2.1, W1-W2 2.1", "normal")] // links off: only the phases read
    [InlineData("three-phase", "U1-V1 OL, V1-W1 OL, U1-W1 OL, U1-U2 2.1, V1-V2 2.1, W1-W2 OL", "phase-open")]
    [InlineData("three-phase", "T1-T2 OL, T2-T3 OL, T1-T3 OL, T1-T4 1.2, T2-T5 1.2, T3-T6 1.2", "normal")]
    [InlineData("three-phase", "T1-T2 OL, T2-T3 OL, T1-T3 OL", "all-open")]
    [InlineData("three-phase", "U-V 1.8, V-W OL, U-W OL", "phase-open")]
    [InlineData("three-phase", "A-B 2.8, A-C OL, B-C OL", "phase-open")] // whichever it is
    [InlineData("split-phase", "A-B 2.8, A-C OL, B-C OL", null)]
    [InlineData(null, "A-B 2.8, A-C OL, B-C OL", null)] // a start winding as well as a phase
    [InlineData("three-phase", "T1-T2 1.4, T2-T3 1.1, T1-T3 1.1", "unequal")]
    [InlineData("three-phase", "T1-T4 1.1, T2-T5 1.1, T3-T6 1.1, T7-T8 OL, T8-T9 OL, T7-T9 2.2", "phase-open")]
    [InlineData("three-phase", "T1-T4 1.1, T2-T5 1.1, T3-T6 1.1, T7-T8 OL, T8-T9 OL, T7-T9 OL", "normal")] // delta inside
    [InlineData("capacitor-start", "T1-T2 1.6, T3-T4 1.6, T1-T4 OL", null)] // two halves: nothing between them is what there should be
    [InlineData("capacitor-start", "T1-T2 1.6, T3-T4 OL, T5-T8 6", "run-open")]
    [InlineData("capacitor-start", "T5-T6 9.1, T7-T8 9.3, T5-T8 OL", null)] // two start windings
    [InlineData("capacitor-start", "T5-T6 9.1, T7-T8 OL", "start-open")]
    [InlineData("split-phase", "T1-T4 2.4, T5-T8 OL", "start-open")]
    [InlineData("split-phase", "T1-T4 OL, T5-T8 OL", "all-open")]
    [InlineData("split-phase", "T1-T4 2.4, T5-T8 7, T4-T1 OL", "run-open")] // read again, the other way round
    [InlineData("capacitor-start", "T1-T4 OL, T5-T8 7", "run-open")] // its capacitor is bridged for the test
    [InlineData("three-phase", "U-V 1.8, V-W 1.8, U-W 2.4", "unequal")] // the ends that come out, without their digit
    [InlineData("split-phase", "T1-T4 OL, T5-T8 7, T4-T1 2.4", null)] // the contact was bad the first time
    [InlineData("three-phase", "A-B OL, A-C OL", null)] // the third pair is not read yet
    [InlineData("three-phase", "A-B OL, C-D OL", null)]
    [InlineData("three-phase", "A-B 2.8, A-C OL, B-C 2.8", null)] // it cannot be
    [InlineData("dc", "A1-A2 OL, F1-F2 190", null)]
    [InlineData(null, "T1-T4 OL", null)] // one of three phases as well as a run winding
    [InlineData("sealed", "C-R 1.2, C-S OL, R-S OL", "start-open")]
    [InlineData("sealed", "C-R OL, C-S OL, R-S 7.1", "all-open")]
    [InlineData("sealed", "C-R 3.1, C-S 14, R-S 17", "normal")]
    [InlineData("sealed", "C-R 3.1, C-S 14, R-S 9", null)]
    [InlineData(null, "A1-A2 0.9, E1-E2 OL", "field-open")]
    [InlineData(null, "A1-A2 0.6, S1-S2 0.1, F1-F2 OL", "field-open")]
    [InlineData(null, "A-B OL, B-C OL, A-C OL", null)] // a person's own names
    [InlineData(null, "L1-L2 OL", null)] // lines, not leads
    public void What_is_open_or_unlike_is_told_only_where_all_motors_with_such_marks_agree(string? family, string readings, string? outcome)
    {
        var shown = Think(family, readings).Signs.OfType<Sign.Shown>().SingleOrDefault(sign => sign.Id == "resistance");
        Assert.Equal(outcome, shown?.OutcomeId);
    }

    [Theory]
    [InlineData("V1-W1 2.2", "three-phase")]
    [InlineData("U-V 1.8, V-W 1.8", "three-phase")]
    [InlineData("F1-F2 190", "dc")]
    [InlineData("T9-T7 2.2", "three-phase")]
    [InlineData("C-R 3.1, C-S 14", "split-phase psc sealed")]
    [InlineData("T5-T8 7", "split-phase capacitor-start psc two-value three-phase")]
    [InlineData("L1-L2 2.2", "split-phase capacitor-start psc two-value shaded-pole commutator dc three-phase sealed")]
    [InlineData("X-Y 2.2", "split-phase capacitor-start psc two-value shaded-pole commutator dc three-phase sealed")]
    public void Marks_leave_the_kinds_of_motor_that_have_them(string readings, string families)
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), Readings(readings));
        var weights = CandidateFamilies.Weights(file, Diagnostician.Model, sealedCircuit: false);
        Assert.Equal(families.Split(' '), Diagnostician.Model.Families.Where((_, at) => weights[at] > 0).Select(family => family.Id));
    }

    [Fact]
    public void A_mark_may_stand_beside_the_name_that_a_lead_was_given()
    {
        Fact[] facts = [.. new[] { ("1", "T1"), ("2", "T4"), ("3", "T5"), ("4", "T8") }.Select(lead => new Fact.Lead { Tag = lead.Item1, Marking = lead.Item2 }), new Fact.Choice { Question = "family", Option = "split-phase" }, .. Readings("1-2 OL, 3-4 7")];
        var signs = Diagnostician.Think(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts), TaskAccess.Everywhere(Knowledge, TaskAccess.Open), sealedCircuit: false).Signs;
        Assert.Equal("run-open", signs.OfType<Sign.Shown>().Single(sign => sign.Id == "resistance").OutcomeId);
    }

    private static Thought Think(string? family, string readings) => Diagnostician.Think(
        CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica),
        [
            .. family is null ? Array.Empty<Fact>() : [new Fact.Choice { Question = "family", Option = family }],
            .. Readings(readings),
        ]),
        TaskAccess.Everywhere(Knowledge, TaskAccess.Open), sealedCircuit: false);

    private static IEnumerable<Fact> Readings(string text) => text.Split(", ").Select(one => one.Split(' ')).Select(one =>
    {
        var pair = one[0].Split('-');
        return new Fact.Reading { From = pair[0], To = pair[1], Open = one[1] == "OL", Ohms = one[1] == "OL" ? null : double.Parse(one[1], System.Globalization.CultureInfo.InvariantCulture) };
    });
}
