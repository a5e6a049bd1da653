using WireCoach.Rules.Connections;

namespace WireCoach.WebUi.Diagrams;

/// <summary>Draws a circuit as a ladder: rails are joints, columns are windings with what lies in series with them.</summary>
internal sealed class CircuitPicture
{
    private const double Left = 64;

    private const double Right = 8;

    private const double PaperWidth = 360;

    private const double Clear = 7;

    private const double LeastGap = 36;

    private readonly PlanCircuit _circuit;
    private readonly Ladder _ladder;
    private readonly IReadOnlyDictionary<string, IReadOnlyList<Label>> _labels;
    private readonly Canvas _canvas = new();
    private readonly double _columnWidth;
    private readonly double _bulge;
    private readonly int[] _homes;
    private readonly double[] _rowY;

    /// <param name="circuit">What to draw.</param>
    /// <param name="labels">Words beside an element, by its id; left out where columns are too narrow.</param>
    public CircuitPicture(PlanCircuit circuit, IReadOnlyDictionary<string, IReadOnlyList<Label>> labels)
    {
        (_circuit, _labels, _ladder) = (circuit, labels, new Ladder(circuit));
        _columnWidth = Math.Clamp((PaperWidth - Left - Right) / Math.Max(1, _ladder.ColumnCount), 48, 100);
        Width = Math.Max(PaperWidth, Left + Right + (_columnWidth * _ladder.ColumnCount));
        _bulge = circuit.Elements.Max(element => Symbols.Bulge(element));
        (_homes, _rowY) = Heights();
        foreach (var node in _ladder.Rows.Keys)
        {
            Rail(node);
        }

        for (var strand = 0; strand < _ladder.Strands.Count; strand++)
        {
            Column(strand);
        }

        foreach (var node in _ladder.Rows.Keys)
        {
            Dots(node);
        }
    }

    public double Width { get; }

    public double Bottom => _rowY[^1] + 16;

    public Canvas Canvas => _canvas;

    /// <summary>Whether there was room for words beside the symbols.</summary>
    public bool Labelled => LabelWidth >= 32;

    private double LabelWidth => _columnWidth - 16 - _bulge;

    /// <summary>A chip beside a coil's dot needs less room than beside the plates of a capacitor.</summary>
    private double ChipWidth => _columnWidth - (_bulge > 9 ? 16 + _bulge : 17);

    private double X(int column) => Left + 14 + (column * _columnWidth);

    private bool IsCapped(string node) => _circuit.Nodes.First(one => one.Id == node).Kind == "capped";

    private IReadOnlyList<string>? Chip(string? tag) => tag is null ? null : Lettering.Lines(tag, ChipWidth, Lettering.Chip, bold: true);

    private static double ChipHeight(IReadOnlyList<string>? lines) => lines is null ? 0 : (lines.Count * Lettering.ChipLine) + 3 + (2 * Clear);

    private static double SymbolHeight(Strand strand) => strand.Links.Sum(link => Symbols.Height(link.Element));

    /// <summary>The gap in which each strand has its symbols, and where the rows come to lie.</summary>
    private (int[] Homes, double[] RowY) Heights()
    {
        var gaps = new double[Math.Max(0, _ladder.RowCount - 1)];
        Array.Fill(gaps, LeastGap);
        foreach (var strand in _ladder.Strands)
        {
            var (top, bottom) = (_ladder.Rows[strand.Top], _ladder.Rows[strand.Bottom] - 1);
            gaps[top] = Math.Max(gaps[top], ChipHeight(Chip(strand.TopLead)) + Clear);
            gaps[bottom] = Math.Max(gaps[bottom], ChipHeight(Chip(strand.BottomLead)) + Clear);
        }

        var homes = new int[_ladder.Strands.Count];
        foreach (var at in Enumerable.Range(0, homes.Length).OrderByDescending(at => SymbolHeight(_ladder.Strands[at])).ThenBy(at => at))
        {
            var strand = _ladder.Strands[at];
            homes[at] = Enumerable.Range(_ladder.Rows[strand.Top], Math.Max(1, _ladder.Rows[strand.Bottom] - _ladder.Rows[strand.Top]))
                .MinBy(gap => Math.Max(gaps[gap], Needs(strand, gap)) - gaps[gap]);
            gaps[homes[at]] = Math.Max(gaps[homes[at]], Needs(strand, homes[at]));
        }

        var rowY = new double[_ladder.RowCount];
        rowY[0] = 26;
        for (var row = 1; row < rowY.Length; row++)
        {
            rowY[row] = rowY[row - 1] + gaps[row - 1];
        }

        return (homes, rowY);
    }

