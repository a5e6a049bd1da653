using WireCoach.Rules.Connections;

namespace WireCoach.WebUi.Diagrams;

/// <summary>Elements in series between two nodes where more than two things meet, drawn one below the other.</summary>
/// <param name="Top">The upper node.</param>
/// <param name="Bottom">The lower node.</param>
/// <param name="Links">The elements from top to bottom.</param>
internal sealed record Strand(string Top, string Bottom, IReadOnlyList<StrandLink> Links)
{
    /// <summary>The tag of the lead by which it leaves its upper node, if one comes out there.</summary>
    public string? TopLead => Links[0].Upper.Lead;

    /// <summary>The tag of the lead by which it leaves its lower node.</summary>
    public string? BottomLead => Links[^1].Lower.Lead;

    public Strand Turned() => new(Bottom, Top, [.. Links.Reverse().Select(link => link with { Upward = !link.Upward })]);

    /// <summary>The strands of a circuit: nodes inside the motor where only two things meet are passed through.</summary>
    public static IReadOnlyList<Strand> Of(PlanCircuit circuit)
    {
        var inner = circuit.Nodes.Where(node => node.Kind == "inside" && Degree(circuit, node.Id) == 2).Select(node => node.Id).ToHashSet(StringComparer.Ordinal);
        var left = circuit.Elements.ToList();
        var strands = new List<Strand>();
        while (left.Count > 0)
        {
            var links = new List<StrandLink> { new(left[0], false) };
            left.RemoveAt(0);
            while (inner.Contains(links[^1].Lower.Node) && Take(left, links[^1].Lower.Node) is { } next)
            {
                links.Add(next);
            }

            while (inner.Contains(links[0].Upper.Node) && Take(left, links[0].Upper.Node) is { } before)
            {
                links.Insert(0, before with { Upward = !before.Upward });
            }

            strands.Add(new Strand(links[0].Upper.Node, links[^1].Lower.Node, links));
        }

        return strands;
    }

    private static int Degree(PlanCircuit circuit, string node) =>
        circuit.Elements.Count(element => element.From.Node == node) + circuit.Elements.Count(element => element.To.Node == node);

    /// <summary>Takes the element that goes on from a node, turned so that it begins there.</summary>
    private static StrandLink? Take(List<PlanElement> left, string node)
    {
        var at = left.FindIndex(element => element.From.Node == node || element.To.Node == node);
        if (at < 0)
        {
            return null;
        }

        var element = left[at];
        left.RemoveAt(at);
        return new StrandLink(element, element.From.Node != node);
    }
}

/// <summary>An element within a strand.</summary>
/// <param name="Element">The element.</param>
/// <param name="Upward">Its start is the lower end.</param>
internal sealed record StrandLink(PlanElement Element, bool Upward)
{
    public PlanEnd Upper => Upward ? Element.To : Element.From;

    public PlanEnd Lower => Upward ? Element.From : Element.To;
}
