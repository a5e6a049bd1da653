using WireCoach.WebUi.Diagrams;

namespace WireCoach.WebUi.Tests.Diagrams;

/// <summary>Bars over time, whatever the figures.</summary>
public sealed class BarPlotTest
{
    [Theory]
    [InlineData(1, 0.0)]
    [InlineData(1, 1.0)]
    [InlineData(7, 3.0)]
    [InlineData(12, 1480.0)]
    [InlineData(31, 0.4)]
    [InlineData(60, 97.0)]
    public void No_words_overlap_and_no_bar_leaves_its_place(int count, double most)
    {
        var bars = Enumerable.Range(0, count).Select(at => new PlotBar($"2026-{1 + (at % 12):00}-01", at % 5 == 4 ? [] : [most * at / count / 2, most / 4, most / 4])).ToList();
        var canvas = new Canvas();
        var height = BarPlot.Draw(canvas, bars, ["verified", "handed over", "open"]);
        foreach (var text in canvas.Texts)
        {
            Assert.True(text is { Left: >= 0, Top: >= 0 } && text.Right <= 360 && text.Bottom <= height, $"'{text.Text}' leaves the picture");
            Assert.DoesNotContain(canvas.Texts, other => !ReferenceEquals(other.Text, text.Text) && other != text && other.Overlaps(text));
        }

        Assert.InRange(canvas.Texts.Count(text => text.Right < 40 && text.Bottom < 140), 2, 6);
        Assert.All(canvas.Strokes, bar => Assert.True(bar.Top >= 9.9 && bar.Bottom <= height && bar.Right <= 352.1));
        Assert.Contains(canvas.Texts, text => text.Text.StartsWith("2026", StringComparison.Ordinal));
    }
}
