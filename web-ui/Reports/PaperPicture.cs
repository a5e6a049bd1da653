using System.Globalization;
using System.Xml.Linq;
using PdfSharp.Drawing;

namespace WireCoach.WebUi.Reports;

/// <summary>Draws a diagram on paper, line for line from the very picture that the pages show.</summary>
/// <remarks>Knows the shapes and classes that diagrams are made of; anything else is an error, so that nothing is left out of a wiring diagram silently.</remarks>
internal sealed class PaperPicture
{
    private readonly XElement _svg;

    public PaperPicture(string svg)
    {
        _svg = XElement.Parse(svg);
        (Width, Height) = (Number(_svg, "width"), Number(_svg, "height"));
    }

    /// <summary>Width in the picture's own units.</summary>
    public double Width { get; }

    /// <summary>Height in the picture's own units.</summary>
    public double Height { get; }

    /// <summary>Draws it with its corner at a place and so many points for each of its units.</summary>
    public void Draw(XGraphics graphics, double left, double top, double scale)
    {
        var state = graphics.Save();
        graphics.TranslateTransform(left, top);
        graphics.ScaleTransform(scale);
        foreach (var shape in _svg.Elements())
        {
            Draw(graphics, shape);
        }

        graphics.Restore(state);
    }

    private static void Draw(XGraphics graphics, XElement shape)
    {
        var kind = (string?)shape.Attribute("class") ?? string.Empty;
        switch (shape.Name.LocalName)
        {
            case "title" or "desc" or "style":
                break;
            case "rect" when kind.Length == 0: // the white behind everything
                break;
            case "rect":
                graphics.DrawRectangle(Pen(1.2), XBrushes.White, Number(shape, "x"), Number(shape, "y"), Number(shape, "width"), Number(shape, "height"));
                break;
            case "circle":
                var radius = Number(shape, "r");
                var (x, y) = (Number(shape, "cx") - radius, Number(shape, "cy") - radius);
                graphics.DrawEllipse(kind == "full" ? null : Pen(2), kind == "full" ? XBrushes.Black : XBrushes.White, x, y, 2 * radius, 2 * radius);
                break;
            case "path":
                foreach (var stroke in PaperPath.Of((string?)shape.Attribute("d") ?? string.Empty))
                {
                    graphics.DrawPath(kind switch { "full" => null, "dash" => Dashed(), _ => Pen(2) }, kind == "full" ? XBrushes.Black : null, stroke);
                }

                break;
            case "text":
                Write(graphics, shape, kind == "bold");
                break;
            default:
                throw new NotSupportedException($"Paper does not know the shape '{shape.Name.LocalName}'.");
        }
    }

    private static void Write(XGraphics graphics, XElement text, bool bold)
    {
        var format = new XStringFormat
        {
            LineAlignment = XLineAlignment.BaseLine,
            Alignment = (string?)text.Attribute("text-anchor") switch { "middle" => XStringAlignment.Center, "end" => XStringAlignment.Far, _ => XStringAlignment.Near },
        };
        graphics.DrawString(text.Value, PaperFonts.Of(Number(text, "font-size"), bold), XBrushes.Black, Number(text, "x"), Number(text, "y"), format);
    }

    private static XPen Pen(double width) => new(XColors.Black, width) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };

    private static XPen Dashed() => new(XColors.Black, 1.4) { DashStyle = XDashStyle.Custom, DashPattern = [5 / 1.4, 4 / 1.4] };

    private static double Number(XElement shape, string name) => double.Parse(shape.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
