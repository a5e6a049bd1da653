using System.Globalization;
using System.Text.RegularExpressions;
using PdfSharp.Drawing;

namespace WireCoach.WebUi.Reports;

/// <summary>Reads the path data that diagrams use: move, line, level, upright, arc of a circle, close.</summary>
internal static partial class PaperPath
{
    /// <summary>The strokes of the data, each from one move to the next: the writer would join them in one path.</summary>
    /// <exception cref="NotSupportedException">The data holds a command that diagrams do not use.</exception>
    public static IReadOnlyList<XGraphicsPath> Of(string data)
    {
        var strokes = new List<XGraphicsPath>();
        var path = new XGraphicsPath();
        var (at, begun) = (new XPoint(0, 0), new XPoint(0, 0));
        foreach (Match command in Commands().Matches(data))
        {
            var letter = command.ValueSpan[0];
            var numbers = Numbers().Matches(command.Value).Select(number => double.Parse(number.ValueSpan, CultureInfo.InvariantCulture)).ToArray();
            switch (letter)
            {
                case 'M':
                    path = new XGraphicsPath();
                    strokes.Add(path);
                    (at, begun) = (new(numbers[0], numbers[1]), new(numbers[0], numbers[1]));
                    break;
                case 'a':
                    at = Arc(path, at, numbers);
                    break;
                case 'z' or 'Z':
                    path.CloseFigure();
                    at = begun;
                    break;
                default:
                    var to = letter switch
                    {
                        'L' => new XPoint(numbers[0], numbers[1]),
                        'l' => new XPoint(at.X + numbers[0], at.Y + numbers[1]),
                        'h' => new XPoint(at.X + numbers[0], at.Y),
                        'H' => new XPoint(numbers[0], at.Y),
                        'v' => new XPoint(at.X, at.Y + numbers[0]),
                        'V' => new XPoint(at.X, numbers[0]),
                        _ => throw new NotSupportedException($"Paper does not know the path command '{letter}'."),
                    };
                    path.AddLine(at, to);
                    at = to;
                    break;
            }
        }

        return strokes;
    }

    /// <summary>An arc of a circle.</summary>
    private static XPoint Arc(XGraphicsPath path, XPoint from, double[] numbers)
    {
        if (numbers is not [var radius, var other, _, var large, var sweep, var right, var down] || radius != other)
        {
            throw new NotSupportedException("Paper draws arcs of a circle only.");
        }

        var to = new XPoint(from.X + right, from.Y + down);
        path.AddArc(from, to, new XSize(radius, radius), 0, large != 0, sweep == 0 ? XSweepDirection.Counterclockwise : XSweepDirection.Clockwise);
        return to;
    }

    [GeneratedRegex("[A-Za-z][^A-Za-z]*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Commands();

    [GeneratedRegex(@"-?\d+(?:\.\d+)?|-?\.\d+", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();
}
