using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>What a plan rests on without proof, and the capacitor that does not go with it.</summary>
internal static class PlanNotes
{
    public static IReadOnlyList<Statement> Of(Layout layout, LayoutConnection row, PlanRequest request) =>
        [.. Form(layout), .. Capacitor(layout, row, request), .. layout.Warnings.Select(id => Statement.Of(id))];

    /// <summary>Why the capacitor at hand must not be used in this plan, or <see langword="null"/>.</summary>
    public static Problem? Unfit(Plan plan, PlanRequest request, ConnectionFigures figures)
    {
        if (request.Capacitor is not { Present: true } capacitor || !plan.Layout.HasCapacitor)
        {
            return null;
        }

        if (capacitor.Use == "start" && plan.Layout.Capacitor == "run")
        {
            return new("not-ready", "capacitor.use", Statement.Of("connections.start-capacitor-for-run")) { Missing = ["capacitor"] };
        }

        if (plan.Windings.FirstOrDefault(winding => winding.Branch) is not { } branch)
        {
            return null;
        }

        var stays = capacitor.Use == "run" || plan.Layout.Capacitor == "run";
        var least = (stays ? figures.RunCapacitorVolts : figures.CapacitorVolts).Value * branch.Volts.Value!.Value * plan.PlateVolts / plan.SupplyVolts;
        return capacitor.Volts < least
            ? new("not-ready", "capacitor.volts", Statement.Of(stays ? "connections.run-capacitor-volts-too-low" : "connections.capacitor-volts-too-low", ("rating", Units.Text(capacitor.Volts.Value, "volt"))).With("volts", branch.Volts))
            {
                Missing = ["capacitor"],
            }
            : null;
    }

    private static Statement[] Capacitor(Layout layout, LayoutConnection row, PlanRequest request) => (request.Capacitor, layout.Capacitor) switch
    {
        ({ Present: true, Use: "run" }, "start") => [Statement.Of("connections.note-run-capacitor-for-start")],
        ({ Present: true }, "none") when row.OuterPart is null => [Statement.Of("connections.note-no-capacitor")],
        _ => [],
    };

    /// <summary>Another inside with the same leads but another table: nothing that was measured tells them apart.</summary>
    private static Statement[] Form(Layout layout)
    {
        var others = layout.Forms().Skip(1).Where(form => Leads(form).SetEquals(Leads(layout)) && !Table(form).SequenceEqual(Table(layout), StringComparer.Ordinal)).ToList();
        return others.Count == 0 ? [] : [Statement.Of("connections.note-form", ("name", layout.Name), ("others", string.Join("; ", others.Select(form => form.Name))))];
    }

    private static HashSet<string> Leads(Layout form) => form.Leads.Select(lead => lead.Marking).ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<string> Table(Layout form) => form.Connections.Select(row =>
        $"{row.For}: {string.Join(' ', row.Lines.Select(line => $"{line.Key}={string.Join('+', line.Value)}"))} {string.Join(' ', row.Joints.Select(joint => string.Join('+', joint)))}");
}
