using System.Xml.Linq;
using WireCoach.Rules.Reference;
using WireCoach.WebUi.Diagrams;

namespace WireCoach.WebUi.Tests.Diagrams;

public sealed class PlanDrawingTest
{
    private static readonly string[] Colours = ["blue", "fat yellow", "white/black", "red", "orange with stripe", "black", "brown", "grey", "violet", "pink", "green", "white"];

    public static TheoryData<string> Pictures() => [.. Golden.Keys];

    private static readonly Dictionary<string, Func<Rules.Connections.Plan>> Golden = new(StringComparer.Ordinal)
    {
        ["six-leads-high"] = () => Plans.Of("capacitor-start-dual-6", "115/230", 240, tag: (_, at) => "142653".Substring(at, 1)),
        ["six-leads-low"] = () => Plans.Of("capacitor-start-dual-6", "115/230", 120, tag: (_, at) => Colours[at]),
        ["four-leads"] = () => Plans.Of("capacitor-start-4", "115", 115),
        ["eight-leads-high"] = () => Plans.Of("capacitor-start-dual-8", "115/230", 230),
        ["nine-leads-star-high"] = () => Plans.Of("three-phase-9-star", "230/460", 480),
        ["nine-leads-star-low"] = () => Plans.Of("three-phase-9-star", "230/460", 240, tag: (_, at) => $"{at + 1}"),
        ["six-leads-star"] = () => Plans.Of("three-phase-6", "230/400", 400),
        ["six-leads-delta"] = () => Plans.Of("three-phase-6", "230/400", 230),
        ["twelve-leads-low-delta"] = () => Plans.Of("three-phase-12", "230/460", 240),
        ["nine-leads-delta-low"] = () => Plans.Of("three-phase-9-delta", "230/460", 230),
        ["two-speeds-slow"] = () => Plans.Of("two-speed-6", "460", 460, "slow"),
        ["two-speeds-fast"] = () => Plans.Of("two-speed-6", "460", 460, "fast"),
        ["fan-medium-speed"] = () => Plans.Of("psc-tapped", "230", 230, "medium-speed"),
        ["compound"] = () => Plans.Of("dc-compound", "240", 240),
    };

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_is_the_one_that_was_looked_at(string name) => Kept.Compare(name + ".svg", PlanDrawing.Svg(Golden[name](), Plans.Pages));

    [Fact]
    public void No_text_lies_on_another_text_or_on_a_wire()
    {
        foreach (var (name, plan) in Plans.All().Concat(Plans.All((_, at) => Colours[at])).Concat(Plans.All((_, at) => $"{at + 1}")))
        {
            var picture = PlanDrawing.Picture(plan, Plans.Words);
            var height = PlanDrawing.Below(plan, picture, Plans.Words);
            Boxes.NothingOverlaps(name, picture.Canvas, picture.Width, height);
        }
    }

    [Fact]
    public void Every_picture_shows_every_tag_and_has_a_title_and_a_description()
    {
        foreach (var (name, plan) in Plans.All())
        {
            var svg = XElement.Parse(PlanDrawing.Svg(plan, Plans.Pages));
            XNamespace ns = "http://www.w3.org/2000/svg";
            var shown = svg.Elements(ns + "text").Select(text => text.Value).ToList();
            Assert.All(plan.Layout.Leads, lead => Assert.Contains(shown, text => lead.Marking.StartsWith(text, StringComparison.Ordinal)));
            Assert.Contains(plan.Layout.Name, svg.Element(ns + "title")!.Value, StringComparison.Ordinal);
            Assert.All(plan.Joints, joint => Assert.Contains(joint.Name, svg.Element(ns + "desc")!.Value, StringComparison.Ordinal));
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.True(name.Length > 0);
        }
    }

    [Fact]
    public void A_tag_with_markup_in_it_stays_a_tag()
    {
        var svg = PlanDrawing.Svg(Plans.Of("capacitor-start-4", "115", 115, tag: (lead, _) => $"<b>{lead.Marking}&"), Plans.Pages);
        _ = XElement.Parse(svg);
        Assert.DoesNotContain("<b>", svg, StringComparison.Ordinal);
    }
}
