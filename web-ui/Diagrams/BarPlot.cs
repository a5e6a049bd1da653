using System.Globalization;

namespace WireCoach.WebUi.Diagrams;

/// <summary>One bar: its name below it, and its parts from the ground up.</summary>
/// <param name="Name">What it stands for.</param>
/// <param name="Parts">The height of each part; an empty bar has none.</param>
public sealed record PlotBar(string Name, IReadOnlyList<double> Parts);

/// <summary>Bars over time, as a picture: parts are told apart by black, grey and white, so that they read in black and white.</summary>
public static class BarPlot
{
    private const double Width = 360;
    private const double Left = 40;
    private const double Top = 10;
    private const double Across = Width - Left - 8;
    private const double Down = 120;
    private static readonly double[] Mantissas = [1, 2, 2.5, 5, 10];

    /// <summary>The picture, with title and description for who cannot see it.</summary>
    /// <param name="id">Makes ids unique where several pictures stand on a page.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="description">The same in words.</param>
    /// <param name="bars">The bars from left to right.</param>
    /// <param name="parts">The names of the parts, for the legend; empty where there is one part.</param>
    public static string Svg(string id, string title, string description, IReadOnlyList<PlotBar> bars, IReadOnlyList<string> parts)
    {
        var canvas = new Canvas();
        return canvas.Svg(Width, Draw(canvas, bars, parts), id, title, description);
    }

    internal static double Draw(Canvas canvas, IReadOnlyList<PlotBar> bars, IReadOnlyList<string> parts)
    {
        var highest = Math.Max(1, bars.Select(bar => bar.Parts.Sum()).DefaultIfEmpty(0).Max());
        var step = Step(highest);
        var most = step * Math.Ceiling((highest / step) - 1e-9);
        for (var value = 0.0; value <= most + 1e-9; value += step)
        {
            var y = Top + Down - (Down * value / most);
            canvas.Line([(Left, y), (Left + Across, y)], value == 0 ? 1.4 : 0.4);
            var text = value.ToString("0.##", CultureInfo.InvariantCulture);
            canvas.Text(Left - 5 - Lettering.Width(text, Lettering.Label, false), y - 6, text, Lettering.Label, anchor: "end");
        }

        var slot = Across / Math.Max(1, bars.Count);
        for (var at = 0; at < bars.Count; at++)
        {
            Bar(canvas, Left + (slot * at) + (slot * 0.12), slot * 0.76, bars[at].Parts.Select(part => Down * part / most).ToList());
        }

        Names(canvas, bars, slot);
        return Legend(canvas, parts);
    }

    /// <summary>The least round step that makes no more than five lines.</summary>
    private static double Step(double highest)
    {
        var size = Math.Pow(10, Math.Floor(Math.Log10(highest / 5)));
        return Math.Max(1, size * Mantissas.First(mantissa => mantissa * size * 5 >= highest - 1e-9));
    }

    private static void Bar(Canvas canvas, double left, double width, List<double> heights)
    {
        var bottom = Top + Down;
        for (var part = 0; part < heights.Count; part++)
        {
            if (heights[part] > 0)
            {
                Box(canvas, left, bottom - heights[part], width, heights[part], part);
                bottom -= heights[part];
            }
        }
    }

    private static void Box(Canvas canvas, double left, double top, double width, double height, int part)
    {
        (double X, double Y)[] corners = [(left, top), (left + width, top), (left + width, top + height), (left, top + height)];
        if (part == 1)
        {
            canvas.Area(corners);
        }

        canvas.Symbol($"M{Canvas.N(left)} {Canvas.N(top)}h{Canvas.N(width)}v{Canvas.N(height)}h{Canvas.N(-width)}z", new Box(left, top, width, height), filled: part == 0);
    }

    /// <summary>As many names as have room, the first and the last among them.</summary>
    private static void Names(Canvas canvas, IReadOnlyList<PlotBar> bars, double slot)
    {
        if (bars.Count == 0)
        {
            return;
        }

        var wide = bars.Max(bar => Lettering.Width(bar.Name, Lettering.Label, false)) + 10;
        var every = (int)Math.Ceiling(wide / slot);
        for (var at = 0; at < bars.Count; at += every)
        {
            var width = Lettering.Width(bars[at].Name, Lettering.Label, false);
            var middle = Left + (slot * (at + 0.5)) - (width / 2);
            canvas.Text(Math.Clamp(middle, 0, Width - width), Top + Down + 5, bars[at].Name, Lettering.Label);
        }
    }

    private static double Legend(Canvas canvas, IReadOnlyList<string> parts)
    {
        var y = Top + Down + 26;
        for (var at = 0; at < parts.Count; at++)
        {
            Box(canvas, Left, y, 20, 10, at);
            canvas.Text(Left + 28, y - 1, parts[at], Lettering.Label);
            y += 18;
        }

        return y + 2;
    }
}
