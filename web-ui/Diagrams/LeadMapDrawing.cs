using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Windings;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Diagrams;

/// <summary>What is known of the leads so far: windings that were found, leads without a place yet, pairs that read open.</summary>
public static class LeadMapDrawing
{
    /// <summary>Narrow, so that its words stay large on a phone.</summary>
    private const double Paper = 300;

    /// <summary>Room for a tag and its colour at either side.</summary>
    private const double Side = 72;

    private const double Margin = 8;

    private const double Gap = 12;

    /// <summary>The lead map as a picture of its own, with title and description.</summary>
    /// <param name="leads">The leads in the order in which they were named.</param>
    /// <param name="windings">The windings as far as they are settled.</param>
    /// <param name="readings">The readings that count.</param>
    /// <param name="pages">The words in and beside it.</param>
    /// <param name="id">Makes ids unique where several pictures stand on a page.</param>
    public static string Svg(IReadOnlyList<Fact.Lead> leads, IReadOnlyList<Winding> windings, IReadOnlyList<Fact.Reading> readings, PageWords pages, string id = "leads")
    {
        var canvas = new Canvas();
        var words = new PictureWords(pages);
        var height = Draw(canvas, leads, windings, readings, words);
        return canvas.Svg(Paper, height, id, words["picture.leads-title"], Description(leads, windings, readings, words));
    }

    internal static double Draw(Canvas canvas, IReadOnlyList<Fact.Lead> leads, IReadOnlyList<Winding> windings, IReadOnlyList<Fact.Reading> readings, PictureWords words)
    {
        var y = Margin;
        foreach (var winding in windings)
        {
            y = winding is { Leads.Count: 2, Junction: false } ? Coil(canvas, winding, leads, y, words) : Group(canvas, winding, leads, y, words);
        }

        var placed = windings.SelectMany(AllLeads).ToHashSet(StringComparer.Ordinal);
        var loose = leads.Where(lead => !placed.Contains(lead.Tag)).ToList();
        if (loose.Count > 0)
        {
            canvas.Text(Margin, y, words["picture.no-place"], Lettering.Label, bold: true);
            y = Chips(canvas, [.. loose.Select(lead => lead.Tag)], leads, Margin, y + 18) + Gap;
        }

        foreach (var (heading, pairs) in new[] { (words["picture.read-open"], Open(readings)), (words["picture.to-frame"], Frame(readings, words)) })
        {
            if (pairs.Count > 0)
            {
                canvas.Text(Margin, y, heading, Lettering.Label, bold: true);
                y = Lines(canvas, string.Join(", ", pairs), Margin, y + 16) + 6;
            }
        }

        return y + 2;
    }

    /// <summary>A winding between its two leads.</summary>
    private static double Coil(Canvas canvas, Winding winding, IReadOnlyList<Fact.Lead> leads, double y, PictureWords words)
    {
        var sides = winding.Leads.Select(tag => Lettering.Lines(tag, Side - 10, Lettering.Chip, bold: true)).ToList();
        var boxes = sides.Select(lines => Canvas.ChipBox(0, 0, lines)).ToList();
        var height = boxes.Max(box => box.Height);
        var middle = y + (height / 2);
        var (left, right) = (Margin + Side, Paper - Margin - Side);
        canvas.Chip(left - boxes[0].Width, middle - (boxes[0].Height / 2), sides[0]);
        canvas.Chip(right, middle - (boxes[1].Height / 2), sides[1]);
        canvas.Wire(left + 3, middle, (Paper / 2) - 22, middle);
        canvas.Symbol($"M{Canvas.N((Paper / 2) - 22)} {Canvas.N(middle)}{string.Concat(Enumerable.Repeat("a5.5 5.5 0 0 1 11 0", 4))}", new Box((Paper / 2) - 22, middle - 7, 44, 8));
        canvas.Wire((Paper / 2) + 22, middle, right - 3, middle);
        y += height + 4;
        return new[]
        {
            Beside(canvas, words.Winding(winding), 110, y, width => (Paper - width) / 2, "middle"),
            Beside(canvas, About(winding.Leads[0], leads), Side, y, width => left - width, "end"),
            Beside(canvas, About(winding.Leads[1], leads), Side, y, _ => right),
        }.Max() + Gap;
    }

    /// <summary>Words under a chip or a coil, each line placed by its own width.</summary>
    private static double Beside(Canvas canvas, string words, double room, double y, Func<double, double> place, string anchor = "start")
    {
        foreach (var line in words.Length == 0 ? [] : Lettering.Lines(words, room, Lettering.Label, bold: false))
        {
            canvas.Text(place(Lettering.Width(line, Lettering.Label, false)), y, line, Lettering.Label, anchor: anchor);
            y += Lettering.LabelLine;
        }

        return y;
    }

