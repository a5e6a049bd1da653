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
            .. Words(request), .. Figures(request, knowledge.Connections), .. Leads(LeadTags.FormOf(layout, request), request),
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

        if (request.Capacitor?.Use is { } use and not ("start" or "run" or "both" or "unknown"))
        {
            yield return new("invalid-fact", "capacitor.use", Statement.Of("capacitors.unknown-use", ("use", use), ("uses", "start, run, both, unknown")));
        }
    }

    private static IEnumerable<Problem> Figures(PlanRequest request, ConnectionFigures figures)
    {
        if (request.Supply?.Phases is { } phases and not (1 or 3))
        {
            yield return new("invalid-fact", "supply.phases", Statement.Of("connections.phases", ("given", $"{phases}")));
        }

        var volts = Given("supply.volts", request.Supply?.Volts).Concat(Given("plate.volts", request.Plate.Volts)).Concat(Given("capacitor.volts", request.Capacitor?.Volts));
        var hertz = Given("plate.hertz", request.Plate.Numbers("hertz")).Concat(Given("supply.hertz", request.Supply?.Hertz is 0 ? null : request.Supply?.Hertz));
        var sizes = Given("plate.amps", request.Plate.Amps).Concat(Given("plate.kilowatts", request.Plate.Numbers("kilowatts"))).Concat(Given("plate.horsepower", request.Plate.Numbers("horsepower")))
            .Concat(Given("capacitor.microfarads", request.Capacitor?.Microfarads));
        var ohms = request.CoilOhms.Select(one => ($"coilOhms.{one.Key}", one.Value)).Concat(request.Windings.Select(one => ("windings.ohms", one.Ohms)));
        foreach (var problem in Outside(volts, figures.Volts).Concat(Outside(hertz, figures.Hertz)).Concat(Outside(sizes, figures.Sizes)).Concat(Outside(ohms, figures.Ohms)))
        {
            yield return problem;
        }
    }

    private static IEnumerable<(string Field, double Value)> Given(string field, double? value) => value is { } given ? [(field, given)] : [];

    private static IEnumerable<(string Field, double Value)> Given(string field, IReadOnlyList<double> values) => values.Select(value => (field, value));

    private static IEnumerable<Problem> Outside(IEnumerable<(string Field, double Value)> given, Span span) =>
        given.Where(one => !(one.Value >= span.Least && one.Value <= span.Most)).Select(one => new Problem("invalid-fact", one.Field, Statement.Of(
            "connections.out-of-range", ("field", one.Field), ("value", double.IsFinite(one.Value) ? Units.Number(one.Value, 6) : $"{one.Value}"),
            ("least", Units.Number(span.Least)), ("most", Units.Number(span.Most)))));

    private static IEnumerable<Problem> Leads(Layout form, PlanRequest request)
    {
        var all = string.Join(", ", form.Leads.Select(lead => lead.Marking));
        foreach (var key in request.Leads.Keys.Where(key => !form.Leads.Any(lead => LeadTags.Names(lead, key))))
        {
            yield return new("unknown-lead", $"leads.{key}", Statement.Of("problem.unknown-lead", ("lead", key), ("leads", all)));
        }

        foreach (var twice in form.Leads.Select(lead => request.Leads.Keys.Where(key => LeadTags.Names(lead, key)).ToList()).Where(keys => keys.Count > 1))
        {
            yield return new("invalid-fact", $"leads.{twice[^1]}", Statement.Of("connections.lead-twice", ("first", twice[0]), ("second", twice[^1])));
        }

        foreach (var coil in request.CoilOhms.Keys.Where(key => form.Coils.All(coil => coil.Id != key && coil.Group != key)))
        {
            yield return new("invalid-fact", $"coilOhms.{coil}", Statement.Of(
                "connections.unknown-coil", ("coil", coil), ("coils", string.Join(", ", form.Coils.SelectMany(one => new[] { one.Group, one.Id }).Distinct(StringComparer.Ordinal)))));
        }

        var tags = request.Leads.Values.Select(tag => tag.Trim()).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var tag in request.Windings.SelectMany(winding => new[] { winding.From, winding.To }).Where(tag => !tags.Contains(tag.Trim())).Distinct(StringComparer.Ordinal))
        {
            yield return new("unknown-lead", "windings", Statement.Of("problem.unknown-lead", ("lead", tag), ("leads", string.Join(", ", request.Leads.Values))));
        }

        foreach (var twice in request.Leads.Where(one => !string.IsNullOrWhiteSpace(one.Value))
            .GroupBy(one => one.Value.Trim(), StringComparer.OrdinalIgnoreCase).Where(one => one.Count() > 1))
        {
            yield return new("invalid-fact", $"leads.{twice.Last().Key}", Statement.Of(
                "connections.tag-twice", ("tag", twice.Key), ("leads", string.Join(", ", twice.Select(one => one.Key)))));
        }
    }
}
