using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Nameplate;

/// <summary>Plate against plate: every difference that matters is named, and nothing is called alike that was not read.</summary>
public sealed class ReplacementMotorTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Listener Listener = new(Knowledge);

    private const string Stirrer = "3/4 hp 115/230 V 10.4/5.2 A 1725 rpm 60 Hz single phase frame 56";

    [Theory]
    [InlineData(Stirrer, "nameplate.replacement-alike")]
    [InlineData("0.56 kW 115/230 V 10.4/5.2 A 1720 rpm 60 Hz single phase frame 56", "nameplate.replacement-alike")]
    [InlineData("1/2 hp 115/230 V 10.4/5.2 A 1725 rpm 60 Hz single phase frame 56", "nameplate.replacement-weaker")]
    [InlineData("1 hp 115/230 V 10.4/5.2 A 1725 rpm 60 Hz single phase frame 56", "nameplate.replacement-stronger")]
    [InlineData("3/4 hp 115/230 V 10.4/5.2 A 3450 rpm 60 Hz single phase frame 56", "nameplate.replacement-faster")]
    [InlineData("3/4 hp 115/230 V 10.4/5.2 A 1140 rpm 60 Hz single phase frame 56", "nameplate.replacement-slower")]
    [InlineData("3/4 hp 230/460 V 5.2/2.6 A 1725 rpm 60 Hz three phase frame 56", "nameplate.replacement-phases")]
    [InlineData("3/4 hp 400 V 2 A 1725 rpm 60 Hz single phase frame 56", "nameplate.replacement-volts")]
    [InlineData("3/4 hp 115/230 V 10.4/5.2 A 1725 rpm 50 Hz single phase frame 56", "nameplate.replacement-hertz")]
    [InlineData("3/4 hp 115/230 V 12/6 A 1725 rpm 60 Hz single phase frame 56", "nameplate.replacement-amps")]
    [InlineData("3/4 hp 115/230 V 10.4/5.2 A 1725 rpm 60 Hz single phase frame 145T", "nameplate.replacement-frame")]
    public void One_difference_is_named_and_no_other(string made, string sentence) =>
        Assert.Equal([sentence], Compared(Stirrer, made));

    [Fact]
    public void What_one_plate_does_not_say_is_not_called_alike() =>
        Assert.Equal(["nameplate.replacement-alike-so-far", "nameplate.replacement-missing"], Compared(Stirrer, "3/4 hp 1725 rpm"));

    [Theory]
    [InlineData("the old one was 1 hp 1725 rpm 115/230 V, the new one is 1.5 hp 3450 rpm 230 V", 1725.0, 3450.0)]
    [InlineData("new motor is 1.5 hp 3450 rpm 230 V. Old motor 1 hp 1725 rpm 115/230 V", 1725.0, 3450.0)]
    [InlineData("can I replace the 0.75 kW 1420 rpm 230 V motor with a 0.75 kW 2850 rpm 230 V one?", 1420.0, 2850.0)]
    public void Each_plate_goes_to_its_own_motor(string text, double old, double made)
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), Listener.Understand(text).Facts);
        Assert.Equal((old, made), (file.OldPlate.Rpm!.Value, file.Plate.Rpm!.Value));
    }

    [Fact]
    public void A_plate_without_an_old_motor_beside_it_is_of_the_motor_at_hand() =>
        Assert.All(Listener.Understand("got a new motor, 2 hp 3450 rpm 230 V 10 A").Facts.OfType<Fact.Plate>(), plate => Assert.Null(plate.Of));

    private static string[] Compared(string old, string made) =>
        [.. ReplacementMotor.Compare(Knowledge, Plate(old), Plate(made)).Select(said => said.Id)];

    private static PlateFields Plate(string text) =>
        Listener.Understand("plate: " + text).Facts.OfType<Fact.Plate>().Aggregate(PlateFields.Empty, (plate, said) => plate.With(said.Field, said.Value));
}
