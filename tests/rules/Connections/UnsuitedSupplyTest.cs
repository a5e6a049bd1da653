using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Supplies that a motor must not be put on, and what is said of them.</summary>
public sealed class UnsuitedSupplyTest
{
    [Theory]
    [InlineData("capacitor-start-dual-6", "115/230", 208, 1, 60, "connections.not-on-plate")]
    [InlineData("three-phase-9-star", "230/460", 208, 3, 60, "connections.not-on-plate")]
    [InlineData("capacitor-start-4", "220", 198, 1, 60, "connections.not-on-plate")] // a tenth, and no more
    [InlineData("capacitor-start-dual-6", "115/230", 480, 1, 60, "connections.volts-too-high")]
    [InlineData("capacitor-start-dual-6", "115/230", 277, 1, 60, "connections.volts-too-high")]
    [InlineData("capacitor-start-dual-6", "115/230", 90, 1, 60, "connections.volts-too-low")]
    [InlineData("capacitor-start-4", "115", 230, 1, 60, "connections.volts-too-high")]
    [InlineData("capacitor-start-4", "110", 127, 1, 60, "connections.volts-too-high")]
    [InlineData("three-phase-9-star", "230/460", 400, 3, 60, "connections.volts-too-low")]
    [InlineData("three-phase-6", "230/400", 690, 3, 50, "connections.volts-too-high")]
    [InlineData("three-phase-9-star", "230/460", 240, 1, 60, "heat.three-phase-on-one")]
    [InlineData("capacitor-start-dual-6", "115/230", 240, 3, 60, "connections.single-phase-motor-on-three")]
    [InlineData("dc-shunt", "240", 240, 1, 60, "connections.direct-motor-on-alternating")]
    [InlineData("capacitor-start-4", "115", 115, 1, 0, "connections.alternating-motor-on-direct")]
    [InlineData("capacitor-start-dual-6", "230", 230, 1, 60, "connections.one-voltage-of-several")]
    [InlineData("three-phase-6", "400", 400, 3, 50, "connections.one-voltage-of-several")]
    [InlineData("capacitor-start-dual-6", "230/400", 230, 1, 60, "connections.plate-does-not-fit-layout")]
    [InlineData("three-phase-6", "230/400", 440, 3, 60, "connections.other-nominal")]
    [InlineData("capacitor-start-4", "115/230", 230, 1, 60, "connections.plate-does-not-fit-layout")]
    [InlineData("three-phase-3", "230/460", 460, 3, 60, "connections.plate-does-not-fit-layout")]
    [InlineData("three-phase-6", "230/460", 230, 3, 60, "connections.plate-does-not-fit-layout")]
    [InlineData("capacitor-start-dual-6", "100/130", 130, 1, 60, "connections.plate-does-not-fit-layout")] // 1.3 apart is no range any more
    public void No_plan_and_the_reason(string layout, string plate, double volts, int phases, double hertz, string reason)
    {
        var answer = Motors.Planner.Plan(Motors.Marked(layout, plate, volts, phases, hertz));
        Assert.False(answer.IsGiven);
        var problem = Assert.Single(answer.Problems);
        Assert.Equal(("not-ready", reason), (problem.Id, problem.Advice.Id));
        Assert.Equal([problem.Field], problem.Missing);
        Assert.Equal(reason switch
        {
            "connections.one-voltage-of-several" or "connections.plate-does-not-fit-layout" => "plate.volts",
            "connections.direct-motor-on-alternating" or "connections.alternating-motor-on-direct" => "supply.hertz",
            "heat.three-phase-on-one" or "connections.single-phase-motor-on-three" => "supply.phases",
            _ => "supply.volts",
        }, problem.Field);
        Assert.True(problem.Field is not ("plate.volts" or "supply.volts") || problem.Advice.Id == "connections.one-voltage-of-several" || problem.Advice.ToString().Contains($"{plate} V", StringComparison.Ordinal));
        Assert.DoesNotContain('{', Motors.Knowledge.Sentences.Render(problem.Advice));
        Assert.All(problem.Advice.Quotes, Traced);
    }

