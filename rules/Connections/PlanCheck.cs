using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>What is wrong with a request, and what is missing from it.</summary>
internal static class PlanCheck
{
    /// <summary>Members that cannot be what they say.</summary>
    public static IReadOnlyList<Problem> Of(PlanRequest request, TradeKnowledge knowledge)
    {
        if (!knowledge.Layouts.TryGetValue(request.Layout, out var layout))
        {
            return [new("invalid-fact", "layout", Statement.Of("connections.unknown-layout", ("layout", request.Layout)))];
        }

        if (request.Form is { } form && layout.Forms().All(one => one.Form != form))
        {
            return [new("invalid-fact", "form", Statement.Of("connections.unknown-form", ("form", form)))];
        }

        return
        [
            .. Words(request), .. Figures(request), .. Leads(LeadTags.FormOf(layout, request), request),
        ];
    }

    /// <summary>What a plan cannot do without.</summary>
    public static IReadOnlyList<Problem> Missing(
        Layout layout, IReadOnlyDictionary<string, string> tags, PlanRequest request, SupplyJudge judge)
    {
        var missing = layout.Leads.Where(lead => !tags.ContainsKey(lead.Marking))
            .Select(lead => NotReady($"leads.{lead.Marking}", Statement.Of("connections.missing-lead", ("lead", lead.Marking)))).ToList();
        if (request.Supply?.Volts is null)
        {
            missing.Add(NotReady("supply.volts", Statement.Of("connections.missing-supply-volts")));
        }

        if (SupplyJudge.PhasesOf(request) is null)
        {
            missing.Add(NotReady("supply.phases", Statement.Of("connections.missing-supply-phases")));
        }

        if (request.Supply?.Hertz is null && judge.NeedsHertz(layout))
        {
            missing.Add(NotReady("supply.hertz", Statement.Of("connections.missing-supply-hertz")));
        }

        if (request.Plate.Volts.Count == 0)
        {
            missing.Add(NotReady("plate.volts", Statement.Of("connections.missing-plate-volts")));
        }

        return missing;
    }

    private static Problem NotReady(string field, Statement advice) => new("not-ready", field, advice);

    private static IEnumerable<Problem> Words(PlanRequest request)
    {
        if (request.Rotation is not (null or "clockwise" or "counterclockwise"))
        {
            yield return new("invalid-fact", "rotation", Statement.Of("connections.rotation-word", ("given", request.Rotation)));
        }

        if (request.SeenFrom is not (null or "shaft-end" or "opposite-end"))
        {
            yield return new("invalid-fact", "seenFrom", Statement.Of("connections.seen-from-word", ("given", request.SeenFrom)));
        }

        if (request.Supply?.System is not (null or "single-phase" or "split-phase" or "three-phase-star" or "three-phase-delta"))
        {
            yield return new("invalid-fact", "supply.system", Statement.Of("connections.system-word", ("given", request.Supply.System)));
        }
    }

    private static IEnumerable<Problem> Figures(PlanRequest request)
    {
        if (request.Supply?.Volts is { } volts && !(double.IsFinite(volts) && volts > 0))
        {
            yield return NotPositive("supply.volts", volts);
        }

        if (request.Supply?.Phases is { } phases and not (1 or 3))
        {
            yield return new("invalid-fact", "supply.phases", Statement.Of("connections.phases", ("given", $"{phases}")));
        }

        if (request.Supply?.Hertz is { } hertz && !(double.IsFinite(hertz) && hertz >= 0))
        {
            yield return NotPositive("supply.hertz", hertz);
        }

        foreach (var value in request.Plate.Volts.Where(value => !(double.IsFinite(value) && value > 0)))
        {
            yield return NotPositive("plate.volts", value);
        }

        foreach (var (coil, ohms) in request.CoilOhms.Where(one => !(double.IsFinite(one.Value) && one.Value > 0)))
        {
            yield return NotPositive($"coilOhms.{coil}", ohms);
        }

        foreach (var winding in request.Windings.Where(one => !(double.IsFinite(one.Ohms) && one.Ohms > 0)))
        {
            yield return NotPositive("windings.ohms", winding.Ohms);
        }
    }

    private static Problem NotPositive(string field, double value) => new("invalid-fact", field, Statement.Of(
        "problem.not-positive", ("field", field), ("value", double.IsFinite(value) ? Units.Number(value, 6) : $"{value}")));

    private static IEnumerable<Problem> Leads(Layout form, PlanRequest request)
    {
        var all = string.Join(", ", form.Leads.Select(lead => lead.Marking));
        foreach (var key in request.Leads.Keys.Where(key => !form.Leads.Any(lead => LeadTags.Names(lead, key))))
        {
            yield return new("unknown-lead", $"leads.{key}", Statement.Of("problem.unknown-lead", ("lead", key), ("leads", all)));
        }

        foreach (var twice in request.Leads.Where(one => !string.IsNullOrWhiteSpace(one.Value))
            .GroupBy(one => one.Value.Trim(), StringComparer.OrdinalIgnoreCase).Where(one => one.Count() > 1))
        {
            yield return new("invalid-fact", $"leads.{twice.Last().Key}", Statement.Of(
                "connections.tag-twice", ("tag", twice.Key), ("leads", string.Join(", ", twice.Select(one => one.Key)))));
        }
    }
}
