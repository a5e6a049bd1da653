using System.Xml.Linq;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using WireCoach.WebUi.Diagrams;

namespace WireCoach.WebUi.Tests.Diagrams;

public sealed class LeadMapDrawingTest
{
    private static readonly Fact.Lead[] Six =
    [
        new() { Tag = "1", Colour = "blue" }, new() { Tag = "2", Colour = "white" }, new() { Tag = "3", Colour = "orange with a black stripe" },
        new() { Tag = "4", Marking = "T4" }, new() { Tag = "5" }, new() { Tag = "fat yellow", Colour = "yellow" },
    ];

    private static readonly Fact.Reading[] Readings =
    [
        new() { From = "1", To = "2", Open = true }, new() { From = "1", To = "3", Open = true }, new() { From = "1", To = Fact.Reading.Frame, Together = ["2", "3"], Open = true },
    ];

    private static readonly Winding[] Found =
        [new() { Role = "run", Leads = ["1", "4"], Ohms = 1.5 }, new() { Role = "start", Leads = ["3", "fat yellow"], Ohms = 3.42 }];

    [Fact]
    public void A_half_known_map_is_the_one_that_was_looked_at() => Kept.Compare("lead-map-half-known.svg", LeadMapDrawing.Svg(Six, Found, Readings, Plans.Pages));

    [Fact]
    public void A_junction_is_the_one_that_was_looked_at() => Kept.Compare("lead-map-junction.svg", LeadMapDrawing.Svg(
        [.. Enumerable.Range(1, 9).Select(tag => new Fact.Lead { Tag = $"{tag}" })],
        [new() { Role = "phase", Leads = ["1", "4"], Ohms = 2.1 }, new() { Role = "phase", Leads = ["7", "8", "9"], Ohms = 4.2, Junction = true }], [], Plans.Pages));

    [Fact]
    public void Nothing_overlaps_whatever_the_tags()
    {
        var chance = new Random(4711);
        for (var round = 0; round < 500; round++)
        {
            var leads = Enumerable.Range(0, chance.Next(2, 13)).Select(at => new Fact.Lead
            {
                Tag = $"{at}{new string(chance.GetItems("abcdefgwm WM-/1234".AsSpan(), chance.Next(0, 25))).Trim()}",
                Colour = round % 2 == 0 ? "white with a violet stripe" : null,
            }).ToList();
            var windings = Enumerable.Range(0, Math.Min(chance.Next(5), leads.Count / 2)).Select(at => new Winding { Role = at % 2 == 0 ? "shunt-field" : "speed-tap", Leads = [leads[2 * at].Tag, leads[(2 * at) + 1].Tag], Ohms = 12.34 }).ToList();
            var readings = leads.Skip(1).Select(lead => new Fact.Reading { From = leads[0].Tag, To = lead.Tag, Open = true }).ToList();
            var canvas = new Canvas();
            var height = LeadMapDrawing.Draw(canvas, leads, windings, readings, Plans.Words);
            Boxes.NothingOverlaps(string.Join(" | ", leads.Select(lead => lead.Tag)), canvas, 300, height);
        }
    }

    /// <summary>Every layout as its windings are found, with the person's own tags and colours.</summary>
    [Fact]
    public void Every_layout_is_drawn_whole_and_told_in_words()
    {
        var drawn = 0;
        foreach (var form in Plans.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()))
        {
            var leads = form.Leads.Select((lead, at) => new Fact.Lead { Tag = $"tag {at + 1}", Colour = at % 2 == 0 ? "yellow with a green stripe" : "red", Marking = lead.Marking }).ToList();
            string TagOf(string node) => leads[form.Leads.ToList().FindIndex(lead => form.NodeOf(lead.Marking) == node)].Tag;
            bool Out(string node) => form.Leads.Any(lead => form.NodeOf(lead.Marking) == node);
            var windings = form.Coils.Where(coil => Out(coil.From) && Out(coil.To)).Select(coil => new Winding { Role = coil.Role, Leads = [TagOf(coil.From), TagOf(coil.To)], Ohms = 12.3 }).ToList();
            var inside = form.Coils.Where(coil => Out(coil.From) != Out(coil.To)).GroupBy(coil => Out(coil.From) ? coil.To : coil.From)
                .Select(group => new Winding { Role = group.First().Role, Leads = [.. group.Select(coil => TagOf(Out(coil.From) ? coil.From : coil.To)).Distinct()], Junction = true, Ohms = 2.1 });
            windings.AddRange(inside.Where(group => group.Leads.Count > 1));
            var readings = leads.Skip(1).Select(lead => new Fact.Reading { From = leads[0].Tag, To = lead.Tag, Open = true }).ToList();
            var canvas = new Canvas();
            var height = LeadMapDrawing.Draw(canvas, leads, windings, readings, Plans.Words);
            Boxes.NothingOverlaps(form.Id, canvas, 300, height);
            var told = XElement.Parse(LeadMapDrawing.Svg(leads, windings, readings, Plans.Pages)).Element("{http://www.w3.org/2000/svg}desc")!.Value;
            Assert.All(leads, lead =>
            {
                Assert.Contains(canvas.Texts, text => text.Text == lead.Tag);
                Assert.Contains(lead.Tag, told, StringComparison.Ordinal);
                Assert.Contains($"{lead.Tag} is {lead.Colour}", told, StringComparison.Ordinal);
            });
            drawn++;
        }

        Assert.True(drawn > 25);
    }

    [Fact]
    public void The_description_says_it_in_words()
    {
        var words = XElement.Parse(LeadMapDrawing.Svg(Six, Found, Readings, Plans.Pages)).Element("{http://www.w3.org/2000/svg}desc")!.Value;
        Assert.Equal(
            "Run winding, 1.5\u00a0Ω: 1 and 4. Start winding, 3.42\u00a0Ω: 3 and fat yellow. No place yet: 2, 5. Read open: 1–2, 1–3. To the frame: 1+2+3 open. 1 is blue. 2 is white. 3 is orange with a black stripe. fat yellow is yellow. 4 is marked T4.", words);
    }
}
