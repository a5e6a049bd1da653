using WireCoach.Rules.Connections;

namespace WireCoach.WebUi.Diagrams;

/// <summary>The picture of a connection plan.</summary>
public static class PlanDrawing
{
    /// <summary>The plan as a picture of its own, with title and description for who cannot see it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="id">Makes ids unique where several pictures stand on a page.</param>
    public static string Svg(Plan plan, string id = "plan")
    {
        var picture = Picture(plan);
        return picture.Canvas.Svg(picture.Width, Below(plan, picture), id, Title(plan), Description(plan));
    }

    internal static CircuitPicture Picture(Plan plan) => new(plan.Circuit, Labels(plan));

    /// <summary>What stands under the ladder: the earth, and the volts where columns had no room for them.</summary>
    internal static double Below(Plan plan, CircuitPicture picture)
    {
        var y = picture.Bottom + 4;
        Symbols.Earth(picture.Canvas, 36, y);
        picture.Canvas.Text(56, y + 8, "frame, to protective earth", Lettering.Label);
        y += 30;
        if (!picture.Labelled && plan.Windings.Select(winding => winding.Volts.Text).Distinct(StringComparer.Ordinal).ToList() is [var each])
        {
            picture.Canvas.Text(8, y, $"each winding gets {each}", Lettering.Label);
            y += 16;
        }

        if (plan.Capped.Count > 0)
        {
            foreach (var line in Lettering.Lines($"capped one by one: {string.Join(", ", plan.Capped)}", 344, Lettering.Label, bold: false))
            {
                picture.Canvas.Text(8, y, line, Lettering.Label);
                y += Lettering.LabelLine;
            }

            y += 3;
        }

        return y + 4;
    }

    internal static string Title(Plan plan) => $"Connection for {plan.SupplyVolts:0.##} V: {plan.Layout.Name}";

    /// <summary>The picture in words.</summary>
    internal static string Description(Plan plan) => string.Join(' ', (string[])
    [
        .. plan.Joints.Select(joint => joint.Conductor is { } line
            ? $"{joint.Name}, on {line}: {All(joint.Leads)}."
            : joint.Leads.Count == 1 ? $"{joint.Name}: {All(joint.Leads)}." : $"{joint.Name}: {All(joint.Leads)} joined with each other only."),
        .. plan.Capped.Count > 0 ? [$"Capped one by one: {All(plan.Capped)}."] : Array.Empty<string>(),
        .. plan.Windings.Select(winding => $"{Capital(Named(plan, winding))} from {winding.Leads[0]} to {winding.Leads[1]}: {winding.Volts.Text}."),
        .. plan.Circuit.Elements.Where(element => element.Kind is not ("coil" or "lead")).Select(element => $"{Capital(ElementWords.Part(element.Kind))}{Where(plan, element)}."),
        "Frame to protective earth.",
    ]);

    private static string Named(Plan plan, PlannedWinding winding) => winding.Coils.Count == 1
        ? ElementWords.Winding(winding.Role)
        : string.Join(" with ", winding.Coils.Select(id => ElementWords.Winding(plan.Layout.Coils.First(coil => coil.Id == id).Role)).Distinct(StringComparer.Ordinal)) + " in series";

    private static string Where(Plan plan, PlanElement element) => element.Outside
        ? $" between {plan.Outer!.Between[0]} and {plan.Outer.Between[1]}, outside the motor"
        : " inside the motor";

    private static string All(IReadOnlyList<string> tags) => tags.Count == 1 ? $"lead {tags[0]}" : $"leads {string.Join(", ", tags.Take(tags.Count - 1))} and {tags[^1]}";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static Dictionary<string, IReadOnlyList<string>> Labels(Plan plan)
    {
        var volts = plan.Windings.Where(winding => winding.Coils.Count == 1).ToDictionary(winding => winding.Coil, winding => winding.Volts.Text, StringComparer.Ordinal);
        return plan.Circuit.Elements.Where(element => element.Kind != "lead").ToDictionary(
            element => element.Id,
            element => (IReadOnlyList<string>)(element.Kind == "coil"
                ? [ElementWords.Role(element.Role), .. volts.TryGetValue(element.Id, out var own) ? [own] : Array.Empty<string>()]
                : [ElementWords.Part(element.Kind)]),
            StringComparer.Ordinal);
    }
}
