using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>What is wrong with a request, or missing from it, is said by its member, and there is no plan.</summary>
public sealed class PlanCheckTest
{
    private static readonly Dictionary<string, Func<PlanRequest, PlanRequest>> Spoilt = new(StringComparer.Ordinal)
    {
        ["layout"] = request => request with { Layout = "capacitor-start-99" },
        ["form"] = request => request with { Form = "protector-99" },
        ["rotation"] = request => request with { Rotation = "left" },
        ["seen from"] = request => request with { SeenFrom = "above" },
        ["system"] = request => request with { Supply = request.Supply! with { System = "two-phase" } },
        ["phases"] = request => request with { Supply = request.Supply! with { Phases = 2 } },
        ["phases of direct current"] = request => request with { Supply = request.Supply! with { Phases = 3, Hertz = 0 } },
        ["phases of a two-leg supply"] = request => request with { Supply = request.Supply! with { Phases = 3, System = "split-phase" } },
        ["phases of an outlet"] = request => request with { Supply = request.Supply! with { Phases = 3, System = "single-phase" } },
        ["direct current of three phases"] = request => request with { Supply = request.Supply! with { Phases = null, Hertz = 0, System = "three-phase-star" } },
        ["supply volts"] = request => request with { Supply = request.Supply! with { Volts = 0 } },
        ["supply volts, no number"] = request => request with { Supply = request.Supply! with { Volts = double.NaN } },
        ["supply volts, endless"] = request => request with { Supply = request.Supply! with { Volts = double.PositiveInfinity } },
        ["plate volts"] = request => request with { Plate = request.Plate.With("volts", PlateValue.Parse("115/99999")) },
        ["capacitor volts"] = request => request with { Capacitor = new Fact.Capacitor { Use = "start", Volts = 0 } },
        ["capacitor microfarads"] = request => request with { Capacitor = new Fact.Capacitor { Use = "start", Microfarads = -5 } },
        ["capacitor use"] = request => request with { Capacitor = new Fact.Capacitor { Use = "spare" } },
        ["supply hertz"] = request => request with { Supply = request.Supply! with { Hertz = 100_000 } },
        ["plate hertz"] = request => request with { Plate = request.Plate.With("hertz", PlateValue.Of(100_000)) },
        ["plate amps"] = request => request with { Plate = request.Plate.With("amps", PlateValue.Of(99_999)) },
        ["plate kilowatts"] = request => request with { Plate = request.Plate.With("kilowatts", PlateValue.Of(99_999)) },
        ["plate horsepower"] = request => request with { Plate = request.Plate.With("horsepower", PlateValue.Of(99_999)) },
        ["coil ohms"] = request => request with { CoilOhms = new Dictionary<string, double> { ["run"] = -1 } },
        ["coil ohms, many digits"] = request => request with { CoilOhms = new Dictionary<string, double> { ["run"] = -0.123456789 } },
        ["coil unknown"] = request => request with { CoilOhms = new Dictionary<string, double> { ["rum"] = 1 } },
        ["winding ohms"] = request => request with { Windings = [new("T1", "T2", -1)] },
        ["winding unknown"] = request => request with { Windings = [new("T1", "T99", 1)] },
        ["lead unknown"] = request => request with { Leads = With(request, "T99", "x") },
        ["lead twice"] = request => request with { Leads = With(request, "t1", "x") },
        ["tag twice"] = request => request with { Leads = With(request, "T1", " t2 ") },
        ["lead missing"] = request => request with { Leads = With(request, "T3", " ") },
        ["lead left out"] = request => request with { Leads = request.Leads.Where(one => one.Key != "T3").ToDictionary(StringComparer.Ordinal) },
        ["no supply"] = request => request with { Supply = null },
        ["no supply volts"] = request => request with { Supply = request.Supply! with { Volts = null } },
        ["no phases"] = request => request with { Supply = request.Supply! with { Phases = null } },
        ["no plate volts"] = request => request with { Plate = PlateFields.Empty },
        ["row unknown"] = request => request with { Connection = "middle" },
    };

