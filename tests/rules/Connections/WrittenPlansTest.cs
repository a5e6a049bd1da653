using System.Runtime.CompilerServices;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Every plan as it is written down in <c>plans.txt</c>. With WIRECOACH_REWRITE=1 it is written anew: whatever changes in it was looked at, line by line, before it is committed.</summary>
public sealed class WrittenPlansTest
{
    private const double Volts = 230;

    /// <summary>Layouts of which the origin of each figure is written too.</summary>
    private static readonly string[] Explained = ["capacitor-start-dual-6", "dc-shunt", "three-phase-9-star"];

    [Fact]
    public void Every_plan_is_the_one_that_was_looked_at()
    {
        string[] plans = [.. Motors.Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms()).SelectMany(Of)];
        if (Environment.GetEnvironmentVariable("WIRECOACH_REWRITE") == "1")
        {
            File.WriteAllText(Written(), string.Join("\n", plans));
        }

        var written = File.ReadAllText(Written()).Split("\n## ").Select((plan, at) => at == 0 ? plan : $"## {plan}").ToArray();
        for (var at = 0; at < Math.Min(plans.Length, written.Length); at++)
        {
            Assert.Equal(written[at].TrimEnd(), plans[at].TrimEnd());
        }

        Assert.Equal(written.Length, plans.Length);
    }

    private static string Written([CallerFilePath] string path = "") => Path.Combine(Path.GetDirectoryName(path)!, "plans.txt");

    /// <summary>Each row by its name on a motor of which nothing else is known, then each supply of a motor of which everything is.</summary>
    private static IEnumerable<string> Of(Layout form)
    {
        var shares = form.Connections.Select(row => row.VoltsShare).Distinct().Order().ToList();
        var plate = string.Join('/', shares.Select(share => $"{Math.Round(Volts * share)}"));
        var (phases, hertz) = (form.Family == "three-phase" ? 3 : 1, form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60);
        foreach (var row in form.Connections)
        {
            yield return Text(form, $"{row.Id} of {plate} V", Motors.Marked(form, plate, Math.Round(Volts * row.VoltsShare), phases, hertz) with { Connection = row.Id });
        }

        foreach (var share in shares)
        {
            var request = Motors.Marked(form, plate, Math.Round(Volts * share * 1.04), phases, hertz, "clockwise", "shaft-end") with
            {
                Leads = form.Leads.Select((lead, at) => (lead, at)).ToDictionary(one => (one.at % 2 == 0 ? one.lead.Marking : one.lead.Iec ?? one.lead.Marking).ToLowerInvariant(), one => $" {one.at + 1} ", StringComparer.Ordinal),
                Capacitor = new Fact.Capacitor { Use = "run", Volts = 660 },
                CoilOhms = form.Coils.Select(coil => coil.Group).Distinct(StringComparer.Ordinal).Select((group, at) => (group, Ohms: 1.5 + at)).ToDictionary(one => one.group, one => one.Ohms, StringComparer.Ordinal),
            };
            request = request with
            {
                Plate = request.Plate.With("amps", PlateValue.Parse(string.Join('/', shares.Select(each => $"{Math.Round(10 / each, 1)}"))))
                    .With("hertz", hertz == 0 ? PlateValue.Parse("") : PlateValue.Of(hertz)),
            };
            yield return Text(form, $"{request.Supply!.Volts} V, all known", request);
        }
    }

    private static string Text(Layout form, string about, PlanRequest request)
    {
        var answer = Motors.Planner.Plan(request);
        var head = $"## {form.Id}{(form.Form is null ? "" : $" ({form.Form})")}: {about}";
        return answer.Value is { } plan
            ? $"{head}\n{string.Join('\n', [.. Lines(plan), .. form.Form is null ? Words(plan) : [], .. Explained.Contains(form.Id) && form.Form is null ? Origins(plan) : [], .. plan.Others.Select(other => $"other: {other.Row.Id} {Joints(other)}")])}\n"
            : $"{head}\n{string.Join('\n', answer.Problems.Select(problem => $"{problem.Id} {problem.Field} {string.Join(',', problem.Missing)}: {Said(problem.Advice)}"))}\n";
    }

    private static IEnumerable<string> Lines(Plan plan) =>
    [
        $"row: {plan.Row.Id}, plate {plan.PlateVolts} V, supply {plan.SupplyVolts} V, {plan.Phases} ~, amps {Quote(plan.LineAmps)}",
        $"joints: {Joints(plan)}",
        $"capped: {string.Join(' ', plan.Capped)}",
        $"outer: {plan.Outer?.Kind} {string.Join(' ', plan.Outer?.Between ?? [])}",
        $"turns: {plan.Rotation} from {plan.SeenFrom}",
        $"reverse: {plan.Reverse.Possible} {string.Join(' ', plan.Reverse.Swap.Select(pair => string.Join("<>", pair)))}: {Said(plan.Reverse.Why)}",
        .. plan.Windings.Select(one => $"winding: {one.Coil} [{string.Join(' ', one.Coils)}] {one.Role} {string.Join('-', one.Leads)} {Quote(one.Volts)} at {Math.Round(one.AngleDegrees) + 0.0}, {Quote(one.PercentOfRated)}, {(one.Branch ? "branch, " : "")}amps {Quote(one.Amps)}"),
        .. plan.Notes.Select(note => $"note: {Said(note)}"),
        $"cautions: {string.Join(' ', plan.Cautions.Select(caution => $"{caution.Id}{(caution.Text.Id == $"caution.{caution.Id}" ? "" : "!")}"))}",
        $"nodes: {string.Join(", ", plan.Circuit.Nodes.Select(node => $"{node.Id} {node.Kind}{(node.Conductor is null ? "" : $" {node.Conductor}")}"))}",
        .. plan.ExpectedOhms.Select(one => $"meter: {string.Join('-', one.Between)} {Quote(one.Ohms)}: {Said(one.Note)}"),
        .. plan.Circuit.Elements.Select(one => $"element: {one.Id} {one.Kind} {one.Role} {End(one.From)} to {End(one.To)}{(one.Outside ? ", outside" : "")}{(one.ChangesWithShaft ? ", changes with the shaft" : "")}"),
    ];

    private static IEnumerable<string> Words(Plan plan) =>
    [
        .. plan.Steps.Select(step => $"step: {Said(step)}"),
        .. plan.Why.Select(why => $"why: {Said(why)}"),
    ];

    private static IEnumerable<string> Origins(Plan plan) => plan.Windings.SelectMany(one => new[] { one.Volts, one.PercentOfRated, one.Amps }).Append(plan.LineAmps).Concat(plan.ExpectedOhms.Select(one => one.Ohms)).OfType<Quoted>()
        .Concat(plan.Steps.Concat(plan.Why).Concat(plan.ExpectedOhms.Select(one => one.Note)).SelectMany(statement => statement.Quotes))
        .Select(quote => $"quoted: {quote.Text} {quote.Rule}; {quote.Source.Title}, {quote.Source.Place}; {string.Join("; ", quote.Trail.Select(step => $"{step.Step}, {step.Formula}, {step.Inputs}, {step.Result}"))}")
        .Distinct(StringComparer.Ordinal);

    private static string Joints(Plan plan) =>
        string.Join(' ', plan.Joints.Select(joint => $"{joint.Name}:{string.Join('+', joint.Leads)}{(joint.Conductor is null ? "" : $"->{joint.Conductor}")}"));

    private static string End(PlanEnd end) => $"{end.Node}{(end.Lead is null ? "" : $" by {end.Lead} ({end.Marking})")}";

    private static string Quote(Quoted? value) => value?.Text ?? "-";

    private static string Said(Statement statement) => statement.ToString().Replace("connections.", "", StringComparison.Ordinal);
}