    /// <summary>Leads that meet inside the motor.</summary>
    private static double Group(Canvas canvas, Winding winding, IReadOnlyList<Fact.Lead> leads, double y, PictureWords words)
    {
        canvas.Text(Margin, y, words.Winding(winding), Lettering.Label, bold: true);
        return Chips(canvas, AllLeads(winding), leads, Margin, y + 18) + Gap;
    }

    private static double Chips(Canvas canvas, IReadOnlyList<string> tags, IReadOnlyList<Fact.Lead> leads, double left, double y)
    {
        var (x, bottom) = (left, y);
        foreach (var tag in tags)
        {
            var lines = Lettering.Lines(tag, 100, Lettering.Chip, bold: true);
            var box = Canvas.ChipBox(0, 0, lines);
            var words = About(tag, leads) is { Length: > 0 } about ? Lettering.Lines(about, Math.Max(60, box.Width), Lettering.Label, bold: false) : [];
            var width = Math.Max(box.Width, words.Select(word => Lettering.Width(word, Lettering.Label, false)).DefaultIfEmpty(0).Max());
            if (x > left && x + width > Paper - Margin)
            {
                (x, y) = (left, bottom + 6);
            }

            canvas.Chip(x, y, lines);
            for (var line = 0; line < words.Count; line++)
            {
                canvas.Text(x, y + box.Height + 3 + (line * Lettering.LabelLine), words[line], Lettering.Label);
            }

            bottom = Math.Max(bottom, y + box.Height + 3 + (words.Count * Lettering.LabelLine));
            x += width + 10;
        }

        return bottom;
    }

    private static double Lines(Canvas canvas, string text, double left, double y) => Beside(canvas, text, Paper - (2 * Margin), y, _ => left);

    /// <summary>Its colour in words and its printed marking, where they are more than the tag itself.</summary>
    private static string About(string tag, IReadOnlyList<Fact.Lead> leads)
    {
        var lead = leads.FirstOrDefault(one => one.Tag == tag);
        return string.Join(", ", new[] { lead?.Colour, lead?.Marking }.OfType<string>().Where(word => !string.Equals(word, tag, StringComparison.OrdinalIgnoreCase)));
    }

    private static IReadOnlyList<string> AllLeads(Winding winding) =>
        winding.Taps is { Count: > 0 } taps ? [winding.Leads[0], .. taps.Except(winding.Leads, StringComparer.Ordinal), .. winding.Leads.Skip(1)] : winding.Leads;

    private static List<string> Open(IReadOnlyList<Fact.Reading> readings) =>
        [.. readings.Where(reading => reading.Open && reading.To != Fact.Reading.Frame && reading.From != Fact.Reading.Frame).Select(reading => $"{reading.From}–{reading.To}").Distinct(StringComparer.Ordinal)];

    private static List<string> Frame(IReadOnlyList<Fact.Reading> readings, PictureWords words) =>
        [.. readings.Where(reading => reading.To == Fact.Reading.Frame || reading.From == Fact.Reading.Frame).Select(reading =>
            $"{string.Join('+', reading.Together.Prepend(reading.To == Fact.Reading.Frame ? reading.From : reading.To).Distinct(StringComparer.Ordinal))} {(reading.Open ? words["picture.open"] : reading.Ohms is { } ohms ? Units.Text(ohms, "ohm") : words["picture.short"])}").Distinct(StringComparer.Ordinal)];

    private static string Description(IReadOnlyList<Fact.Lead> leads, IReadOnlyList<Winding> windings, IReadOnlyList<Fact.Reading> readings, PictureWords words)
    {
        var placed = windings.SelectMany(AllLeads).ToHashSet(StringComparer.Ordinal);
        var loose = leads.Select(lead => lead.Tag).Where(tag => !placed.Contains(tag)).ToList();
        return string.Join(' ', (string[])
        [
            .. windings.Select(winding => words.Fill("picture.told-winding", ("winding", PictureWords.Begun(words.Winding(winding))), ("leads", words.All(AllLeads(winding))))),
            .. Told("picture.told-no-place", "leads", loose, words),
            .. Told("picture.told-open", "pairs", Open(readings), words),
            .. Told("picture.told-frame", "readings", Frame(readings, words), words),
            .. leads.Where(lead => lead.Colour is not null).Select(lead => words.Fill("picture.told-colour", ("lead", lead.Tag), ("colour", lead.Colour!))),
            .. leads.Where(lead => lead.Marking is { } marking && marking != lead.Tag).Select(lead => words.Fill("picture.told-marking", ("lead", lead.Tag), ("marking", lead.Marking!))),
        ]);
    }

    private static string[] Told(string id, string gap, List<string> all, PictureWords words) => all.Count == 0 ? [] : [words.Fill(id, (gap, string.Join(", ", all)))];
}