    private double Needs(Strand strand, int gap) => SymbolHeight(strand)
        + (gap == _ladder.Rows[strand.Top] ? Math.Max(Clear, ChipHeight(Chip(strand.TopLead))) : Clear + 2)
        + (gap == _ladder.Rows[strand.Bottom] - 1 ? Math.Max(Clear, ChipHeight(Chip(strand.BottomLead))) : Clear + 2);

    private void Rail(string node)
    {
        if (IsCapped(node))
        {
            return;
        }

        var (first, last) = _ladder.Reach(node);
        var y = _rowY[_ladder.Rows[node]];
        var what = _circuit.Nodes.First(one => one.Id == node);
        if (what.Conductor is { } conductor)
        {
            _canvas.Wire(40, y, X(last), y);
            _canvas.Ring(36, y, 4.5);
            _canvas.Text(6, y - 8, conductor == "-" ? "−" : conductor, 15, bold: true);
            _canvas.Text(43, y - 15, what.Id, 11);
        }
        else
        {
            if (first != last)
            {
                _canvas.Wire(X(first), y, X(last), y);
            }

            if (what.Kind == "joint")
            {
                _canvas.Text(X(first) - 7 - Lettering.Width(what.Id, 11, false), y - 6, what.Id, 11, anchor: "end");
            }
        }
    }

    private void Column(int at)
    {
        var strand = _ladder.Strands[at];
        var x = X(_ladder.Columns[at]);
        var (top, bottom) = (_rowY[_ladder.Rows[strand.Top]], _rowY[_ladder.Rows[strand.Bottom]]);
        var (upper, lower) = (Chip(strand.TopLead), Chip(strand.BottomLead));
        var home = _homes[at];
        var from = _rowY[home] + (home == _ladder.Rows[strand.Top] ? ChipHeight(upper) : 0);
        var to = _rowY[Math.Min(home + 1, _rowY.Length - 1)] - (home == _ladder.Rows[strand.Bottom] - 1 ? ChipHeight(lower) : 0);
        var y = (from + to - SymbolHeight(strand)) / 2;
        Down(at, x, top, y);
        foreach (var link in strand.Links)
        {
            Symbols.Draw(_canvas, link, x, y);
            Name(link.Element, x, y);
            y += Symbols.Height(link.Element);
        }

        Down(at, x, y, bottom);
        Ends(strand, x, top, bottom, upper, lower);
    }

    private void Name(PlanElement element, double x, double y)
    {
        if (!Labelled || !_labels.TryGetValue(element.Id, out var labels))
        {
            return;
        }

        var lines = labels.SelectMany(label => Lettering.Lines(label.Within(LabelWidth), LabelWidth, Lettering.Label, bold: false)).ToList();
        var top = y + ((Symbols.Height(element) - (lines.Count * Lettering.LabelLine)) / 2);
        var left = x + (element.ChangesWithShaft ? 18 : 14);
        for (var line = 0; line < lines.Count; line++)
        {
            _canvas.Text(left, top + 1 + (line * Lettering.LabelLine), lines[line], Lettering.Label);
        }
    }

    private void Ends(Strand strand, double x, double top, double bottom, IReadOnlyList<string>? upper, IReadOnlyList<string>? lower)
    {
        if (upper is not null)
        {
            _canvas.Chip(x + 7, top + Clear, upper);
        }

        if (lower is not null)
        {
            _canvas.Chip(x + 7, bottom - Clear - Canvas.ChipBox(0, 0, lower).Height, lower);
        }

        if (IsCapped(strand.Top))
        {
            Symbols.Cap(_canvas, x, top, below: false);
        }

        if (IsCapped(strand.Bottom))
        {
            Symbols.Cap(_canvas, x, bottom, below: true);
        }
    }

    /// <summary>A wire downwards, with a hop over each rail that it does not touch.</summary>
    private void Down(int strand, double x, double from, double to)
    {
        var y = from;
        foreach (var rail in _ladder.Rows.Where(row => _ladder.Crosses(strand, row.Key)).Select(row => _rowY[row.Value]).Where(rail => rail > from && rail < to).Order())
        {
            _canvas.Wire(x, y, x, rail - 5);
            _canvas.Symbol($"M{Canvas.N(x)} {Canvas.N(rail - 5)}a5 5 0 0 1 0 10", new Box(x, rail - 5, 5, 10));
            y = rail + 5;
        }

        if (to > y)
        {
            _canvas.Wire(x, y, x, to);
        }
    }

    private void Dots(string node)
    {
        if (IsCapped(node))
        {
            return;
        }

        foreach (var at in Enumerable.Range(0, _ladder.Strands.Count).Where(at => _ladder.Strands[at].Top == node || _ladder.Strands[at].Bottom == node))
        {
            _canvas.Dot(X(_ladder.Columns[at]), _rowY[_ladder.Rows[node]]);
        }
    }
}
