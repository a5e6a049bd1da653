using System.Globalization;

namespace WireCoach.WebUi.Diagrams;

/// <summary>One curve of a plot.</summary>
/// <param name="Name">What it is, for the legend and the description.</param>
/// <param name="Points">Percent of the field's speed against percent of the figure.</param>
/// <param name="Range">Of each point the least and the greatest value; empty for a curve without a range.</param>
public sealed record PlotCurve(string Name, IReadOnlyList<(double Speed, double Value)> Points, IReadOnlyList<(double Low, double High)> Range);

/// <summary>A figure over the speed, as a picture: told apart by line and grey, so that it reads in black and white.</summary>
public static class CurvePlot
{
    private const double Width = 360;
    private const double Left = 44;
    private const double Top = 10;
    private const double Across = Width - Left - 12;
    private const double Down = 190;
    private static readonly string[] Dashes = [string.Empty, "8 5", "2 4"];
    private static readonly double[] Steps = [10, 20, 25, 50, 100, 200, 500];

    /// <summary>The picture, with title and description for who cannot see it.</summary>
    /// <param name="id">Makes ids unique where several pictures stand on a page.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="description">The same in words.</param>
    /// <param name="speed">Name of the level axis.</param>
    /// <param name="curves">One to three curves; the range of the last is drawn.</param>
    public static string Svg(string id, string title, string description, string speed, IReadOnlyList<PlotCurve> curves)
    {
        var canvas = new Canvas();
        var values = curves.SelectMany(curve => curve.Points.Select(point => point.Value)).Concat(curves[^1].Range.SelectMany(range => new[] { range.Low, range.High })).Append(0).Append(100).ToList();
        var step = Steps.FirstOrDefault(size => (values.Max() - values.Min()) / size <= 6, Steps[^1]);
        // A little below zero, as a single-phase motor has it at the field's speed, is not worth a stripe of its own.
        var (low, high) = (step * Math.Floor((values.Min() / step) + 0.25), step * Math.Ceiling((values.Max() / step) - 1e-9));
        double X(double percent) => Left + (Across * percent / 100);
        double Y(double value) => Top + (Down * (high - Math.Clamp(value, low, high)) / (high - low));
        if (curves[^1] is { Range: { Count: > 0 } range, Points: var banded })
        {
            canvas.Area([.. banded.Zip(range, (point, span) => (X(point.Speed), Y(span.High))), .. banded.Zip(range, (point, span) => (X(point.Speed), Y(span.Low))).Reverse()]);
        }

        Axes(canvas, speed, (low, high, step), X, Y);
        for (var at = 0; at < curves.Count; at++)
        {
            canvas.Line(curves[at].Points.Select(point => (X(point.Speed), Y(point.Value))), at == 0 ? 1.4 : 2.6, Dashes[at]);
        }

        return canvas.Svg(Width, Legend(canvas, curves), id, title, description);
    }

    private static void Axes(Canvas canvas, string speed, (double Low, double High, double Step) scale, Func<double, double> x, Func<double, double> y)
    {
        for (var value = scale.Low; value <= scale.High + 1e-9; value += scale.Step)
        {
            canvas.Line([(Left, y(value)), (Left + Across, y(value))], Math.Abs(value) < 1e-9 ? 1.4 : 0.4);
            var text = value.ToString("0", CultureInfo.InvariantCulture) + " %";
            canvas.Text(Left - 5 - Lettering.Width(text, Lettering.Label, false), y(value) - 6, text, Lettering.Label, anchor: "end");
        }

        for (var percent = 0; percent <= 100; percent += 25)
        {
            canvas.Line([(x(percent), Top), (x(percent), Top + Down)], percent == 0 ? 1.4 : 0.4);
            var text = $"{percent} %";
            canvas.Text(x(percent) - (percent == 100 ? Lettering.Width(text, Lettering.Label, false) : Lettering.Width(text, Lettering.Label, false) / 2), Top + Down + 5, text, Lettering.Label);
        }

        canvas.Text(Left, Top + Down + 21, speed, Lettering.Label);
    }

    /// <summary>The names below the plot, each with its line; the bottom of the picture is the answer.</summary>
    private static double Legend(Canvas canvas, IReadOnlyList<PlotCurve> curves)
    {
        var y = Top + Down + 42;
        for (var at = 0; at < curves.Count; at++)
        {
            if (at == curves.Count - 1 && curves[at].Range.Count > 0)
            {
                canvas.Area([(8, y), (38, y), (38, y + 12), (8, y + 12)]);
            }

            canvas.Line([(8, y + 6), (38, y + 6)], at == 0 ? 1.4 : 2.6, Dashes[at]);
            foreach (var line in Lettering.Lines(curves[at].Name, Width - 52, Lettering.Label, bold: false))
            {
                canvas.Text(46, y, line, Lettering.Label);
                y += Lettering.LabelLine;
            }

            y += 5;
        }

        return y + 2;
    }
}