    [Theory]
    [InlineData("layout", "invalid-fact", "layout", "unknown-layout")]
    [InlineData("form", "invalid-fact", "form", "unknown-form")]
    [InlineData("rotation", "invalid-fact", "rotation", "rotation-word")]
    [InlineData("seen from", "invalid-fact", "seenFrom", "seen-from-word")]
    [InlineData("system", "invalid-fact", "supply.system", "system-word")]
    [InlineData("phases", "invalid-fact", "supply.phases", "phases")]
    [InlineData("phases of direct current", "not-ready", "supply.phases", "phases-contradicted")]
    [InlineData("phases of a two-leg supply", "not-ready", "supply.phases", "phases-contradicted")]
    [InlineData("phases of an outlet", "not-ready", "supply.phases", "phases-contradicted")]
    [InlineData("direct current of three phases", "not-ready", "supply.phases", "phases-contradicted")]
    [InlineData("supply volts", "invalid-fact", "supply.volts", "out-of-range")]
    [InlineData("supply volts, no number", "invalid-fact", "supply.volts", "out-of-range")]
    [InlineData("supply volts, endless", "invalid-fact", "supply.volts", "out-of-range")]
    [InlineData("plate volts", "invalid-fact", "plate.volts", "out-of-range")]
    [InlineData("capacitor volts", "invalid-fact", "capacitor.volts", "out-of-range")]
    [InlineData("capacitor microfarads", "invalid-fact", "capacitor.microfarads", "out-of-range")]
    [InlineData("capacitor use", "invalid-fact", "capacitor.use", "unknown-use")]
    [InlineData("supply hertz", "invalid-fact", "supply.hertz", "out-of-range")]
    [InlineData("plate hertz", "invalid-fact", "plate.hertz", "out-of-range")]
    [InlineData("plate amps", "invalid-fact", "plate.amps", "out-of-range")]
    [InlineData("plate kilowatts", "invalid-fact", "plate.kilowatts", "out-of-range")]
    [InlineData("plate horsepower", "invalid-fact", "plate.horsepower", "out-of-range")]
    [InlineData("coil ohms", "invalid-fact", "coilOhms.run", "out-of-range")]
    [InlineData("coil ohms, many digits", "invalid-fact", "coilOhms.run", "out-of-range")]
    [InlineData("coil unknown", "invalid-fact", "coilOhms.rum", "unknown-coil")]
    [InlineData("winding ohms", "invalid-fact", "windings.ohms", "out-of-range")]
    [InlineData("winding unknown", "unknown-lead", "windings", "unknown-lead")]
    [InlineData("lead unknown", "unknown-lead", "leads.T99", "unknown-lead")]
    [InlineData("lead twice", "invalid-fact", "leads.t1", "lead-twice")]
    [InlineData("tag twice", "invalid-fact", "leads.T2", "tag-twice")]
    [InlineData("lead missing", "not-ready", "leads.T3", "missing-lead")]
    [InlineData("lead left out", "not-ready", "leads.T3", "missing-lead")]
    [InlineData("no supply", "not-ready", "supply.volts", "missing-supply-volts")]
    [InlineData("no supply volts", "not-ready", "supply.volts", "missing-supply-volts")]
    [InlineData("no phases", "not-ready", "supply.phases", "missing-supply-phases")]
    [InlineData("no plate volts", "not-ready", "plate.volts", "missing-plate-volts")]
    [InlineData("row unknown", "invalid-fact", "connection", "unknown-row")]
    public void What_is_wrong_is_said_by_its_member(string what, string id, string field, string advice)
    {
        var answer = Motors.Planner.Plan(Spoilt[what](Motors.Marked("capacitor-start-dual-6", "115/230", 230, 1, 60)));
        Assert.False(answer.IsGiven);
        var problem = answer.Problems[0];
        Assert.Equal((id, field, advice), (problem.Id, problem.Field, problem.Advice.Id.Split('.')[1]));
        Assert.DoesNotContain('{', Motors.Knowledge.Sentences.Render(problem.Advice));
        Assert.Equal(id == "not-ready", problem.Missing.Contains(field));
        Assert.True(id == "not-ready" || problem.Missing.Count == 0);
    }

    [Fact]
    public void Every_case_is_tried() => Assert.Equal(
        Spoilt.Count, typeof(PlanCheckTest).GetMethod(nameof(What_is_wrong_is_said_by_its_member))!.GetCustomAttributes(typeof(InlineDataAttribute), inherit: false).Length);

    [Theory]
    [InlineData("lead unknown", "T1, T2, T3, T4, T5, T8")]
    [InlineData("winding unknown", "T1, T2, T3, T4, T5, T8")]
    [InlineData("coil unknown", "run, run-1, run-2, start")]
    [InlineData("tag twice", "T1, T2")]
    [InlineData("row unknown", "high, low")]
    [InlineData("supply volts, no number", "NaN")]
    [InlineData("supply volts, endless", "Infinity")]
    [InlineData("plate volts", "99999")]
    [InlineData("coil ohms, many digits", "0.123457;")]
    public void What_could_be_meant_is_named_with_it(string what, string named) => Assert.Contains(
        named, Motors.Knowledge.Sentences.Render(Motors.Planner.Plan(Spoilt[what](Motors.Marked("capacitor-start-dual-6", "115/230", 230, 1, 60))).Problems[0].Advice).Replace(" ", "", StringComparison.Ordinal).Replace(",", ", ", StringComparison.Ordinal), StringComparison.Ordinal);