    [Theory]
    [InlineData("115/208-230", 208, "high-counterclockwise", 100)]
    [InlineData("115/208-230", 250, "high-counterclockwise", 108.696)]
    [InlineData("115/230", 240, "high-counterclockwise", 104.348)]
    [InlineData("115/230", 253, "high-counterclockwise", 110)]
    [InlineData("115/230", 126.5, "low-counterclockwise", 110)]
    [InlineData("110/220", 230, "high-counterclockwise", 104.545)]
    public void What_the_plate_covers_is_planned(string plate, double volts, string row, double percent)
    {
        var plan = Motors.Planned(Motors.Marked("capacitor-start-dual-6", plate, volts, 1, 60));
        Assert.Equal(row, plan.Row.Id);
        Assert.All(plan.Windings, winding => Assert.Equal(percent, winding.PercentOfRated.Value!.Value, 0.001));
    }

    [Theory]
    [InlineData(230, 50, "60", "connections.hertz-saturates", "120 %")]
    [InlineData(230, 60, "50", "connections.hertz-weak", "83.3 %")]
    [InlineData(190, 50, "60", "connections.hertz-needs-maker", "99.1 %")]
    public void Another_frequency_is_refused_by_volts_per_hertz(double volts, double hertz, string plateHertz, string reason, string percent)
    {
        var request = Motors.Marked("capacitor-start-4", "230", volts, 1, hertz);
        var answer = Motors.Planner.Plan(request with { Plate = request.Plate.With("hertz", PlateValue.Parse(plateHertz)) });
        var advice = Assert.Single(answer.Problems).Advice;
        Assert.Equal((reason, "supply.hertz"), (advice.Id, answer.Problems[0].Field));
        Assert.Contains(percent, Motors.Knowledge.Sentences.Render(advice), StringComparison.Ordinal);
        Assert.All(advice.Quotes, Traced);
        Assert.Equal($"{volts} V, {hertz} Hz; 230 V, {plateHertz} Hz", Assert.Single(advice.Quotes.Single().Trail).Inputs);
    }

