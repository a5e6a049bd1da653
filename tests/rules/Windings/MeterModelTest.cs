using System.Globalization;
using System.Text.RegularExpressions;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What the figures of a common meter are worth, by the vectors written down apart.</summary>
public sealed class MeterModelTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Fact]
    public void The_error_of_a_figure_is_a_share_of_it_and_some_counts()
    {
        var row = CsvFile.Vectors("meter")["MU1"];
        Assert.Equal(Figures(row["expect"])[0], Basic().Limit(Figures(row["inputs"])[0]), row.Number("tol"));
    }

    [Theory]
    [InlineData("MU3", true)]
    [InlineData("MU4", false)]
    public void Two_figures_of_one_meter_differ_only_beyond_their_counts(string id, bool differ)
    {
        var figures = Figures(CsvFile.Vectors("meter")[id]["inputs"]);
        Assert.Equal(differ, figures[1] - figures[0] > Basic().CannotTell(figures[0], figures[1]));
    }

    [Fact]
    public void What_is_left_after_the_probes_may_be_too_little_to_tell()
    {
        var figures = Figures(CsvFile.Vectors("winding-resistance")["LD2"]["inputs"]);
        var meter = new MeterModel(Knowledge.Identification, new MeterInput { Percent = 0.8, Counts = 2, TestLeadOhms = figures[1] });
        Assert.Equal(0.2, meter.Corrected(figures[0]), 1e-9);
        Assert.True(meter.Corrected(figures[0]) <= meter.Limit(figures[0]));
    }

    private static MeterModel Basic() => new(Knowledge.Identification, new MeterInput { Percent = 0.8, Counts = 2 });

    private static double[] Figures(string text) =>
        [.. Regex.Matches(text, @"\d+(\.\d+)?", RegexOptions.None, TimeSpan.FromSeconds(1)).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];
}
