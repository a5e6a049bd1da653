using System.Globalization;
using System.Text;

namespace WireCoach.WebUi.Diagrams;

/// <summary>A picture under construction: shapes in drawing order, with the boxes of its texts and wires for those who check that nothing overlaps.</summary>
internal sealed class Canvas
{
    private readonly StringBuilder _shapes = new();
    private readonly List<Box> _texts = [];
    private readonly List<Box> _strokes = [];

    /// <summary>The boxes of all texts, in drawing order.</summary>
    public IReadOnlyList<Box> Texts => _texts;

    /// <summary>The boxes of all wires and symbols, in drawing order.</summary>
    public IReadOnlyList<Box> Strokes => _strokes;

    public void Wire(double fromX, double fromY, double toX, double toY)
    {
        _ = _shapes.Append($"<path d=\"M{N(fromX)} {N(fromY)}L{N(toX)} {N(toY)}\"/>");
        _strokes.Add(Box.Around(fromX, fromY, toX, toY));
    }

    /// <summary>A path of a symbol that fills the given box.</summary>
    public void Symbol(string path, Box box, bool filled = false)
    {
        _ = _shapes.Append(filled ? $"<path class=\"full\" d=\"{path}\"/>" : $"<path d=\"{path}\"/>");
        _strokes.Add(box);
    }

    /// <summary>A joint: wires that meet here are connected.</summary>
    public void Dot(double x, double y) => _shapes.Append($"<circle class=\"full\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"3.5\"/>");

    public void Ring(double x, double y, double radius)
    {
        _ = _shapes.Append($"<circle class=\"ring\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\"/>");
        _strokes.Add(new Box(x - radius, y - radius, 2 * radius, 2 * radius));
    }

    /// <summary>A text whose box begins at a corner.</summary>
    public void Text(double left, double top, string text, double size, bool bold = false, string anchor = "start")
    {
        var width = Lettering.Width(text, size, bold);
        var x = left + (anchor switch { "end" => width, "middle" => width / 2, _ => 0 });
        var hold = anchor == "start" ? string.Empty : $" text-anchor=\"{anchor}\"";
        var weight = bold ? " class=\"bold\"" : string.Empty;
        _ = _shapes.Append($"<text{weight}{hold} x=\"{N(x)}\" y=\"{N(top + (0.78 * size))}\" font-size=\"{N(size)}\">{Escaped(text)}</text>");
        _texts.Add(new Box(left, top, width, size, text));
    }

    /// <summary>A lead's tag in a frame; each line a text of its own.</summary>
    public void Chip(double left, double top, IReadOnlyList<string> lines)
    {
        var box = ChipBox(left, top, lines);
        _ = _shapes.Append($"<rect class=\"chip\" x=\"{N(box.Left)}\" y=\"{N(box.Top)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\" rx=\"3\"/>");
        for (var line = 0; line < lines.Count; line++)
        {
            Text(left + 3, top + 2.5 + (line * Lettering.ChipLine), lines[line], Lettering.Chip, bold: true);
        }
    }

    public static Box ChipBox(double left, double top, IReadOnlyList<string> lines) => new(
        left, top, lines.Max(line => Lettering.Width(line, Lettering.Chip, true)) + 6, (lines.Count * Lettering.ChipLine) + 3);

    /// <summary>A line through points, of its own width and dashes, for curves and their ticks.</summary>
    public void Line(IEnumerable<(double X, double Y)> points, double width, string dashes = "") => _shapes.Append(
        $"<polyline points=\"{Points(points)}\" fill=\"none\" stroke=\"#000\" stroke-width=\"{N(width)}\"{(dashes.Length > 0 ? $" stroke-dasharray=\"{dashes}\"" : string.Empty)}/>");

    /// <summary>A light area that stays visible in black and white.</summary>
    public void Area(IEnumerable<(double X, double Y)> points) => _shapes.Append($"<polygon points=\"{Points(points)}\" fill=\"#ddd\"/>");

    /// <summary>The finished picture.</summary>
    /// <param name="width">Width of its own units; it scales to whatever room it gets.</param>
    /// <param name="height">Height of its own units.</param>
    /// <param name="id">Makes the ids of title and description unique on a page.</param>
    /// <param name="title">What it shows, in a few words.</param>
    /// <param name="description">The same as the picture, in words.</param>
    public string Svg(double width, double height, string id, string title, string description) =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {N(width)} {N(height)}\" width=\"{N(width)}\" height=\"{N(height)}\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" " +
        $"class=\"diagram\"><title id=\"{id}-title\">{Escaped(title)}</title><desc id=\"{id}-desc\">{Escaped(description)}</desc>" +
        $"<style>{DiagramStyle.Css}</style><rect width=\"{N(width)}\" height=\"{N(height)}\" fill=\"#fff\"/>{_shapes}</svg>\n";

    public void Dashed(Box box) => _shapes.Append(
        $"<path class=\"dash\" d=\"M{N(box.Left)} {N(box.Top)}h{N(box.Width)}v{N(box.Height)}h{N(-box.Width)}z\"/>");

    public static string N(double number) => Math.Round(number, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Points(IEnumerable<(double X, double Y)> points) => string.Join(' ', points.Select(point => $"{N(point.X)},{N(point.Y)}"));

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}

/// <summary>A rectangle.</summary>
internal readonly record struct Box(double Left, double Top, double Width, double Height, string Text = "")
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public static Box Around(double fromX, double fromY, double toX, double toY) =>
        new(Math.Min(fromX, toX), Math.Min(fromY, toY), Math.Abs(toX - fromX), Math.Abs(toY - fromY));

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}
