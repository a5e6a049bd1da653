using System.Xml.Linq;
using WireCoach.WebUi.Diagrams;

namespace WireCoach.WebUi.Tests.Diagrams;

public sealed class CurvePlotTest
{
    private static readonly PlotCurve Right = new("right connection", [.. Enumerable.Range(0, 11).Select(at => (10.0 * at, 100 - (1.0 * at * at)))], []);

    [Fact]
    public void It_is_a_picture_with_title_and_description_that_fits_a_phone()
    {
        var svg = XElement.Parse(CurvePlot.Svg("t", "Torque", "It falls.", "speed", [Right, Right with { Name = "this one", Range = [.. Right.Points.Select(point => (point.Value - 5, point.Value + 5))] }]));
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal("img", (string?)svg.Attribute("role"));
        Assert.Equal("t-title t-desc", (string?)svg.Attribute("aria-labelledby"));
        Assert.Equal(("Torque", "It falls."), ((string?)svg.Element(ns + "title"), (string?)svg.Element(ns + "desc")));
        Assert.InRange((double)svg.Attribute("width")!, 300, 362);
        Assert.Equal(2, svg.Elements(ns + "polygon").Count()); // the range, and its sample
        Assert.Contains(svg.Elements(ns + "polyline"), line => line.Attribute("stroke-dasharray") is not null);
        Assert.All(svg.Elements(ns + "polyline").Concat(svg.Elements(ns + "polygon")).SelectMany(shape => ((string)shape.Attribute("points")!).Split(' ')), point =>
        {
            var (x, y) = (double.Parse(point.Split(',')[0], System.Globalization.CultureInfo.InvariantCulture), double.Parse(point.Split(',')[1], System.Globalization.CultureInfo.InvariantCulture));
            Assert.InRange(x, 0, (double)svg.Attribute("width")!);
            Assert.InRange(y, 0, (double)svg.Attribute("height")!);
        });
    }

    [Theory]
    [InlineData(100, 0)]
    [InlineData(340, -60)]
    [InlineData(2300, -5)]
    public void Whatever_the_figures_there_are_few_lines_and_all_points_lie_inside(double most, double least)
    {
        var curve = new PlotCurve("c", [(0, most), (50, least), (100, 0)], []);
        XNamespace ns = "http://www.w3.org/2000/svg";
        var svg = XElement.Parse(CurvePlot.Svg("t", "T", "D", "speed", [curve]));
        Assert.InRange(svg.Elements(ns + "text").Count(text => text.Value.EndsWith(" %", StringComparison.Ordinal)), 8, 15);
    }
}
