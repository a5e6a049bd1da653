using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What a figure with its unit belongs to by the words around it.</summary>
public sealed class FiguresTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("15 uF in place of 5", "capacitor uF=15; capacitor uF=5")]
    [InlineData("it should be 230 V but I measure 198 V", "supply volts=230; bench supply-voltage 198")]
    [InlineData("the plate says it should be 230 V, I measure 198 V", "plate volts 230")]
    public void What_a_figure_is_of_is_told_by_what_stands_beside_it(string text, string briefs) =>
        Assert.All(briefs.Split("; "), brief => Assert.Contains(brief, Brief.Of(Listener.Understand(text))));

    [Theory]
    [InlineData("4.4 ohm on the 200 range")]
    [InlineData("reads 4.4 on the 200 ohm range")]
    [InlineData("OL on the 20k scale")]
    public void What_the_meter_is_set_to_is_no_figure_of_the_supply_nor_of_a_winding(string text)
    {
        var heard = Brief.Of(Listener.Understand(text, ["1", "2"]));
        Assert.DoesNotContain(heard, line => line.Contains("200", StringComparison.Ordinal) || line.Contains("20", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1 to 2 is 4.4 on the 200 range", "reading 1 2 4.4")]
    [InlineData("it ranges from 200 V to 240 V", "supply volts=200")]
    public void A_figure_beside_a_range_is_heard(string text, string brief) => Assert.Contains(brief, Brief.Of(Listener.Understand(text, ["1", "2"])));

    [Theory]
    [InlineData("FLA 12.4", "plate amps 12.4")]
    [InlineData("amps 12.4", "plate amps 12.4")]
    [InlineData("SFA 13.2", "plate serviceFactorAmps 13.2")]
    [InlineData("13.2 SFA", "plate serviceFactorAmps 13.2")]
    [InlineData("service factor amps 13.2", "plate serviceFactorAmps 13.2")]
    [InlineData("LRA 60", "plate lockedRotorAmps 60")]
    [InlineData("60 LRA", "plate lockedRotorAmps 60")]
    [InlineData("SF 1.15", "plate serviceFactor 1.15")]
    [InlineData("PF 0.82", "plate powerFactor 0.82")]
    [InlineData("power factor 82", "plate powerFactor 0.82")]
    [InlineData("power factor 82%", "plate powerFactor 0.82")]
    [InlineData("eff 0.85", "plate efficiency 0.85")]
    [InlineData("efficiency 85", "plate efficiency 0.85")]
    [InlineData("efficiency 85%", "plate efficiency 0.85")]
    [InlineData("efficiency 1", "plate efficiency 1")]
    [InlineData("85% efficiency", "plate efficiency 0.85")]
    [InlineData("4 pole", "plate poles 4")]
    [InlineData("1725 rpm", "plate rpm 1725")]
    [InlineData("2 hp", "plate horsepower 2")]
    [InlineData("1.1 kW", "plate kilowatts 1.1")]
    [InlineData("1100 W", "plate kilowatts 1.1")]
    [InlineData("rated for 40 C ambient", "plate ambientCelsius 40")]
    [InlineData("temp rise 60 C", "plate temperatureRise 60")]
    [InlineData("60 C rise", "plate temperatureRise 60")]
    [InlineData("line currents 12.4 A, 5 hp", "plate amps 12.4; plate horsepower 5")]
    [InlineData("line currents 12.4 A, 4 kW", "plate amps 12.4; plate kilowatts 4")]
    [InlineData("line currents: 12.4 A", "")]
    [InlineData("5 hp. line currents: 12.4 A", "plate horsepower 5")]
    [InlineData("trips at 30 mA", "")]
    [InlineData("it is 21 C in here", "")]
    [InlineData("5 phases", "")]
    [InlineData("0.5 V", "")]
    [InlineData("1 V", "")]
    public void An_entry_of_the_plate_is_known_by_its_word(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("1100 W", "kilowatts", "kilowatt")]
    [InlineData("2 hp", "horsepower", "horsepower")]
    [InlineData("FLA 12.4", "amps", "amp")]
    [InlineData("plate 1725", "rpm", "rpm")]
    [InlineData("plate 230", "volts", "volt")]
    [InlineData("temp rise 60 C", "temperatureRise", "celsius")]
    [InlineData("SF 1.15", "serviceFactor", null)]
    [InlineData("4 pole", "poles", null)]
    public void An_entry_of_the_plate_has_the_unit_of_its_field(string text, string field, string? unit)
    {
        var plate = Assert.Single(Listener.Understand(text).Facts.OfType<Fact.Plate>());
        Assert.Equal((field, unit), (plate.Field, plate.Unit));
    }

    [Theory]
    [InlineData("hot resistance 12.6 ohm", "bench hot-resistance 12.6")]
    [InlineData("cold resistance 10.1 ohm", "bench cold-resistance 10.1")]
    [InlineData("hot ohms 1.2 kilohm", "bench hot-resistance 1200")]
    [InlineData("cold ohms 1.2 kilohm", "bench cold-resistance 1200")]
    [InlineData("hot ohms 12.6, cold ohms 10.1 at 20 C", "bench hot-resistance 12.6; bench cold-resistance 10.1; bench cold-celsius 20")]
    [InlineData("hot ohms 12.6, cold 10.1 at 20 C", "bench hot-resistance 12.6; bench cold-resistance 10.1; bench cold-celsius 20")]
    [InlineData("winding ohms hot 12.6, cold 10.1 at 20 C", "bench hot-resistance 12.6; bench cold-resistance 10.1; bench cold-celsius 20")]
    [InlineData("hot ohms 12.6 with the room at 24 C", "bench hot-resistance 12.6; bench ambient-celsius 24")]
    [InlineData("hot winding 12.6 ohm, ambient 24 C", "bench hot-resistance 12.6; bench ambient-celsius 24")]
    [InlineData("cold winding 10.1 ohm 20 C", "bench cold-resistance 10.1; bench cold-celsius 20")]
    [InlineData("it is cold here, 10.1 ohm", "")]
    [InlineData("12.6 ohm", "")]
    [InlineData("the frame is at 80 C", "bench frame-heat 80")]
    [InlineData("probes together 0.3", "bench probe-zero 0.3")]
    [InlineData("probes together 0.3 ohm", "bench probe-zero 0.3")]
    public void Ohms_and_degrees_of_a_winding_are_of_the_hot_or_the_cold_one(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("insulation 0.5 megohm", "insulation 0.5")]
    [InlineData("insulation 500000 ohm", "insulation 0.5")]
    [InlineData("insulation is 100000 ohm", "insulation 0.1")]
    [InlineData("insulation 500 kilohm", "insulation 0.5")]
    [InlineData("insulation 5 ohm", "")]
    [InlineData("resistance 500000 ohm", "")]
    public void Insulation_is_told_in_megohms_and_ohms_only_by_its_word(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("breaker is 16 A", "supply.protection-amps", "16")]
    [InlineData("it is on a 20 amp breaker", "supply.protection-amps", "20")]
    [InlineData("fuse 10 A", "supply.protection-amps", "10")]
    [InlineData("plate 10 A", "supply.protection-amps", null)]
    [InlineData("100 ft of 16 gauge cord", "supply.length-metres", "30.48")]
    [InlineData("cord is 100 ft", "supply.length-metres", "30.48")]
    [InlineData("50 m extension cord", "supply.length-metres", "50")]
    [InlineData("at the end of 30 m of 1.5 mm2 cable", "supply.length-metres", "30")]
    [InlineData("100 ft of 16 gauge, an extension cord", "supply.length-metres", "30.48")]
    [InlineData("the cord is 16 gauge and the shed is 100 ft off", "supply.length-metres", "30.48")]
    [InlineData("the shed is 100 ft off", "supply.length-metres", null)]
    [InlineData("3 inch pulley on the cord", "supply.length-metres", null)]
    [InlineData("16 gauge cord, 100 ft", "supply.conductor", "16 gauge")]
    [InlineData("2.5 mm2 cable", "supply.conductor", "2.5 mm2")]
    [InlineData("cord is 100 ft", "supply.conductor", null)]
    public void What_feeds_the_motor_is_kept(string text, string question, string? option) => Assert.Equal(option, Chosen(text, question));

    [Theory]
    [InlineData("wired for 115, supply is 230", "115")]
    [InlineData("wired for 115 and fed 230 V", "115")]
    [InlineData("moved the shop, from 208 to 240", "208")]
    [InlineData("went from 230 V to 208 V after we moved house", "230")]
    [InlineData("wired for 115/230", null)]
    [InlineData("from 230 V", null)]
    [InlineData("was it on 110 before?", null)]
    public void The_volts_that_the_links_are_made_for_are_told_from_those_that_feed_it(string text, string? volts) => Assert.Equal(volts, Chosen(text, Fact.Choice.WiredFor));

    [Theory]
    [InlineData("3 phase 400 V", "supply volts=400 phases=3")]
    [InlineData("single phase 230 V", "supply volts=230 phases=1")]
    [InlineData("521 on a 480 system", "supply volts=480")]
    [InlineData("521 on our 480 system", "supply volts=480")]
    [InlineData("480 system", "supply volts=480")]
    [InlineData("measured 198 at the supply", "bench supply-voltage 198")]
    [InlineData("measured 198 at the supply with the capacitor off", "capacitor")]
    [InlineData("turns at 1725", "running rpm=1725")]
    [InlineData("runs at 1725", "running rpm=1725 ran")]
    [InlineData("turning 1140", "running rpm=1140")]
    [InlineData("1 hp 1725", "plate horsepower 1; plate rpm 1725")]
    [InlineData("1 hp 230", "plate horsepower 1; plate volts 230")]
    [InlineData("1725", "")]
    [InlineData("230 V 8.2 amps", "plate volts 230; plate amps 8.2")]
    public void Volts_and_speeds_are_of_the_supply_the_plate_or_a_run(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("115/230 V 8.8/4.4", "8.8/4.4")]
    [InlineData("115/230 V, 8.8/4.4", "8.8/4.4")]
    [InlineData("115/230 hums 8.8/4.4", "8.8/4.4")]
    [InlineData("230 8.8/4.4", null)]
    [InlineData("115/230 200/100", null)]
    public void A_pair_of_amps_stands_behind_a_pair_of_volts(string text, string? amps) =>
        Assert.Equal(amps, Listener.Understand(text).Facts.OfType<Fact.Plate>().SingleOrDefault(plate => plate.Field == "amps")?.Value.Text);

    [Theory]
    [InlineData("my transformer gives 24 V", 24.0)]
    [InlineData("60 V transformer", 60.0)]
    [InlineData("61 V transformer", null)]
    [InlineData("230 V transformer", null)]
    public void A_transformer_for_the_bench_gives_low_volts(string text, double? volts) =>
        Assert.Equal(volts, Assert.Single(Listener.Understand(text).Facts.OfType<Fact.Instrument>()).Volts);

    [Fact]
    public void Low_volts_among_leads_are_of_a_test() =>
        Assert.DoesNotContain(Listener.Understand("12 V AC on T1-T2, read 5 V from T1 to T4").Facts, fact => fact is Fact.Supply or Fact.Plate);

    [Theory]
    [InlineData("still 5 V on the capacitor after discharge", 5.0)]
    [InlineData("12 V left on the cap", 12.0)]
    [InlineData("it still has 23 V left after the discharge", 23.0)]
    [InlineData("three volts left", 3.0)]
    [InlineData("three volts", null)]
    public void Volts_that_are_left_are_those_on_the_capacitor(string text, double? volts) =>
        Assert.Equal(volts, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().SingleOrDefault(test => test.Test == "capacitor-residual")?.Value);

    [Theory]
    [InlineData("megger 500 V 20 megohm", "insulation 20 V=500")]
    [InlineData("megger reads 20", "insulation 20")]
    [InlineData("insulation resistance 20 megohm at 40 C at 500 V", "insulation 20 V=500 C=40")]
    [InlineData("insulation over 200 megohm", "insulation 200")]
    [InlineData("insulation 20", "")]
    [InlineData("meggered at 500", "")]
    [InlineData("insulation 20-30", "")]
    public void Insulation_has_its_volts_and_its_degrees_beside_it(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("1/2 hp", "plate horsepower 0.5")]
    [InlineData("1-1/2 hp", "plate horsepower 1.5")]
    [InlineData("1 1/2 hp", "plate horsepower 1.5")]
    [InlineData("7½ hp", "plate horsepower 7.5")]
    [InlineData("0,5 hp", "plate horsepower 0.5")]
    [InlineData("half a horse", "plate horsepower 0.5")]
    [InlineData("hp - 2", "plate horsepower 2")]
    [InlineData("2.2kW", "plate kilowatts 2.2")]
    [InlineData("10.4 A or 5.2 A", "plate amps 10.4/5.2")]
    [InlineData("115V/230V", "plate volts 115/230")]
    [InlineData("115 V or 230 V", "plate volts 115/230")]
    [InlineData("208-230/460 V", "plate volts 208/230/460")]
    [InlineData("53-64 uF", "capacitor uF=53-64")]
    [InlineData("RPM 1725", "plate rpm 1725")]
    [InlineData("RPM: 1725", "plate rpm 1725")]
    [InlineData("RPM = 1725", "plate rpm 1725")]
    [InlineData("rpm of 1725", "plate rpm 1725")]
    [InlineData("SF: 1.25", "plate serviceFactor 1.25")]
    [InlineData("3~", "plate phases 3")]
    [InlineData("single phase", "plate phases 1")]
    [InlineData("2x4", "")]
    [InlineData("4k7", "")]
    public void Figures_are_read_as_plates_write_them(string text, string brief) => Assert.Equal(brief, Heard(text));

    private static string Heard(string text) => string.Join("; ", Brief.Of(Listener.Understand(text)));

    private static string? Chosen(string text, string question) => Listener.Understand(text).Facts.OfType<Fact.Choice>().SingleOrDefault(choice => choice.Question == question)?.Option;
}
