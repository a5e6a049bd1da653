using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Which volts are wished for, left, due, measured or only asked about.</summary>
public sealed class VoltsInWordsTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("runs on 115 now, want 230", "goal change-voltage; supply volts=230")]
    [InlineData("I'd like 230, it's 115 now", "goal change-voltage; supply volts=230")]
    [InlineData("wired for 115, want 230", "goal change-voltage; supply volts=230")]
    [InlineData("want to use 230 but my shop has 115 now", "goal change-voltage; supply volts=230; supply volts=115")]
    [InlineData("need a 230 V motor", "plate volts 230")]
    [InlineData("my meter says 137 where the plug-in is supposed to be 120", "instrument multimeter; bench supply-voltage 137; supply volts=120")]
    [InlineData("should be 230 but I measure 198", "supply volts=230; bench supply-voltage 198")]
    [InlineData("reads 198 on a 230 supply", "bench supply-voltage 198; supply volts=230")]
    [InlineData("supply is 400 and the meter shows 380", "supply volts=400; instrument multimeter; bench supply-voltage 380")]
    [InlineData("my 240 V supply reads 221 V at the terminals while it starts", "supply volts=240; bench voltage-at-motor-starting 221")]
    [InlineData("I measured 115 on one outlet and 230 on the other", "bench supply-voltage 115; bench supply-voltage 230")]
    [InlineData("230 at the board, 191 at the borehole pump while it gets away", "supply volts=230; bench voltage-at-motor-starting 191; application")]
    [InlineData("I get 400 between two of them and 230 with the third", "bench supply-voltage 400; bench supply-voltage 230")]
    [InlineData("400 V between L1 and L2 but only 210 V to L3", "bench supply-voltage 400; bench supply-voltage 210")]
    [InlineData("measured 235 between two of them and 190 to the manufactured leg", "bench supply-voltage 235; bench supply-voltage 190")]
    [InlineData("L1-L2 400, L2-L3 232, L1-L3 230", "bench supply-voltage 400; bench supply-voltage 232; bench supply-voltage 230")]
    [InlineData("phase to phase I have 401, 398 and 232", "bench supply-voltage 401; bench supply-voltage 398; bench supply-voltage 232")]
    [InlineData("120 or 240 I don't know", "")]
    [InlineData("supply is 208 or 240, not sure which, three phase", "supply phases=3")]
    [InlineData("we have 120 and 240 in the shop", "")]
    [InlineData("start cap 88 uF measured 61, supply is 120 or 240 I don't know", "capacitor uF=88 measured=61 use=start")]
    [InlineData("phase to phase 400, 415 and 380 with it running", "bench supply-voltage 400; bench supply-voltage 415; bench supply-voltage 380")]
    [InlineData("120 or 240, I'd go for 240", "supply volts=240")]
    [InlineData("plate 208-230/460, I've 240 three phase", "plate volts 208/230/460; supply volts=240 phases=3")]
    [InlineData("Phase to phase 402, 388, 415 with it running. Currents 18, 27, 14", "unequal-phase-currents; bench supply-voltage 402; bench supply-voltage 388; bench supply-voltage 415; bench line-currents 18; bench line-currents 27; bench line-currents 14")]
    [InlineData("motor is 230 V and the panel is 208", "plate volts 230; supply volts=208")]
    [InlineData("with 230 at the motor it draws 5 A", "running V=230 A=5")]
    [InlineData("getting 198 at the motor terminals when it runs", "running V=198 ran")]
    [InlineData("104 at the motor while it tries to start", "bench voltage-at-motor-starting 104")]
    public void Each_is_heard_for_what_it_is(string text, string brief) => Assert.Equal(brief, string.Join("; ", Brief.Of(Listener.Understand(text))));

    /// <summary>Volts at the motor count otherwise while it runs than while it tries to start: where that is not told, it is asked.</summary>
    [Theory]
    [InlineData("104 at the motor", "104")]
    [InlineData("I measured 198 V at the motor", "198 V")]
    [InlineData("the voltage at the motor is 104", "104")]
    public void Volts_at_the_motor_are_left_open(string text, string open)
    {
        var heard = Listener.Understand(text);
        Assert.Empty(Brief.Of(heard));
        var left = Assert.Single(heard.NotUnderstood);
        Assert.Equal((open, "running/volts starting/volts"), (left.Text, string.Join(' ', left.Reads)));
    }

    [Theory]
    [InlineData("runs on 115 now, want 230", "115")]
    [InlineData("I'd like 230, it's 115 now", "115")]
    [InlineData("set up for 230 now, I need 115", "230")]
    public void What_it_is_to_leave_is_kept(string text, string volts) =>
        Assert.Equal(volts, Assert.Single(Listener.Understand(text).Facts.OfType<Fact.Choice>(), choice => choice.Question == Fact.Choice.WiredFor).Option);

    [Theory]
    [InlineData("do I need 240 for this motor")]
    [InlineData("why would it need 230")]
    [InlineData("does it need 400 V")]
    public void What_is_only_asked_about_is_no_fact(string text) => Assert.Empty(Listener.Understand(text).Facts);

    [Theory]
    [InlineData("the start cap beeps solid across its tabs")]
    [InlineData("run capacitor shorted, 0.4 ohm between the tabs")]
    public void A_capacitor_that_beeps_is_shorted(string text) => Assert.Contains("bench capacitance shorted", Brief.Of(Listener.Understand(text)));
}
