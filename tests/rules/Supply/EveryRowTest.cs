using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

/// <summary>Every row and column of the motor tables through the whole plan, by arithmetic of its own on the tables as they were written down apart.</summary>
public sealed class EveryRowTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;
    private static readonly double[] Breakers = Ratings("nec-240-6-breaker-2023");
    private static readonly double[] Fuses = Ratings("nec-240-6-fuse");
    private static readonly string[] Gauges = ["14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0"];

    public static TheoryData<string, int, string, int> Motors()
    {
        var data = new TheoryData<string, int, string, int>();
        foreach (var (table, phases) in new[] { ("nec-430-248", 1), ("nec-430-250", 3) })
        {
            foreach (var row in Written(table))
            {
                foreach (var (volts, cell) in row.Skip(1).Where(pair => pair.Value.Length > 0))
                {
                    data.Add(row.Values.First(), phases, volts, 60);
                    data.Add(row.Values.First(), phases, volts, 75);
                }
            }
        }

        return data;
    }

    [Fact]
    public void There_are_as_many_as_the_tables_have() => Assert.Equal(2 * ((12 * 4) + (21 * 6) - 16), Motors().Count);

    [Theory]
    [MemberData(nameof(Motors))]
    public void Wire_device_overload_and_earth_follow_from_the_tables_current(string size, int phases, string volts, int column)
    {
        var amps = Written(phases == 3 ? "nec-430-250" : "nec-430-248").First(row => row.Values.First() == size)[volts];
        var full = Number(amps);
        var answer = SupplyPlanner.Plan(Knowledge, new()
        {
            Phases = phases,
            Volts = Number(volts),
            Horsepower = Fraction(size),
            InsulationCelsius = column,
            TerminalCelsius = column,
            Protection = "inverse-time-breaker",
            PlateAmps = full,
            Edition = 2023,
        });
        var wire = Written("nec-310-16-2011").FirstOrDefault(row => Number(row[$"{column}"]) >= (1.25 * full) - 1e-9)?.Values.First();
        if (!answer.IsGiven)
        {
            Assert.Contains(answer.Problems, problem => problem.Advice.Id == "supply.conductor-beyond-table");
            Assert.True(2.5 * full > Number(Written("nec-250-122").Last().Values.First()));
            return;
        }

        var plan = answer.Value;
        Assert.Equal(full, plan.TableAmps!.Value!.Value, 1e-9);
        Assert.Equal(1.25 * full, plan.ConductorAmps.Value!.Value, 1e-9);
        Assert.Equal(wire is null ? null : $"{wire} AWG", plan.Conductor?.Size.Text);
        Assert.Equal(wire is null, plan.Notes.Any(note => note.Id == "supply.conductor-beyond-table"));
        Assert.Equal(1.15 * full, plan.OverloadAmps!.Value!.Value, 1e-9);
        Assert.Equal(1.15 * full, plan.DisconnectAmps!.Value!.Value, 1e-9);
        Assert.Equal((full <= 9 ? 1.7 : full <= 20 ? 1.56 : 1.4) * full, plan.ThermalProtectorAmps!.Value!.Value, 1e-9);
        var device = Breakers.First(rating => rating >= (2.5 * full) - 0.005);
        Assert.Equal(device, plan.Protection.StandardAmps.Value!.Value);
        var ceiling = Breakers.LastOrDefault(rating => rating <= ((full <= 100 ? 4 : 3) * full) + 1e-9);
        Assert.Equal(Math.Max(ceiling, device), plan.Protection.CeilingAmps!.Value!.Value);
        var earth = Written("nec-250-122").First(row => device <= Number(row.Values.First())).Values.ElementAt(1);
        Assert.Equal($"{(wire is not null && Array.IndexOf(Gauges, earth) > Array.IndexOf(Gauges, wire) ? wire : earth)} AWG", plan.EarthConductor.Size.Text);
    }

    [Theory]
    [MemberData(nameof(Motors))]
    public void Fuses_follow_by_their_own_percent(string size, int phases, string volts, int column)
    {
        var full = Number(Written(phases == 3 ? "nec-430-250" : "nec-430-248").First(row => row.Values.First() == size)[volts]);
        foreach (var (device, percent) in new[] { ("dual-element-fuse", 1.75), ("non-time-delay-fuse", 3.0) })
        {
            if (SupplyPlanner.Plan(Knowledge, new() { Phases = phases, Volts = Number(volts), Horsepower = Fraction(size), InsulationCelsius = column, TerminalCelsius = column, Protection = device }).Value is { } plan)
            {
                Assert.Equal(Fuses.First(rating => rating >= (percent * full) - 0.005), plan.Protection.StandardAmps.Value!.Value);
            }
        }
    }

    public static TheoryData<string, int> International()
    {
        var data = new TheoryData<string, int>();
        foreach (var row in Written("iec-current-three-phase"))
        {
            data.Add(row.Values.First(), 230);
            data.Add(row.Values.First(), 400);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(International))]
    public void Each_kilowatt_has_its_amps_its_fuse_and_a_cable_that_carries_it(string kilowatts, int volts)
    {
        var row = Written("iec-current-three-phase").First(row => row.Values.First() == kilowatts);
        var amps = Number(row[$"{volts}"]);
        var plan = SupplyPlanner.Plan(Knowledge, new() { Region = Region.Iec, Phases = 3, Volts = volts, Kilowatts = Number(kilowatts), PlateAmps = amps, Protection = "fuse-gg" }).Value!;
        Assert.Equal(amps, plan.TableAmps!.Value!.Value, 1e-9);
        Assert.Equal(Number(row[$"fuse-{volts}"]), plan.Protection.StandardAmps.Value!.Value);
        Assert.True(plan.Conductor!.AmpacityAmps.Value >= amps);
        Assert.Equal(plan.Conductor!.AmpacityAmps.Value!.Value, Number(Written("iec-cable").First(cable => plan.Conductor!.Size.Text.StartsWith($"{cable.Values.First()} ", StringComparison.Ordinal))["b2-3"]), 1e-9);
    }

    private static List<IReadOnlyDictionary<string, string>> Written(string table) => CsvFile.Rows(Path.Combine(Repository.Root, "tests", "rules", "Tables", table + ".csv"));

    private static double[] Ratings(string table) => [.. Written(table).Select(row => Number(row.Values.First()))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double Fraction(string text) => text.Split('/') is [var over, var under] ? Number(over) / Number(under) : Number(text);
}