    [Theory]
    [InlineData(303.6, 60, "hertz-needs-maker")]
    [InlineData(303.7, 60, "hertz-saturates")]
    [InlineData(165.6, 40, "hertz-needs-maker")]
    [InlineData(165.5, 40, "hertz-weak")]
    public void At_the_limits_of_volts_per_hertz_the_maker_is_asked(double volts, double hertz, string reason)
    {
        var request = Motors.Marked("capacitor-start-4", "230", volts, 1, hertz);
        Assert.Equal($"connections.{reason}", Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("hertz", PlateValue.Parse("50")) }).Problems).Advice.Id);
    }

    [Theory]
    [InlineData(62.9, true)]
    [InlineData(63, true)]
    [InlineData(63.1, false)]
    [InlineData(57, true)]
    public void A_frequency_within_a_twentieth_of_the_plate_is_the_plates_own(double hertz, bool planned)
    {
        var request = Motors.Marked("capacitor-start-4", "230", 230, 1, hertz);
        Assert.Equal(planned, Motors.Planner.Plan(request with { Plate = request.Plate.With("hertz", PlateValue.Parse("60")) }).IsGiven);
    }

    [Fact]
    public void Another_frequency_is_measured_against_the_plates_volts_that_it_comes_nearest_to()
    {
        var request = Motors.Marked("capacitor-start-dual-6", "115/230", 230, 1, 50);
        var advice = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("hertz", PlateValue.Parse("60")) }).Problems).Advice;
        Assert.Equal(("connections.hertz-saturates", 120), (advice.Id, Math.Round(advice.Quotes.Single().Value!.Value, 3)));
        Assert.Equal("120 %", Assert.Single(advice.Quotes.Single().Trail).Result);
    }

    [Fact]
    public void Within_a_range_of_the_plate_any_volts_are_its_own() =>
        Assert.True(Motors.Planner.Plan(Motors.Marked("three-phase-3", "380-480", 427, 3, 60)).IsGiven);

    private static void Traced(Rules.Quantities.Quoted quote)
    {
        Assert.Matches("^(connections.|low-volt-torque$|steinmetz$|one-phase-limits$)", quote.Rule);
        Assert.All([quote.Source.Title, quote.Source.Place], text => Assert.False(string.IsNullOrEmpty(text)));
        Assert.All(quote.Trail.SelectMany(step => new[] { step.Step, step.Formula, step.Inputs, step.Result }), text => Assert.False(string.IsNullOrEmpty(text)));
    }

    [Theory]
    [InlineData("115/230", 277, null, "connections.volts-too-high", "percent=20.4348 volts-tolerance; limit=10 volts-tolerance")]
    [InlineData("115/230", 90, null, "connections.volts-too-low", "percent=-21.7391 volts-tolerance; limit=10 volts-tolerance")]
    [InlineData("115/230", 248, "60", "connections.sum-too-large", "percent=7.8261 volts-tolerance; limit=10 volts-tolerance")]
    public void A_refusal_says_by_how_much_and_by_which_limit(string plate, double volts, string? plateHertz, string reason, string quotes)
    {
        var request = Motors.Marked("capacitor-start-dual-6", plate, volts, 1, plateHertz is null ? 60 : 62.9);
        var problem = Assert.Single(Motors.Planner.Plan(plateHertz is null ? request : request with { Plate = request.Plate.With("hertz", PlateValue.Parse(plateHertz)) }).Problems);
        Assert.Equal((reason, "supply.volts"), (problem.Advice.Id, Assert.Single(problem.Missing)));
        Assert.Equal(quotes, string.Join("; ", problem.Advice.Quotes.Zip(["percent", "limit"], (quote, name) => FormattableString.Invariant($"{name}={Math.Round(quote.Value!.Value, 4)} {quote.Rule.Split('.')[1]}"))));
        var trail = Assert.Single(problem.Advice.Quotes[0].Trail);
        Assert.All([trail.Step, trail.Formula, trail.Inputs, trail.Result], Assert.NotEmpty);
        Assert.Contains($"{volts} V", trail.Inputs, StringComparison.Ordinal);
    }

    [Fact]
    public void Plate_amps_go_with_their_volts_in_whatever_order_the_plate_has_them()
    {
        Assert.Equal(11, Amps("208-230/460", "11/10.4/5.2", 208));
        Assert.Equal(10.4, Amps("208-230/460", "11/10.4/5.2", 230));
        Assert.Equal(10.4, Amps("208-230/460", "10.4/5.2", 208));
        Assert.Equal(5.2, Amps("208-230/460", "10.4/5.2", 460));
        Assert.Equal(5.2, Amps("460/208-230", "5.2/10.4", 460));
        Assert.Equal(10.4, Amps("460/208-230", "5.2/10.4", 208));
        Assert.Null(Amps("208-230/460", "10.4", 460));

        static double? Amps(string volts, string amps, double supply)
        {
            var request = Motors.Marked("three-phase-9-star", volts, supply, 3, 60);
            return Motors.Planned(request with { Plate = request.Plate.With("amps", PlateValue.Parse(amps)) }).LineAmps?.Value;
        }
    }

    [Fact]
    public void A_plate_for_both_frequencies_takes_either()
    {
        var request = Motors.Marked("capacitor-start-dual-6", "110/220", 220, 1, 50);
        Assert.True(Motors.Planner.Plan(request with { Plate = request.Plate.With("hertz", PlateValue.Parse("50/60")) }).IsGiven);
    }

    [Fact]
    public void A_delta_asked_for_on_the_volts_of_the_star_is_refused_with_its_overvoltage()
    {
        var answer = Motors.Planner.Plan(Motors.Marked("three-phase-6", "230/400", 400, 3, 50) with { Connection = "delta" });
        var advice = Assert.Single(answer.Problems).Advice;
        Assert.Equal("connections.row-not-for-supply", advice.Id);
        Assert.Contains("174 %", Motors.Knowledge.Sentences.Render(advice), StringComparison.Ordinal);
        Assert.All(advice.Quotes, Traced);
        Assert.Equal(["connections.share-of-rated", "connections.volts-tolerance"], advice.Quotes.Select(quote => quote.Rule).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_wish_that_means_several_rows_is_refused_for_each_of_them_by_name()
    {
        var advice = Assert.Single(Motors.Planner.Plan(Motors.Marked("three-phase-9-star", "230/460", 600, 3, 60) with { Connection = "star" }).Problems).Advice;
        Assert.Contains("higher voltage, star / lower voltage, star", Motors.Knowledge.Sentences.Render(advice), StringComparison.Ordinal);
    }

    [Theory] // C = 2P/(√3·ω·U²): the figures of the withdrawn German standard
    [InlineData("kilowatts", 1.0, 230, 50, 69.48)]
    [InlineData("horsepower", 1.0, 230, 60, 43.17)]
    public void A_three_phase_motor_on_one_phase_gets_the_capacitor_estimate_and_its_limits(string field, double size, double volts, double hertz, double microfarads)
    {
        var request = Motors.Marked("three-phase-6", "230/400", volts, 1, hertz);
        var advice = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With(field, PlateValue.Of(size)) }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one-estimate", advice.Id);
        Assert.All(advice.Quotes, Traced);
        Assert.Equal([40.0, 70, 30, 2.2, 400], advice.Quotes.Where(quote => quote.Unit != "microfarad").Select(quote => Math.Round(quote.Value!.Value, 6)));
        Assert.Contains(advice.Quotes.First(quote => quote.Unit == "microfarad").Text, Motors.Knowledge.Sentences.Render(advice), StringComparison.Ordinal);
        Assert.Equal(
            $"{(field == "horsepower" ? "745.7 W" : "1000 W")}, {volts} V, {hertz} Hz",
            Assert.Single(advice.Quotes.First(quote => quote.Unit == "microfarad").Trail).Inputs);
        Assert.Equal(microfarads * (field == "horsepower" ? 0.746 / 0.7457 : 1), advice.Quotes.First(quote => quote.Unit == "microfarad").Value!.Value, 0.02 * microfarads);
    }

    [Fact]
    public void Above_the_limit_no_capacitor_is_offered()
    {
        var request = Motors.Marked("three-phase-6", "230/400", 230, 1, 50);
        var advice = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("kilowatts", PlateValue.Of(4)) }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one-too-big", advice.Id);
        Assert.Matches(@"4 kW.*2\.2 kW|2\.2 kW.*4 kW", Motors.Knowledge.Sentences.Render(advice));
        var both = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("kilowatts", PlateValue.Of(1)).With("horsepower", PlateValue.Of(5)) }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one-too-big", both.Id); // of two powers that contradict each other the horsepower goes first, as everywhere
        Assert.Equal((2.2, "one-phase-limits"), (advice.Quotes.Single().Value, advice.Quotes.Single().Rule));
        var limit = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("kilowatts", PlateValue.Of(2.2)) }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one-estimate", limit.Id);
        var unknown = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("kilowatts", PlateValue.Of(4)), Supply = request.Supply! with { Hertz = null } }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one-too-big", unknown.Id); // for that the hertz do not matter
        var unread = Assert.Single(Motors.Planner.Plan(request with { Supply = request.Supply! with { Hertz = null } }).Problems).Advice;
        Assert.Equal("heat.three-phase-on-one", unread.Id);
    }

    [Theory]
    [InlineData("three-phase-6", 3, "1")]
    [InlineData("capacitor-start-dual-6", 1, "3")]
    public void A_plate_of_other_phases_than_the_layout_is_looked_at_again(string layout, int phases, string plate)
    {
        var request = Motors.Marked(layout, phases == 3 ? "230/400" : "115/230", 230, phases, 50);
        var problem = Assert.Single(Motors.Planner.Plan(request with { Plate = request.Plate.With("phases", PlateValue.Parse(plate)) }).Problems);
        Assert.Equal(("connections.plate-phases", "plate.phases"), (problem.Advice.Id, problem.Field));
        Assert.All([plate, Motors.Knowledge.Layouts[layout].Name], said => Assert.Contains(said, Motors.Knowledge.Sentences.Render(problem.Advice), StringComparison.Ordinal));
    }

    [Fact]
    public void Volts_outside_the_limits_of_every_plate_figure_never_give_a_plan() =>
        Gen.Select(Gen.OneOf(Gen.Const("115/230"), Gen.Const("230/460"), Gen.Const("230/400"), Gen.Const("115")), Gen.Double[10, 1000], Gen.OneOf([.. Motors.Knowledge.Layouts.Keys.Order(StringComparer.Ordinal).Select(Gen.Const)]))
            .Sample((plate, volts, layout) =>
            {
                var form = Motors.Knowledge.Layouts[layout];
                var answer = Motors.Planner.Plan(Motors.Marked(form, plate, volts, form.Family == "three-phase" ? 3 : 1, form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60));
                return !answer.IsGiven || PlateValue.Parse(plate).Numbers.Any(rated => Math.Abs((volts / rated) - 1) <= 0.1 + 1e-9);
            }, iter: 3000);

    [Fact]
    public void A_plate_with_one_voltage_and_its_connection_is_enough()
    {
        var request = Motors.Marked("three-phase-6", "400", 400, 3, 50);
        Assert.Equal("delta", Row(request, "delta"));
        Assert.Equal("star", Row(request, "star"));

        static string Row(PlanRequest request, string connection) =>
            Motors.Planned(request with { Plate = request.Plate.With("connection", PlateValue.Parse(connection)) }).Row.For.Split('-')[^1];
    }
}
