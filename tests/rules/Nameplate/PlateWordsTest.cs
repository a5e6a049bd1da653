using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Nameplate;

/// <summary>What is said of a plate that does not go together, or that cannot be a plate.</summary>
public sealed class PlateWordsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    public static TheoryData<string, string> Plates() => new()
    {
        { "volts 115/230; amps 9.8/4.9; horsepower 0.75; rpm 1725; hertz 60; phases 1", "" },
        { "volts 230/400; amps 3.3/1.9; kilowatts 0.75; rpm 1425; hertz 50; phases 3", "" },
        { "volts 115/230; amps 9.8/4.9/3", "nameplate.dual-count" },
        { "volts 115/230; amps 4.9/9.8", "nameplate.dual-swapped" },
        { "volts 115/230; amps 98/4.9", "nameplate.dual-point" },
        { "volts 115/230; amps 9.8/49", "nameplate.dual-point" },
        { "volts 115/230; amps 9.8/9.8", "nameplate.dual-same" },
        { "volts 230/400; amps 3.8/1.9", "nameplate.dual-other" },
        { "volts 208-230/460; amps 4.0-2.8/1.4", "nameplate.neighbours" },
        { "volts 115/340; amps 9.8/3.3", "nameplate.volt-pair" },
        { "rpm 1425; hertz 50; poles 6", "nameplate.poles-differ" },
        { "rpm 1425; hertz 50; poles 4", "" },
        { "rpm 4200; hertz 60", "nameplate.rpm-above-all" },
        { "rpm 2; hertz 60", "nameplate.rpm-below-all" },
        { "rpm 33; hertz 60", "nameplate.rpm-below-all" },
        { "rpm 1800; hertz 60", "nameplate.rpm-synchronous" },
        { "rpm 1425; hertz 60", "nameplate.rpm-other-hertz" },
        { "rpm 1250; hertz 60", "nameplate.rpm-no-induction" },
        { "rpm 9000; hertz 60; type universal", "" }, // no induction motor
        { "kilowatts 5; horsepower 1", "nameplate.kw-hp" },
        { "kilowatts 0.75; horsepower 1", "" },
        { "kilowatts 7.5; horsepower 10", "" },
        { "kilowatts 7.5; volts 400; amps 60; phases 3; hertz 50", "nameplate.irange-other" },
        { "rpm 1425; hertz 60/50", "" }, // at one of its two frequencies
        { "horsepower 5; volts 120; amps 15; phases 1", "nameplate.imin-peak nameplate.irange-peak" },
        { "horsepower 10; volts 230; amps 15; phases 3", "nameplate.imin nameplate.irange-half" },
        { "horsepower 10; volts 230; amps 56; phases 3", "nameplate.irange-double" },
        { "horsepower 10; volts 230; amps 42; phases 3", "nameplate.irange-high" },
        { "horsepower 10; volts 230; amps 120; phases 3", "nameplate.irange-other" },
        { "horsepower 10; volts 230; amps 28; phases 3", "" },
        { "kilowatts 7.5; volts 400; amps 15; phases 3; powerFactor 0.82; hertz 50", "" },
        { "kilowatts 7.5; volts 400; amps 15; phases 3; powerFactor 82; efficiency 70; hertz 50", "nameplate.efficiency-other" },
        { "kilowatts 7.5; volts 400; amps 15; phases 3; powerFactor 0.6; hertz 50", "nameplate.efficiency-impossible" },
        { "codeLetter Q", "nameplate.code-unknown" },
        { "codeLetter A; horsepower 1; volts 230; amps 3.6; phases 3", "nameplate.code-ratio" },
        { "codeLetter v; horsepower 1; volts 230; amps 3.6; phases 3", "nameplate.code-ratio" },
        { "codeLetter J; horsepower 10; volts 230; amps 28; phases 3", "" },
        { "horsepower 25; phases 1", "nameplate.too-large-for-one-phase" },
        { "kilowatts 18.5; phases 1", "nameplate.too-large-for-one-phase" },
        { "horsepower 10; phases 1", "" },
        { "serviceFactorAmps 9; amps 10", "nameplate.service-amps" },
        { "serviceFactorAmps 11; amps 10; serviceFactor 1.15", "" },
        { "serviceFactorAmps 16; amps 10; serviceFactor 1.15", "nameplate.service-amps" },
        { "insulationClass Z", "nameplate.class-unknown" },
        { "insulationClass B; temperatureRise 130", "nameplate.rise-above-class" },
        { "insulationClass B; riseKelvin 130", "nameplate.rise-above-class" },
        { "insulationClass class B; rise 130", "nameplate.rise-above-class" },
        { "insulationClass B; temperatureRise 70; riseKelvin 130", "" }, // the plate's own word first
        { "insulationClass F; temperatureRise 100", "" },
        { "duty 30 MIN", "nameplate.short-time" },
        { "timeRating S2 30 min", "nameplate.short-time" },
        { "duty CONT.", "" },
        { "microfarads 30; type shaded-pole", "nameplate.capacitor-kind" },
        { "capacitorMicrofarads 30; phases 3", "nameplate.capacitor-kind" },
        { "microfarads 30; type PSC", "" },
        { "microfarads 30; type split", "nameplate.capacitor-kind" },
        { "microfarads 30; type DC", "nameplate.capacitor-kind" },
    };

    [Theory]
    [MemberData(nameof(Plates))]
    public void What_does_not_go_together_is_said(string plate, string said)
    {
        var report = Spoken.Whole(PlateReading.Check(Knowledge, Of(plate), Of(plate).Kilowatts is null ? Region.NorthAmerica : Region.Iec));
        Assert.Equal(said, string.Join(' ', report.Findings.Select(finding => finding.Why.Id)));
        Assert.All(report.Findings, finding => Assert.Contains(finding.Severity, new[] { "impossible", "doubtful", "mind" }));
        Assert.All(report.Findings.SelectMany(finding => finding.Values).SelectMany(value => value.Trail), step => Assert.NotEmpty(step.Inputs));
    }

    [Theory]
    [InlineData("", "volts", "nameplate.empty")]
    [InlineData("volts 0", "volts", "nameplate.not-above-zero")]
    [InlineData("volts 1000000", "volts", "nameplate.not-above-zero")]
    [InlineData("hertz 1", "hertz", "nameplate.out-of-range")]
    [InlineData("hertz 5000", "hertz", "nameplate.out-of-range")]
    [InlineData("serviceFactor 7", "serviceFactor", "nameplate.out-of-range")]
    [InlineData("rpm fast", "rpm", "nameplate.not-a-number")]
    [InlineData("powerFactor 1.2", "powerFactor", null)]
    [InlineData("poles 5", "poles", "nameplate.poles-odd")]
    [InlineData("phases 2", "phases", "nameplate.phases")]
    [InlineData("temperatureRise 900", "temperatureRise", "nameplate.not-above-zero")]
    [InlineData("capacitorMicrofarads -3", "capacitorMicrofarads", "nameplate.not-above-zero")]
    public void A_field_that_cannot_be_is_refused(string plate, string field, string? advice)
    {
        var problem = Assert.Single(PlateReading.Read(Knowledge, Of(plate), null).Problems);
        Assert.Equal(field, problem.Field);
        Assert.Equal(advice ?? problem.Advice.Id, problem.Advice.Id);
        Assert.NotEmpty(Spoken.Lines(problem));
        Assert.Equal(plate.Length == 0 ? ["volts", "amps", "horsepower", "rpm"] : Array.Empty<string>(), problem.Missing);
    }

    [Theory]
    [InlineData("horsepower 10; phases 3; volts 400; amps 14", "phases 3")]
    [InlineData("poles 4", "poles 4")]
    [InlineData("phases 1", "phases 1")]
    [InlineData("powerFactor 1", "a share")]
    [InlineData("efficiency 100", "all of it")]
    public void What_is_at_its_edge_is_read(string plate, string edge) => Assert.True(PlateReading.Read(Knowledge, Of(plate), null).IsGiven, edge);

    /// <summary>The same power has one table in each region; by it the amps are judged.</summary>
    [Theory]
    [InlineData("kilowatts 7.5; volts 400; amps 15.2; phases 3", null, "iec-current")]
    [InlineData("kilowatts 7.5; volts 400; amps 60; phases 3; hertz 50", null, "iec-current")]
    [InlineData("horsepower 10; volts 230; amps 120; phases 3; hertz 60", null, "nec")]
    public void Without_a_region_hertz_and_the_unit_of_power_tell_it(string plate, Region? region, string table)
    {
        var report = PlateReading.Read(Knowledge, Of(plate), region).Value!;
        var quoted = report.Findings.Where(finding => finding.Id == "PC-IRANGE").SelectMany(finding => finding.Values).Select(value => value.Rule).FirstOrDefault(rule => rule.StartsWith(table, StringComparison.Ordinal));
        Assert.Equal(report.Findings.Any(finding => finding.Id == "PC-IRANGE"), quoted is not null);
    }

    [Theory]
    [InlineData("volts 380", 3)]
    [InlineData("volts 379", null)]
    [InlineData("volts 230/400", 3)]
    [InlineData("volts 130", 1)]
    [InlineData("volts 131", null)]
    [InlineData("volts 115/230", 1)]
    [InlineData("volts 230; type three phase", 3)]
    [InlineData("volts 230; type PSC", 1)]
    [InlineData("volts 230; type split phase", 1)]
    [InlineData("volts 230; type universal", 1)]
    [InlineData("volts 230; type shaded pole", 1)]
    [InlineData("volts 230; type CSCR", 1)]
    [InlineData("volts 230; type CSIR", 1)]
    [InlineData("volts 400; phases 1", 1)] // as it is marked
    public void Kind_or_volts_tell_the_phases(string plate, int? phases) => Assert.Equal(phases, PlateFacts.Of(Knowledge, Of(plate), Region.Iec).Phases);

    [Theory]
    [InlineData(230, 230)]
    [InlineData(230, 208)]
    [InlineData(230, 240)]
    [InlineData(220, 240)]
    [InlineData(240, 208)]
    [InlineData(230, 400)]
    [InlineData(208, 230)]
    public void What_is_said_of_volts_against_the_plate_can_be_read_out(double plate, double supply)
    {
        var judged = SupplyMatch.Volts(Knowledge, plate, supply);
        var why = Spoken.Whole(judged).Why;
        Assert.Contains(SupplyMatch.Unsigned(judged.Value), why.Quotes);
        Assert.Contains(supply < plate ? "below" : supply > plate ? "above" : "off", Knowledge.Sentences.Render(why), StringComparison.Ordinal);
        Assert.DoesNotContain(" -", Knowledge.Sentences.Render(why), StringComparison.Ordinal);
        Assert.Equal(100 * ((supply / plate) - 1), judged.Value.Value!.Value, 1e-6);
    }

    [Theory]
    [InlineData(230, 50, 230, 60, 1.2)]
    [InlineData(230, 60, 230, 50, 0.833333)]
    [InlineData(460, 60, 380, 50, 1.008772)]
    [InlineData(230, 60, 230, 60, 1)]
    public void What_is_said_of_volts_per_hertz_can_be_read_out(double volts, double hertz, double plateVolts, double plateHertz, double flux) =>
        Assert.Equal(flux, Spoken.Whole(SupplyMatch.VoltsPerHertz(Knowledge, volts, hertz, plateVolts, plateHertz)).Why.Quotes[0].Value!.Value, 1e-6);

    [Theory]
    [InlineData("shaded pole", "shaded-pole")]
    [InlineData("Two-Value capacitor", "two-value")]
    [InlineData("CAP-START CAP-RUN", "two-value")]
    [InlineData("capacitor-start capacitor-run", "two-value")]
    [InlineData("cap start cap run", "two-value")]
    [InlineData("CSCR", "two-value")]
    [InlineData("two value", "two-value")]
    [InlineData("PSC", "psc")]
    [InlineData("permanent split capacitor", "psc")]
    [InlineData("perm split", "psc")]
    [InlineData("permanent-split", "psc")]
    [InlineData("capacitor run", "psc")]
    [InlineData("capacitor-run", "psc")]
    [InlineData("cap run", "psc")]
    [InlineData("capacitor start", "capacitor-start")]
    [InlineData("capacitor-start", "capacitor-start")]
    [InlineData("cap start", "capacitor-start")]
    [InlineData("cap-start", "capacitor-start")]
    [InlineData("CSIR", "capacitor-start")]
    [InlineData("split phase", "split-phase")]
    [InlineData("universal", "universal")]
    [InlineData("commutator", "universal")]
    [InlineData("permanent magnet", "dc-permanent-magnet")]
    [InlineData("permanent-magnet", "dc-permanent-magnet")]
    [InlineData("PMDC", "dc-permanent-magnet")]
    [InlineData("DC", "dc-permanent-magnet")]
    [InlineData("three-phase", "three-phase")]
    [InlineData("three phase", "three-phase")]
    [InlineData("3-phase", "three-phase")]
    [InlineData("induction", "induction")]
    [InlineData("stepper", null)]
    [InlineData(null, null)]
    public void A_kind_of_motor_goes_by_many_names(string? written, string? kind) => Assert.Equal(kind, MotorKind.Of(written));

    [Theory]
    [InlineData(115, 230, "low-on-high")]
    [InlineData(230, 115, "high-on-low")]
    [InlineData(230, 240, null)]
    [InlineData(230, 400, "low-on-high")] // a delta for it fed with the volts of its star
    [InlineData(230, 300, null)]
    public void Links_for_other_volts_than_the_supplys_are_seen(double plate, double supply, string? said) => Assert.Equal(said, Connected.Against(CaseFile.From(
        new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Plate { Field = "volts", Value = PlateValue.Of(plate) }, new Fact.Supply { Volts = supply }])));

    internal static PlateFields Of(string plate) => plate.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(field => field.Split(' ', 2))
        .Aggregate(PlateFields.Empty, (fields, field) => fields.With(field[0], PlateValue.Parse(field[1])));
}