    [Fact]
    public void All_that_is_missing_is_said_at_once()
    {
        var request = Motors.Marked("dc-shunt", "230", 230, 1, 0);
        var answer = Motors.Planner.Plan(request with { Leads = request.Leads.Skip(1).ToDictionary(StringComparer.Ordinal), Supply = new Fact.Supply(), Plate = PlateFields.Empty });
        string[] missing = [$"leads.{request.Leads.Keys.First()}", "supply.volts", "supply.phases", "supply.hertz", "plate.volts"];
        Assert.Equal(missing, answer.Problems.Select(problem => problem.Field));
        Assert.Equal(missing, answer.Problems[0].Missing);
        Assert.All(answer.Problems, problem => Assert.EndsWith(".", Motors.Knowledge.Sentences.Render(problem.Advice), StringComparison.Ordinal));
    }

    [Fact]
    public void The_least_and_the_most_that_a_figure_can_be_are_no_slip_of_the_pen()
    {
        var request = Motors.Marked("capacitor-start-4", "115", 115, 1, 60);
        var span = Motors.Knowledge.Connections.Volts;
        Assert.All([span.Least, span.Most], volts => Assert.DoesNotContain(
            Motors.Planner.Plan(request with { Supply = request.Supply! with { Volts = volts } }).Problems, problem => problem.Id == "invalid-fact"));
    }

    [Fact]
    public void A_motor_without_a_table_waits_for_another_layout()
    {
        var problem = Assert.Single(Motors.Planner.Plan(Motors.Marked("sealed-compressor-3", "230", 230, 1, 60)).Problems);
        Assert.Equal(("not-ready", "layout", "layout"), (problem.Id, problem.Field, Assert.Single(problem.Missing)));
    }

    [Fact]
    public void The_leads_tell_the_form()
    {
        foreach (var form in Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()))
        {
            var alike = Motors.Knowledge.Layouts[form.Id].Forms().First(other => other.Leads.Select(lead => lead.Marking).ToHashSet(StringComparer.Ordinal).SetEquals(form.Leads.Select(lead => lead.Marking)));
            var plate = string.Join('/', form.Connections.Select(row => Math.Round(230 * row.VoltsShare)).Distinct().Order());
            if (form.NotConnected is null && Motors.Planner.Plan(Motors.Marked(form, plate, 230, form.Family == "three-phase" ? 3 : 1, form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60) with { Form = null }).Value is { } plan)
            {
                Assert.Equal((form.Id, alike.Form), (plan.Layout.Id, plan.Layout.Form));
            }
        }

        Assert.Equal("series-commutator universal-2", Planned("series-commutator", "L1", "L2"));
        Assert.Equal("psc-tapped two-speed", Planned("psc-tapped", "C", "HI", "LO", "CAP"));

        static string Planned(string layout, params string[] leads)
        {
            var request = Motors.Marked(layout, "230", 230, 1, 60) with { Leads = leads.ToDictionary(lead => lead, StringComparer.Ordinal) };
            var plan = Motors.Planned(request);
            return $"{plan.Layout.Id} {plan.Layout.Form}";
        }
    }

    [Fact]
    public void Without_a_request_there_is_no_answer() => Assert.Throws<ArgumentNullException>(() => Motors.Planner.Plan(null!));

    [Fact]
    public void A_direct_motor_waits_for_the_kind_of_supply()
    {
        var request = Motors.Marked("dc-shunt", "230", 230, 1, 0);
        var problem = Motors.Planner.Plan(request with { Supply = request.Supply! with { Hertz = null } }).Problems[0];
        Assert.Equal(("supply.hertz", "connections.missing-supply-hertz"), (problem.Field, problem.Advice.Id));
    }

    [Theory]
    [InlineData("capacitor-start-4", "single-phase", 1)]
    [InlineData("capacitor-start-4", "split-phase", 1)]
    [InlineData("three-phase-3", "three-phase-star", 3)]
    [InlineData("three-phase-3", "three-phase-delta", 3)]
    public void The_system_tells_the_phases(string layout, string system, int phases)
    {
        var request = Motors.Marked(layout, "230", 230, phases, 60);
        Assert.Equal(phases, Motors.Planned(request with { Supply = request.Supply! with { Phases = null, System = system } }).Phases);
    }

    private static Dictionary<string, string> With(PlanRequest request, string lead, string tag) =>
        new(request.Leads, StringComparer.Ordinal) { [lead] = tag };
}
