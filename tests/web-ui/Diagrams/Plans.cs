using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;
using WireCoach.WebUi.Diagrams;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Tests.Diagrams;

/// <summary>Plans to draw.</summary>
internal static class Plans
{
    public static TradeKnowledge Knowledge { get; } = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    public static PageWords Pages { get; } = new(Knowledge.Sentences);

    public static PictureWords Words { get; } = new(Pages);

    public static Plan Of(Layout form, string plate, double volts, string? connection = null, Func<LayoutLead, int, string>? tag = null) => new Planner(Knowledge).Plan(new PlanRequest
    {
        Layout = form.Id,
        Form = form.Form,
        Leads = form.Leads.Select((lead, at) => (lead, at)).ToDictionary(one => one.lead.Marking, one => tag?.Invoke(one.lead, one.at) ?? one.lead.Marking, StringComparer.Ordinal),
        Plate = PlateFields.Empty.With("volts", PlateValue.Parse(plate)),
        Supply = new Fact.Supply { Volts = volts, Phases = form.Family == "three-phase" ? 3 : 1, Hertz = form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60 },
        Connection = connection,
    }).Value!;

    public static Plan Of(string layout, string plate, double volts, string? connection = null, Func<LayoutLead, int, string>? tag = null) =>
        Of(Knowledge.Layouts[layout], plate, volts, connection, tag);

    /// <summary>Every row of every form, each on its own volts.</summary>
    public static IEnumerable<(string Name, Plan Plan)> All(Func<LayoutLead, int, string>? tag = null) =>
        from form in Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms())
        where form.NotConnected is null
        let plate = string.Join('/', form.Connections.Select(row => Math.Round(230 * row.VoltsShare)).Distinct().Order())
        from row in form.Connections
        select ($"{form.Id}{(form.Form is null ? "" : "-" + form.Form)}-{row.Id}", Of(form, plate, Math.Round(230 * row.VoltsShare), row.Id, tag));
}
