using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What was measured on a motor under power, told from what its plate says.</summary>
public sealed class RunFiguresTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("6.8 A against 4.1 plate", 6.8, 4.1)]
    [InlineData("6.8 A, plate 4.1 A", 6.8, 4.1)]
    [InlineData("plate 4.1 A, drawing 6.8 A", 6.8, 4.1)]
    [InlineData("plate 4.1, drawing 6.8 A", 6.8, 4.1)]
    [InlineData("it draws 6.8 A, the nameplate is 4.1 A", 6.8, 4.1)]
    [InlineData("amps are 6.8 against 4.1 on the plate", 6.8, 4.1)]
    [InlineData("amps 6.8 against 4.1 plate", 6.8, 4.1)]
    [InlineData("draws 6.8 amps where the plate says 4.1", 6.8, 4.1)]
    [InlineData("draws 6.8, plate reads only 4.1", 6.8, 4.1)]
    [InlineData("it runs 6.8 amps, plate 4.1", 6.8, 4.1)]
    [InlineData("runs and draws 4.1 A, 12 A on the plate", 4.1, 12.0)]
    [InlineData("measured 6.8 A, 100 A on the plate", 6.8, 100.0)]
    [InlineData("draws 6.8 amps. plate says 4.1", 6.8, null)]
    [InlineData("6.8 against 4.1 plate", null, null)]
    [InlineData("15 amps at 230", null, 15.0)]
    [InlineData("4.2 A", null, 4.2)]
    [InlineData("2 hp runs 4.1 A", null, 4.1)]
    [InlineData("it does not run, 4.1 amps", null, 4.1)]
    [InlineData("6.8 A, breaker is 16 A", null, null)]
    [InlineData("it pulls 22 amps with nothing on the shaft, plate says 13", 22.0, 13.0)]
    [InlineData("clamp meter says 23 amps and the plate on the motor says 17", 23.0, 17.0)]
    [InlineData("amps 22 per clamp, FLA 17", 22.0, 17.0)]
    [InlineData("it hums at 9 amps, with the cap in it trips a 16", null, null)]
    [InlineData("two lines at 14 A and the third nothing", null, null)]
    [InlineData("turned the overload relay up from 6.5 to 9 amps", null, null)]
    [InlineData("on the old 16 amp it used to trip", null, null)]
    [InlineData("pulls 3x current", null, null)]
    [InlineData("pulls 3 times the nameplate", null, null)]
    [InlineData("draws 3 fold current", null, null)]
    public void Amps_that_are_drawn_are_told_from_those_of_the_plate(string text, double? drawn, double? plate)
    {
        var heard = Listener.Understand(text).Facts;
        Assert.Equal(drawn, heard.OfType<Fact.Running>().SingleOrDefault()?.Amps);
        Assert.Equal(plate, heard.OfType<Fact.Plate>().SingleOrDefault(field => field.Field == "amps")?.Value.Number);
    }

    [Theory]
    [InlineData("1390 rpm, plate 1460", 1390.0, 1460.0)]
    [InlineData("plate says 1725, it is doing 1140", 1140.0, 1725.0)]
    [InlineData("plate 1725, doing 1140", 1140.0, 1725.0)]
    [InlineData("turns at 1140, plate 1725", 1140.0, 1725.0)]
    [InlineData("1140 against 1725 on the plate", 1140.0, 1725.0)]
    [InlineData("turns 1140 against 1725", 1140.0, null)]
    [InlineData("1440 rpm on the plate, tacho says 1310 under load and 1490 with the belt off", 1310.0, 1440.0)]
    [InlineData("tacho says 960", 960.0, null)]
    [InlineData("3400 turns measured", 3400.0, null)]
    [InlineData("3400 turns", null, null)]
    [InlineData("230 against 240 plate", null, null)]
    public void A_speed_that_was_measured_is_told_from_that_of_the_plate(string text, double? measured, double? plate)
    {
        var heard = Listener.Understand(text).Facts;
        Assert.Equal(measured, heard.OfType<Fact.Running>().SingleOrDefault()?.Rpm);
        Assert.Equal(plate, heard.OfType<Fact.Plate>().SingleOrDefault(field => field.Field == "rpm")?.Value.Number);
    }

    [Theory]
    [InlineData("2 hp, just hums, 30 amps", true)]
    [InlineData("hums 30 amps", true)]
    [InlineData("it trips at 30 amps", true)]
    [InlineData("smoke, 30 amps", true)]
    [InlineData("it stalls, 30 amps", true)]
    [InlineData("growls, 30 amps", true)]
    [InlineData("just hums, 30 amps, 2 hp", false)]
    [InlineData("just hums. 30 amps", false)]
    [InlineData("30 amps and just hums", false)]
    [InlineData("just hums, plate 30 amps", false)]
    public void Amps_behind_what_it_does_may_be_drawn_or_marked(string text, bool open)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(open, heard.NotUnderstood.Any(left => left is { Text: "30 amps", Reads: ["plate/amps", "running/amps"] }));
        Assert.Equal(!open, heard.Facts.OfType<Fact.Plate>().Any(plate => plate.Field == "amps"));
    }

    [Theory]
    [InlineData("8.1 8.3 10.9 amps", "8.1 8.3 10.9")]
    [InlineData("amps 8.1 8.3 8.1", "8.1 8.3 8.1")]
    [InlineData("amps: 8.1, 8.3, 8.1", "8.1 8.3 8.1")]
    [InlineData("8.1/8.3/10.9 A", "8.1 8.3 10.9")]
    [InlineData("8.1-8.3-10.9 A", "8.1 8.3 10.9")]
    [InlineData("8.1 and 8.3 and 10.9 A", "8.1 8.3 10.9")]
    [InlineData("8.1 & 8.3 & 10.9 A", "8.1 8.3 10.9")]
    [InlineData("8.1, 8.3 then 10.9 A", "8.1 8.3 10.9")]
    [InlineData("8.1 by 8.3 by 10.9 A", "8.1 8.3 10.9")]
    [InlineData("on the legs, amps 8.1 8.3 8.1", "8.1 8.3 8.1")]
    [InlineData("three lines 8.1 8.3 A", "8.1 8.3")]
    [InlineData("250 251 252 amps", "250 251 252")]
    [InlineData("L1 8.1 A L2 8.3 A L3 10.9", "8.1 8.3 10.9")]
    [InlineData("L1 8.1. L2 8.3. L3 10.9.", "8.1 8.3 10.9")]
    [InlineData("8.1 on L1, 8.3 on L2 and 10.9 on L3", "8.1 8.3 10.9")]
    [InlineData("it draws L1 8.1 L2 8.3 L3 10.9 and 1440 rpm", "8.1 8.3 10.9")]
    [InlineData("L1 8.1 A, L2 8.3 A", "8.1 8.3")]
    [InlineData("L1 8.1 A", "")]
    [InlineData("L1 8.1, L2 8.3, L3 is dead", "")]
    [InlineData("L1 400 L2 401 L3 399", "")]
    [InlineData("clamp meter: 8.1 8.3 8.1", "")]
    [InlineData("8.1; 8.3; 10.9 A", "")]
    [InlineData("plate 8.1 8.3 10.9 A", "")]
    [InlineData("drawing 8.1 8.3 10.9 on the three legs", "8.1 8.3 10.9")]
    [InlineData("clamped each line and got 8.1, 8.3 and 10.9", "8.1 8.3 10.9")]
    [InlineData("phase currents are 8.1, 8.3 and 10.9", "8.1 8.3 10.9")]
    [InlineData("3 phase pump, clamp shows 8.1, 8.3 and 10.9, plate 8.2", "8.1 8.3 10.9")]
    [InlineData("clamp shows 8.1, 8.3 and 10.9", "")]
    [InlineData("1 leg 0 amps, the other 2 are way over", "")]
    [InlineData("currents swing between 30 and 50 amps on all three", "")]
    [InlineData("i measured 2.1 2.1 2.4 on the three phases", "")]
    public void The_amps_of_the_lines_are_heard_in_a_row_or_beside_each_line(string text, string amps) => Assert.Equal(amps, Values(text, "line-currents"));

    [Theory]
    [InlineData("amps are 8.1, 8.3 and 10.9 with 8.2 on the plate")]
    [InlineData("amps are 8.1, 8.3 and 10.9 with the plate at 8.2")]
    [InlineData("currents 8.1 8.3 10.9 with plate 8.2")]
    [InlineData("phase currents are 8.1, 8.3 and 10.9 with a plate of 8.2")]
    public void The_figure_of_the_plate_stands_beside_three_of_the_lines(string text)
    {
        Assert.Equal("8.1 8.3 10.9", Values(text, "line-currents"));
        Assert.Equal(8.2, Listener.Understand(text).Facts.OfType<Fact.Plate>().Single().Value.Number);
    }

    /// <summary>What another motor did is not this one's, and what its plate said not this one's plate.</summary>
    [Theory]
    [InlineData("the old one ran at 1450, this one says 2880 on the plate", 2880.0, 1450.0)]
    [InlineData("the old one was a 1000 rpm motor and he's put in a 1500 rpm", 1500.0, 1000.0)]
    public void The_speed_of_the_old_motor_is_not_that_of_the_new(string text, double now, double old)
    {
        var heard = Listener.Understand(text).Facts;
        Assert.Empty(heard.OfType<Fact.Running>());
        Assert.Equal((now, old), (heard.OfType<Fact.Plate>().Single(plate => plate.Of is null).Value.Number, heard.OfType<Fact.Plate>().Single(plate => plate.Of == Fact.Plate.Old).Value.Number));
    }

    [Theory]
    [InlineData("398 402 397 V", "398 402 397")]
    [InlineData("398 402 397", "398 402 397")]
    [InlineData("measured 398 402 397", "398 402 397")]
    [InlineData("supply 398, 402, 397", "398 402 397")]
    [InlineData("L1-L2 462 L2-L3 460 L1-L3 464", "462 460 464")]
    [InlineData("L1 to L2 is 462, L2 to L3 460 and L1 to L3 464", "462 460 464")]
    [InlineData("L1-L2 462 L2-L3 460", "")]
    [InlineData("398/402/397", "")]
    [InlineData("398 402 500", "")]
    [InlineData("400 400 400", "")]
    [InlineData("115 230 460 V", "")]
    public void Three_volts_that_lie_close_together_are_those_of_the_lines(string text, string volts) => Assert.Equal(volts, Values(text, "supply-voltage"));

    [Fact]
    public void Three_figures_answer_no_question_for_one() =>
        Assert.Empty(Listener.Understand("398 402 397", asked: new OpenQuestion { Id = "series", Kind = QuestionKind.Quantity, About = "series", Unit = "volt" }).Facts);

    [Theory]
    [InlineData("96 V at the motor while it tries to start", 96.0)]
    [InlineData("96 V when starting", 96.0)]
    [InlineData("at the motor 96 volts while it starts", 96.0)]
    [InlineData("when switched on it gets 96 V at the motor", 96.0)]
    [InlineData("at the motor 96 while it starts", 96.0)]
    [InlineData("at motor 3 while it starts", null)]
    [InlineData("60 V while starting", null)]
    [InlineData("96 V at the motor", null)]
    [InlineData("energised, 96 V at the motor", null)]
    public void Volts_while_it_starts_are_those_at_the_motor(string text, double? volts) =>
        Assert.Equal(volts, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().SingleOrDefault(test => test.Test == "voltage-at-motor-starting")?.Value);

    [Theory]
    [InlineData("running: 241 V 4.1 A 1440 rpm", "running V=241 A=4.1 rpm=1440 ran")]
    [InlineData("it runs, 241 V, 4.1 amps", "running V=241 A=4.1 ran")]
    [InlineData("draws 4.2 A at 236 V and turns 1440 rpm", "running V=236 A=4.2 rpm=1440")]
    [InlineData("draws 4.2 A", "running A=4.2")]
    [InlineData("amps are 7.0", "running A=7")]
    [InlineData("amps are 7.0 and it is 12 years old", "running A=7")]
    [InlineData("turns the wrong way at 1440 rpm", "running rpm=1440 dir=wrong")]
    [InlineData("turns the right way, 4.2 A", "running A=4.2 dir=right")]
    [InlineData("it runs hot, 30 amps", "running A=30 ran")]
    [InlineData("runs, breaker 16 A", null)]
    [InlineData("runs on 230 V", null)]
    public void A_run_is_heard_with_all_that_was_measured(string text, string? run) =>
        Assert.Equal(run, Brief.Of(Listener.Understand(text)).SingleOrDefault(line => line.StartsWith("running", StringComparison.Ordinal)));

    [Theory]
    [InlineData("run-current.2", "run-current", "4.2 A", "bench run-current 4.2")]
    [InlineData("run-current.2", "run-current", "L2 4.2 A", "bench run-current 4.2")]
    [InlineData("run-current", "run-current", "4.2 A at 236 V", "bench run-current 4.2; running V=236")]
    [InlineData("line-currents", "line-currents", "4.2 4.3", "bench line-currents 4.2; bench line-currents 4.3")]
    [InlineData("line-currents", "line-currents", "4.2 4.3 4.4", "bench line-currents 4.2; bench line-currents 4.3; bench line-currents 4.4")]
    public void Amps_that_were_asked_for_are_the_answer(string id, string about, string text, string brief) =>
        Assert.Equal(brief, string.Join("; ", Brief.Of(Listener.Understand(text, asked: new OpenQuestion { Id = id, Kind = QuestionKind.Quantity, About = about, Unit = "amp" }))));

    private static string Values(string text, string test) =>
        string.Join(' ', Listener.Understand(text).Facts.OfType<Fact.BenchTest>().Where(one => one.Test == test).Select(one => one.Value!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture)));
}
