using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Diagrams;

/// <summary>The picture of a connection plan.</summary>
public static class PlanDrawing
{
    /// <summary>The plan as a picture of its own, with title and description for who cannot see it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="pages">The words in and beside it.</param>
    /// <param name="id">Makes ids unique where several pictures stand on a page.</param>
    public static string Svg(Plan plan, PageWords pages, string id = "plan")
    {
        var words = new PictureWords(pages);
        var picture = Picture(plan, words);
        return picture.Canvas.Svg(picture.Width, Below(plan, picture, words), id, Title(plan, words), Description(plan, words));
    }

    internal static CircuitPicture Picture(Plan plan, PictureWords words) => new(plan.Circuit, Labels(plan, words));

    /// <summary>What stands under the ladder: the earth, and the volts where columns had no room for them.</summary>
    internal static double Below(Plan plan, CircuitPicture picture, PictureWords words)
    {
        var y = picture.Bottom + 4;
        Symbols.Earth(picture.Canvas, 36, y);
        picture.Canvas.Text(56, y + 8, words["picture.plan-earth"], Lettering.Label);
        y += 30;
        if (!picture.Labelled && plan.Windings.Select(winding => winding.Volts.Text).Distinct(StringComparer.Ordinal).ToList() is [var each])
        {
            picture.Canvas.Text(8, y, words.Fill("picture.plan-each", ("volts", each)), Lettering.Label);
            y += 16;
        }

        if (plan.Capped.Count > 0)
        {
            foreach (var line in Lettering.Lines(words.Fill("picture.plan-capped", ("leads", string.Join(", ", plan.Capped))), 344, Lettering.Label, bold: false))
            {
                picture.Canvas.Text(8, y, line, Lettering.Label);
                y += Lettering.LabelLine;
            }

            y += 3;
        }

        return y + 4;
    }

    private static string Title(Plan plan, PictureWords words) =>
        words.Fill("picture.plan-title", ("volts", Units.Text(plan.SupplyVolts, "volt")), ("layout", plan.Layout.Name));

    /// <summary>The picture in words.</summary>
    private static string Description(Plan plan, PictureWords words) => string.Join(' ', (string[])
    [
        .. plan.Joints.Select(joint => Told(joint, words)),
        .. plan.Capped.Count > 0 ? [words.Fill("picture.told-capped", ("leads", words.Leads(plan.Capped)))] : Array.Empty<string>(),
        .. plan.Windings.Select(winding => words.Fill(
            "picture.told-volts", ("winding", PictureWords.Begun(Named(plan, winding, words))), ("first", winding.Leads[0]), ("last", winding.Leads[1]), ("volts", winding.Volts.Text))),
        .. plan.Circuit.Elements.Where(element => element.Kind is not ("coil" or "lead")).Select(element => Told(plan, element, words)),
        words["picture.told-earth"],
    ]);

    private static string Told(PlanJoint joint, PictureWords words) => joint.Conductor is { } conductor
        ? words.Fill("picture.told-joint-to", ("joint", joint.Name), ("conductor", conductor), ("leads", words.Leads(joint.Leads)))
        : words.Fill(joint.Leads.Count == 1 ? "picture.told-joint-one" : "picture.told-joint-alone", ("joint", joint.Name), ("leads", words.Leads(joint.Leads)));

    private static string Told(Plan plan, PlanElement element, PictureWords words)
    {
        var part = PictureWords.Begun(words.Part(element.Kind).Words);
        return element.Outside
            ? words.Fill("picture.told-outside", ("part", part), ("first", plan.Outer!.Between[0]), ("last", plan.Outer.Between[1]))
            : words.Fill("picture.told-inside", ("part", part));
    }

    private static string Named(Plan plan, PlannedWinding winding, PictureWords words) => winding.Coils.Count == 1
        ? words.Winding(winding.Role)
        : words.Fill("picture.told-series", ("windings", winding.Coils.Select(id => words.Winding(plan.Layout.Coils.First(coil => coil.Id == id).Role)).Distinct(StringComparer.Ordinal)
            .Aggregate((first, last) => words.Fill("picture.told-with", ("first", first), ("last", last)))));

    private static Dictionary<string, IReadOnlyList<Label>> Labels(Plan plan, PictureWords words)
    {
        var volts = plan.Windings.Where(winding => winding.Coils.Count == 1).ToDictionary(winding => winding.Coil, winding => winding.Volts.Text, StringComparer.Ordinal);
        return plan.Circuit.Elements.Where(element => element.Kind != "lead").ToDictionary(
            element => element.Id,
            element => (IReadOnlyList<Label>)(element.Kind == "coil"
                ? [words.Coil(element.Role), .. volts.TryGetValue(element.Id, out var own) ? [new Label(own)] : Array.Empty<Label>()]
                : [words.Part(element.Kind)]),
            StringComparer.Ordinal);
    }
}
