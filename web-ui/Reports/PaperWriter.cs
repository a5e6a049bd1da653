using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace WireCoach.WebUi.Reports;

/// <summary>Fills sheets from top to bottom; what does not fit goes to the next one, a row or a line never splits.</summary>
internal sealed class PaperWriter : IDisposable
{
    private const double Left = 42;
    private const double Right = 34;
    private const double Top = 34;
    private const double Bottom = 46;
    private const double Size = 8.6;
    private const double Leading = 1.28;
    private const double Box = 8;

    private readonly PdfDocument _document = new();
    private readonly PdfSharp.PageSize _paper;
    private readonly Dictionary<(double, bool), XFont> _fonts = [];
    private XGraphics _graphics = default!;
    private PdfPage _page = default!;
    private double _y;

    public PaperWriter(PdfSharp.PageSize paper, string title)
    {
        _paper = paper;
        _document.Info.Title = title;
        _document.Info.Creator = "WireCoach";
        Turn();
    }

    private double Width => _page.Width.Point - Left - Right;

    private double End => _page.Height.Point - Bottom;

    public void Title(string text) => Lines(text, 15, true, 0, 4);

    /// <summary>A heading that stays with what follows it.</summary>
    public void Heading(string text, double keepWith = 40)
    {
        Need(keepWith);
        _y += 5;
        Lines(text, 10.5, true, 0, 2);
        _graphics.DrawLine(new XPen(XColors.Black, 0.8), Left, _y - 1.5, Left + Width, _y - 1.5);
        _y += 2;
    }

    public void Text(string text, bool bold = false) => Lines(text, Size, bold, 0, 2.5);

    /// <summary>What belongs to the row above it.</summary>
    public void Note(string text)
    {
        _y -= 1;
        Lines(text, Size - 0.8, false, 0.06 * Width, 2.5);
    }

    /// <summary>A line with a mark before it, for example a number or a dot.</summary>
    public void Item(string mark, string text, bool ticked = false)
    {
        var indent = ticked ? 31 : 14;
        Need(Wrapped(text, Size, false, Width - indent).Count * Size * Leading);
        if (ticked)
        {
            Tick(Left, _y + 1);
        }

        Draw(mark, Left + (ticked ? 13 : 0), _y, Size, true);
        Lines(text, Size, false, indent, 2.5);
    }

    /// <summary>A row of a table; a cell that is <see langword="null"/> is a box to tick, an empty last one a line to write on.</summary>
    public void Row(IReadOnlyList<string?> cells, IReadOnlyList<double> shares, bool heading = false, bool write = false)
    {
        var widths = shares.Select(share => share * Width).ToList();
        var wrapped = cells.Select((cell, at) => cell is null ? [] : Wrapped(cell, Size, heading || at == 1, widths[at] - 6)).ToList();
        var height = (Math.Max(1, wrapped.Max(lines => lines.Count)) * Size * Leading) + 3;
        Need(height);
        var x = Left;
        for (var at = 0; at < cells.Count; at++)
        {
            if (cells[at] is null)
            {
                Tick(x, _y + 1);
            }

            for (var line = 0; line < wrapped[at].Count; line++)
            {
                Draw(wrapped[at][line], x, _y + (line * Size * Leading), Size, heading || at == 1);
            }

            if (write && at == cells.Count - 1 && cells[at] is { Length: 0 })
            {
                _graphics.DrawLine(new XPen(XColors.Black, 0.8), x, _y + (Size * Leading), x + widths[at] - 6, _y + (Size * Leading));
            }

            x += widths[at];
        }

        _y += height;
        _graphics.DrawLine(new XPen(XColors.Gray, 0.4), Left, _y - 1, Left + Width, _y - 1);
    }

    /// <summary>A picture, as large as the sheet and the height allow.</summary>
    public void Picture(PaperPicture picture, double most)
    {
        var scale = Math.Min(1, Math.Min(Width / picture.Width, most / picture.Height));
        Need(picture.Height * scale);
        picture.Draw(_graphics, Left, _y, scale);
        _y += (picture.Height * scale) + 4;
    }

    /// <summary>The finished document, with a foot on each sheet.</summary>
    public byte[] Finish(string foot, Func<int, int, string> page)
    {
        _graphics.Dispose();
        for (var at = 0; at < _document.PageCount; at++)
        {
            _page = _document.Pages[at];
            using var graphics = XGraphics.FromPdfPage(_page, XGraphicsPdfPageOptions.Append);
            _graphics = graphics;
            _y = End + 6;
            graphics.DrawLine(new XPen(XColors.Black, 0.8), Left, _y - 3, Left + Width, _y - 3);
            var number = page(at + 1, _document.PageCount);
            var room = Measure(number, 7.5, true);
            Draw(number, Left + Width - room, _y, 7.5, true);
            foreach (var line in Wrapped(foot, 6.6, false, Width - room - 20))
            {
                Draw(line, Left, _y, 6.6, false);
                _y += 6.6 * Leading;
            }
        }

        using var stream = new MemoryStream();
        _document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    public void Dispose()
    {
        _graphics.Dispose();
        _document.Dispose();
    }

    private void Turn()
    {
        _graphics?.Dispose();
        _page = _document.AddPage();
        _page.Size = _paper;
        _graphics = XGraphics.FromPdfPage(_page);
        _y = Top;
    }

    private void Need(double height)
    {
        if (_y + height > End && _y > Top)
        {
            Turn();
        }
    }

    private void Lines(string text, double size, bool bold, double indent, double after)
    {
        foreach (var line in Wrapped(text, size, bold, Width - indent))
        {
            Need(size * Leading);
            Draw(line, Left + indent, _y, size, bold);
            _y += size * Leading;
        }

        _y += after;
    }

    private void Tick(double x, double y) => _graphics.DrawRectangle(new XPen(XColors.Black, 1), x + 0.5, y, Box, Box);

    private void Draw(string text, double x, double y, double size, bool bold) =>
        _graphics.DrawString(text, Font(size, bold), XBrushes.Black, x, y + (size * 0.95));

    private double Measure(string text, double size, bool bold) => _graphics.MeasureString(text, Font(size, bold)).Width;

    private List<string> Wrapped(string text, double size, bool bold, double width)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, size, bold, width)))
        {
            if (lines.Count > 0 && Measure($"{lines[^1]} {word}", size, bold) <= width)
            {
                lines[^1] += $" {word}";
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines;
    }

    /// <summary>A word that is wider than the column is broken.</summary>
    private IEnumerable<string> Pieces(string word, double size, bool bold, double width)
    {
        while (word.Length > 1 && Measure(word, size, bold) > width)
        {
            var rest = word;
            var fits = Enumerable.Range(1, rest.Length - 1).Last(length => length == 1 || Measure(rest[..length], size, bold) <= width);
            yield return word[..fits];
            word = word[fits..];
        }

        yield return word;
    }

    private XFont Font(double size, bool bold)
    {
        if (!_fonts.TryGetValue((size, bold), out var font))
        {
            _fonts[(size, bold)] = font = PaperFonts.Of(size, bold);
        }

        return font;
    }
}
