using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>What later facts make of earlier ones.</summary>
public sealed class CaseFileTest
{
    [Theory]
    [InlineData("pump", "brine pump", "pump")]
    [InlineData("Pump", "brine pump", "pump")]
    [InlineData("conveyor", "conveyor", null)]
    [InlineData("ump", "ump", null)]
    public void A_machine_that_is_called_by_half_its_name_is_the_same(string later, string machine, string? id)
    {
        var told = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [])
            .With(new Fact.Application { Text = "brine pump" })
            .With(new Fact.Application { Text = later, ApplicationId = id })
            .Application!;
        Assert.Equal((machine, id), (told.Text, told.ApplicationId));
    }
}
