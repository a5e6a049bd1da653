using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>A plan shows no part that somebody looked for and did not find.</summary>
public sealed class MotorWithoutCapacitorTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    [Theory]
    [InlineData(false, null)]
    [InlineData(true, "start-capacitor")]
    public void The_start_branch_is_drawn_with_the_parts_that_are_there(bool present, string? drawn)
    {
        var plan = Coach.Assess(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), Facts(present))).Plan;
        Assert.NotNull(plan);
        Assert.Equal(drawn, plan.Circuit.Elements.SingleOrDefault(element => element.Kind.EndsWith("capacitor", StringComparison.Ordinal))?.Kind);
        Assert.Contains(plan.Circuit.Elements, element => element.Kind == "switch");
        Assert.Equal(["1", "2 3 4", "5 6"], plan.Joints.Select(joint => string.Join(' ', joint.Leads.Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal));
    }

    private static IReadOnlyList<Fact> Facts(bool capacitor) =>
    [
        .. "123456".Select(tag => new Fact.Lead { Tag = tag.ToString() }),
        Plate("phases", 1), Plate("volts", 115, 230), Plate("amps", 14, 7), Plate("rpm", 1725), Plate("horsepower", 1),
        new Fact.Supply { Volts = 230 },
        new Fact.Goal { Id = "connect" },
        new Fact.Confirm { Id = "isolated" },
        new Fact.Capacitor { Present = capacitor, Use = capacitor ? "start" : "unknown" },
        new Fact.Confirm { Id = "capacitor-discharged" },
        new Fact.Choice { Question = "capacitor-bridged", Option = "bridged" },
        new Fact.BenchTest { Test = "probe-zero", Value = 0.2, Unit = "ohm" },
        new Fact.Reading { From = "1", To = Fact.Reading.Frame, Together = ["2", "3", "4", "5", "6"], Open = true },
        .. Enumerable.Range(0, 2).SelectMany(_ => (Fact[])[Ohms("1", "4", 1.8), Ohms("2", "5", 1.8), Ohms("3", "6", 6.4)]),
        Open("1", "2"), Open("1", "3"), Open("2", "3"),
        new Fact.Instrument { Id = "battery" },
        new Fact.BenchTest { Test = "battery-flick", Drive = ["1", "4"], Read = ["2", "5"], Outcome = "up-on-make" },
    ];

    private static Fact.Plate Plate(string field, params double[] values) => new() { Field = field, Value = PlateValue.Of(values) };

    private static Fact.Reading Open(string from, string to) => new() { From = from, To = to, Open = true };

    private static Fact.Reading Ohms(string from, string to, double ohms) => new() { From = from, To = to, Ohms = ohms };
}
