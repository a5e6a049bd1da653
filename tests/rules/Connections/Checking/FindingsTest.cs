using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>What is said of connections as people make them: each fault by its name, how bad it is and what it is about.</summary>
public sealed class FindingsTest
{
    [Theory]
    [InlineData("split", "L1:M1,A1 L2:M2,A2", "", "right")]
    [InlineData("split", "L1:M1,A1,z L2:M2,A2", "unknown-lead Note z", "right")]
    [InlineData("split", "L1:M1,A1,M2 L2:A2", "coil-shorted Wrong main", "hum")] // nothing works on its axis, so nothing is induced in it
    [InlineData("split", "L1:M1,A1 L2:M2 ~:A2", "start-branch-open Open start,A2", "hum")]
    [InlineData("split", "L1:M1,A1 L2:A2 ~:M2", "lead-open Open main,M2", "hum")]
    [InlineData("split", "L1:M1,A1 ~:M2,A2", "supply-missing Open L1; winding-not-fed Open main; start-branch-open Open start", "dead")]
    [InlineData("split", "L1:M1,A1,M2 L2:M2,A2", "line-shorted Danger L1,L2,A1,A2,M1,M2", "short")]
    [InlineData("split", "L1:M1,A1 L2:M2 PE:A2", "lead-on-earth Danger A2; start-branch-open Open start", "short hum")]
    [InlineData("split", "L1:M1,A1 PE:M2,A2", "lead-on-earth Danger A2,M2; supply-missing Open L1,PE; winding-not-fed Open main; start-branch-open Open start", "short dead")]
    [InlineData("split", "L1:M1,A1 L2:M2,A2 PE:", "", "right")]
    [InlineData("halves", "L1:1,3,8 L2:2,4,5", "", "right")]
    [InlineData("halves", "L1:1,3,4,8 L2:2,5", "coil-shorted Danger second", "growl")]
    [InlineData("halves", "L1:1,4,8 L2:2,3,5", "halves-opposed Wrong first,second", "growl hum")]
    [InlineData("halves", "L1:1,8 L2:2,5 ~:3 ~:4", "lead-open Open second,3,4", "growl half")]
    [InlineData("all halves", "L1:1,3,6,8 L2:2,4,5,7", "", "right")]
    [InlineData("all halves", "L1:1,3,6,7 L2:2,4,5,8", "start-halves-opposed Wrong start,other", "hum")]
    [InlineData("all halves, high", "L1:1 L2:4,5,7 ~:2,3,6,8", "", "right")] // both start halves side by side on one run half
    [InlineData("all halves, high", "L1:1 L2:4,5,8 ~:2,3,6,7", "start-halves-opposed Wrong start,other", "growl hum")]
    [InlineData("star", "L1:1 L2:2 L3:3 ~:4,5,6", "", "right")]
    [InlineData("star", "L1:1 L2:2 ~:3 ~:4,5,6", "line-not-used Open L3; under-volts Wrong a 1-4; under-volts Wrong b 2-5; lead-open Open c 3-6,3", "weak hum")] // two phases in series
    [InlineData("star", "L1:4 L2:2 L3:3 ~:1,5,6", "phase-reversed Wrong a 1-4", "growl")]
    public void A_connection_is_told_by_what_is_wrong(string motor, string joints, string told, string seen)
    {
        var result = Connected.Checked(Connected.Of(Coils(motor), joints, phases: motor == "star" ? 3 : 1));
        Assert.Equal(told, Connected.Told(result));
        Assert.Equal(seen, Connected.Seen(result));
    }

    private static IReadOnlyList<FoundCoil> Coils(string motor) => motor switch
    {
        "split" => Connected.Split, "halves" => Connected.Halves, "all halves" => Connected.AllHalves,
        "all halves, high" => [.. Connected.AllHalves.Select(coil => coil with { RatedVolts = 115 })], _ => Connected.Star,
    };

    [Theory]
    [InlineData(0.885, "", "")]
    [InlineData(1.115, "", "")]
    [InlineData(0.875, "under-volts Wrong main; start-branch-under-volts Wrong start", "weak")]
    [InlineData(1.125, "over-volts Wrong main; start-branch-over-volts Wrong start", "start-burns")]
    [InlineData(1.49, "over-volts Wrong main; start-branch-over-volts Wrong start", "start-burns")]
    [InlineData(1.51, "over-volts Danger main; start-branch-over-volts Danger start", "start-burns over-volts")]
    public void Volts_are_told_where_they_leave_what_a_winding_takes(double share, string told, string seen)
    {
        var result = Connected.Checked(Connected.Of(Connected.Split, "L1:M1,A1 L2:M2,A2", 230 * share));
        Assert.Equal(told, Connected.Told(result));
        Assert.Equal(told.Length == 0 ? "right" : seen, Connected.Seen(result));
        Assert.All(result.Coils, coil => Assert.Equal(100 * share, coil.PercentOfRated!.Value, 1e-6));
        Assert.All(result.Findings, finding => Assert.Equal(100 * share, Assert.Single(finding.Why.Quotes).Value!.Value, 1e-6));
    }

    [Fact]
    public void Three_phases_on_one_are_told_before_what_follows()
    {
        var result = Connected.Checked(Connected.Of(Connected.Star, "L1:1 L2:2,3 ~:4,5,6", phases: 1));
        Assert.Equal(("three-phase-on-single-phase", Severity.Wrong, Verdict.Wrong), (result.Findings[0].Rule, result.Findings[0].Severity, result.Verdict));
    }

    [Theory]
    [InlineData("~:3,6 ~:4,5", "coil-shorted Danger second,third", true)] // head to tail: what is induced adds
    [InlineData("~:3,5 ~:4,6", "", false)] // side by side: what is induced balances
    public void Loose_halves_in_a_ring_are_dangerous_where_their_induced_volts_add(string ring, string told, bool dangerous)
    {
        IReadOnlyList<FoundCoil> coils = [Connected.Run("first", "1", "2"), Connected.Run("second", "3", "4"), Connected.Run("third", "5", "6"), Connected.Start("start", "8", "9")];
        var result = Connected.Checked(Connected.Of(coils, $"L1:1,8 L2:2,9 {ring}", phases: 1));
        Assert.Equal(dangerous, result.Verdict == Verdict.Dangerous);
        Assert.StartsWith(told, Connected.Told(result), StringComparison.Ordinal);
        Assert.Equal(["second", "third"], result.Findings.Where(finding => finding.Rule == "winding-not-fed").SelectMany(finding => finding.About));
    }

    [Fact]
    public void A_loose_run_half_that_a_loose_start_half_closes_is_dangerous_since_the_other_run_half_drives_it()
    {
        var result = Connected.Checked(Connected.Of(Connected.AllHalves, "L1:1,6 L2:2,5 ~:3,8 ~:4,7", phases: 1));
        Assert.Equal(Verdict.Dangerous, result.Verdict);
        Assert.Equal(["other", "second"], result.Findings.Single(finding => finding.Severity == Severity.Danger).About.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_ring_on_an_axis_that_nothing_drives_is_no_danger()
    {
        var result = Connected.Checked(Connected.Of(Connected.AllHalves, "L1:1,3 L2:2,4 ~:5,8 ~:6,7", phases: 1));
        Assert.Equal(Verdict.Incomplete, result.Verdict);
    }

    [Fact]
    public void A_speed_tap_on_the_line_without_the_run_winding_is_dangerous()
    {
        IReadOnlyList<FoundCoil> coils = [Connected.Run("main", "1", "2"), new("tap", "2", "3", "speed-tap", 60, "main"), Connected.Start("start", "8", "9")];
        var alone = Connected.Checked(Connected.Of(coils, "L1:2,8 L2:3,9", phases: 1));
        Assert.Contains(alone.Findings, finding => finding is { Rule: "taps-alone", Severity: Severity.Danger } && finding.About.SequenceEqual(["tap"]));
        var series = Connected.Checked(Connected.Of(coils, "L1:1,8 L2:3,9", phases: 1));
        Assert.Equal(string.Empty, Connected.Told(series));
        var tooMuch = Connected.Checked(Connected.Of([coils[0], coils[1] with { RatedVolts = 300 }, coils[2]], "L1:1,8 L2:3,9", 200, 1));
        Assert.Contains(tooMuch.Findings, finding => finding.Rule == "under-volts");
        Assert.Contains(Connected.Checked(Connected.Of([coils[0], coils[1] with { RatedVolts = 300 }, coils[2]], "L1:1,8 L2:3,9", 210, 1)).Findings, finding => finding.Rule == "under-volts");
    }

    [Fact]
    public void A_winding_for_another_speed_rests_where_it_lies_open_and_its_ohms_differ()
    {
        IReadOnlyList<FoundCoil> Two(double? other) =>
        [
            .. Connected.Star.Select(coil => coil with { Ohms = 5 }),
            .. new[] { Connected.Phase("a", "11", "n"), Connected.Phase("b", "12", "n"), Connected.Phase("c", "13", "n") }.Select(coil => coil with { Ohms = other }),
        ];
        const string Open = "L1:1 L2:2 L3:3 ~:4,5,6";
        var resting = Connected.Checked(Connected.Of(Two(12), Open));
        Assert.Equal(Verdict.Correct, resting.Verdict);
        Assert.Equal("winding-at-rest Note a 11-n; winding-at-rest Note b 12-n; winding-at-rest Note c 13-n", Connected.Told(resting));
        Assert.Equal(Verdict.Incomplete, Connected.Checked(Connected.Of(Two(5.4), Open)).Verdict); // alike: the other half of the same winding
        Assert.Equal([Verdict.Incomplete, Verdict.Correct], new[] { 5.52, 5.6 }.Select(ohms => Connected.Checked(Connected.Of(Two(ohms), Open)).Verdict)); // a tenth of the greater
        Assert.Equal(Verdict.Incomplete, Connected.Checked(Connected.Of(Two(null), Open)).Verdict);
        Assert.Equal(Verdict.Dangerous, Connected.Checked(Connected.Of(Two(12), $"{Open} ~:11,12,13")).Verdict); // short-circuited by the speed that runs
        Assert.NotEqual(Verdict.Correct, Connected.Checked(Connected.Of(Two(12), "L1:1,11 L2:2 L3:3 ~:4,5,6")).Verdict);
        Assert.NotEqual(Verdict.Correct, Connected.Checked(Connected.Of(Two(12), $"{Open} N:11")).Verdict);
        Assert.NotEqual(Verdict.Correct, Connected.Checked(Connected.Of(Two(12), "L1:1 L2:2 L3:3 ~:4,5,6,11")).Verdict);
        Assert.NotEqual(Verdict.Correct, Connected.Checked(Connected.Of([.. Two(12).SkipLast(1)], Open)).Verdict); // two coils are no winding of three phases
        Assert.Equal(Verdict.Incomplete, Connected.Checked(Connected.Of([.. Two(12).Select(coil => coil.From.Length == 1 ? coil with { Ohms = null } : coil)], Open)).Verdict);
        Assert.Contains("phase-reversed Wrong a 1-4", Connected.Told(Connected.Checked(Connected.Of(Two(12), "L1:4 L2:2 L3:3 ~:1,5,6"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, 5, 5, 5.2, 5.6, 6.2)]
    [InlineData(5.4, 4.6, 3.9, 5.2, 5.2, 5.2)]
    public void Windings_of_two_speeds_are_told_apart_by_the_mean_of_their_ohms(double a, double b, double c, double restingA, double restingB, double restingC)
    {
        IReadOnlyList<FoundCoil> coils =
        [
            .. Connected.Star.Zip([a, b, c], (coil, ohms) => coil with { Ohms = ohms }),
            .. new[] { ("a", "11", restingA), ("b", "12", restingB), ("c", "13", restingC) }.Select(coil => Connected.Phase(coil.Item1, coil.Item2, "n") with { Ohms = coil.Item3 }),
        ];
        Assert.Equal(Verdict.Correct, Connected.Checked(Connected.Of(coils, "L1:1 L2:2 L3:3 ~:4,5,6")).Verdict);
    }

    [Fact]
    public void A_coil_that_may_rest_is_noted_only()
    {
        IReadOnlyList<FoundCoil> coils = [Connected.Halves[0], Connected.Halves[1] with { MayRest = true }, Connected.Halves[2]];
        var result = Connected.Checked(Connected.Of(coils, "L1:1,8 L2:2,5", phases: 1));
        Assert.Equal("winding-at-rest Note second", Connected.Told(result));
        Assert.Equal("right", Connected.Seen(result));
    }

    [Fact]
    public void Without_any_start_winding_a_right_connection_is_told_to_need_a_push()
    {
        var result = Connected.Checked(Connected.Of([Connected.Run("main", "1", "2")], "L1:1 L2:2", phases: 1));
        Assert.Equal((Verdict.Correct, "no-start-winding Note", "right-no-start"), (result.Verdict, Connected.Told(result), Connected.Seen(result)));
    }

    [Fact]
    public void Two_alike_windings_straight_on_one_phase_do_not_start()
    {
        IReadOnlyList<FoundCoil> Alike(double? one, double? other) => [new("one", "X1", "X2", "run", 230, "main", one), new("two", "Y1", "Y2", "run", 230, "start", other)];
        const string Straight = "L1:X1,Y1 L2:X2,Y2";
        Assert.Equal("no-phase-shift Wrong one,two", Connected.Told(Connected.Checked(Connected.Of(Alike(20, 20.5), Straight))));
        Assert.Equal("no-phase-shift Wrong one,two", Connected.Told(Connected.Checked(Connected.Of(Alike(null, null), Straight))));
        Assert.Equal(string.Empty, Connected.Told(Connected.Checked(Connected.Of(Alike(10, 25), Straight))));
    }

    [Theory]
    [InlineData("L1:M1,A1 L2:M2 L3:A2", "60")]
    [InlineData("L1:M1 L2:M2,A1 L3:A2", "60")]
    [InlineData("L1:A1,M1 L2:M2 N:A2", "30")]
    [InlineData("L1:M1 L2:M2 L3:A1 N:A2", "90")]
    public void Run_and_start_on_three_lines_are_out_of_step_by_the_lines_and_refused_for_that(string joints, string degrees)
    {
        var result = Connected.Checked(Connected.Of(Connected.Split, joints, phases: 3));
        var said = Assert.Single(result.Findings, finding => finding.Rule == "single-phase-on-three-lines");
        Assert.Contains($"stand {degrees}° apart", Trade.Knowledge.Sentences.Render(said.Why), StringComparison.Ordinal);
        Assert.DoesNotContain(result.Findings, finding => finding.Rule == "no-phase-shift");
        Assert.True(result.Verdict is Verdict.Wrong or Verdict.Dangerous);
    }

    [Fact]
    public void On_the_same_two_of_three_lines_nothing_shifts_the_phase() =>
        Assert.Contains("no-phase-shift Wrong main,start", Connected.Told(Connected.Checked(Connected.Of(Connected.Split, "L1:M1,A1 L2:M2,A2 L3:", phases: 3))), StringComparison.Ordinal);

    [Fact]
    public void The_leads_of_a_resting_winding_are_not_tied_together()
    {
        IReadOnlyList<FoundCoil> Two(string a, string b, string c) =>
        [
            .. Connected.Star.Select(coil => coil with { Ohms = 5 }),
            .. new[] { Connected.Phase("a", "11", a), Connected.Phase("b", "12", b), Connected.Phase("c", "13", c) }.Select(coil => coil with { Ohms = 12 }),
        ];
        const string Open = "L1:1 L2:2 L3:3 ~:4,5,6";
        Assert.Equal(Verdict.Dangerous, Connected.Checked(Connected.Of(Two("n", "n", "n"), $"{Open} ~:11,12")).Verdict);
        Assert.Equal(Verdict.Correct, Connected.Checked(Connected.Of(Two("12", "13", "11"), Open)).Verdict); // a delta inside: the three add to nothing
        Assert.Equal(Verdict.Dangerous, Connected.Checked(Connected.Of(Two("12", "13", "11"), $"{Open} ~:11,12")).Verdict);
        Assert.DoesNotContain("winding-at-rest", Connected.Told(Connected.Checked(Connected.Of(Two("n", "n", "n"), $"{Open} ~:11,12"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nine", "L1:1 L2:2 L3:3 ~:4,7 ~:5,8 ~:6,9", "")]
    [InlineData("nine", "L1:4 L2:2 L3:3 ~:1,7 ~:5,8 ~:6,9", "halves-opposed Wrong a 1-4,a 7-n")]
    [InlineData("nine", "L1:1 L2:2 L3:3 ~:4,8 ~:5,7 ~:6,9", "phases-mixed Wrong a 1-4; phases-mixed Wrong a 7-n; phases-mixed Wrong b 2-5; phases-mixed Wrong b 8-n")]
    [InlineData("delta", "L1:1,6 L2:2,4 L3:3,5", "")]
    [InlineData("delta", "L1:1,6 L2:2,4 L3:5,3", "")]
    [InlineData("delta", "L1:4,6 L2:1,2 L3:3,5", "phase-reversed Wrong a 1-4")]
    [InlineData("delta", "L1:1,6 L2:5,4 L3:3,2", "phase-reversed Wrong b 2-5")]
    [InlineData("delta", "L1:1,3 L2:2,4 L3:6,5", "phase-reversed Wrong c 3-6")]
    [InlineData("delta", "L1:1,2,6 L2:4,5 L3:3", "field-uneven Wrong")] // two phases on the same lines
    public void Three_phases_are_told_by_what_is_wrong(string motor, string joints, string told)
    {
        IReadOnlyList<FoundCoil> nine =
        [
            Connected.Phase("a", "1", "4", 66.4), Connected.Phase("b", "2", "5", 66.4), Connected.Phase("c", "3", "6", 66.4),
            Connected.Phase("a", "7", "n", 66.4), Connected.Phase("b", "8", "n", 66.4), Connected.Phase("c", "9", "n", 66.4),
        ];
        var coils = motor == "nine" ? nine : [.. Connected.Star.Select(coil => coil with { RatedVolts = 230 })];
        Assert.Equal(told, Connected.Told(Connected.Checked(Connected.Of(coils, joints))));
    }

    [Theory]
    [InlineData("L1:M1,A1 L2:M2,q", "A2 q", "", "")]
    [InlineData("L1:M1,q L2:M2,A2", "", "A1 q", "")]
    [InlineData("L1:M1,q L2:M2,A2", "A1 p", "p q", "")] // capacitor and switch in one branch
    [InlineData("L1:M1,A1 L2:M2,A2", "M1 M2", "", "capacitor-misplaced Wrong M1,M2")] // across the line
    [InlineData("L1:A1,q L2:M2,A2", "M1 q", "", "capacitor-misplaced Wrong main")]
    [InlineData("L1:M1,A1 L2:M2,A2", "M1 A1", "", "capacitor-bridged Wrong M1,A1")]
    [InlineData("L1:M1 L2:M2,A2", "A1 q", "", "capacitor-open Open A1,q; start-branch-open Open start")]
    [InlineData("L1:M1 L2:M2,A2", "q A1", "", "capacitor-open Open q,A1; start-branch-open Open start")]
    [InlineData("L1:A1,q L2:M2,A2", "", "M1 q", "switch-misplaced Wrong main; start-stays-fed Wrong start")]
    [InlineData("L1:M1,A1,q L2:M2,A2", "", "A1 q", "switch-bridged Wrong A1,q")]
    [InlineData("L1:M1 L2:M2,A2", "", "A1 q", "switch-open-way Open A1,q; start-branch-open Open start")]
    [InlineData("L1:M1,A1 L2:M2,A2", "", "M1 M2", "line-shorted Danger M1,M2")]
    public void Capacitor_and_switch_are_told_by_where_they_stand(string joints, string capacitor, string contact, string told)
    {
        string[] Ends(string part) => part.Split(' ');
        var result = Connected.Checked(Connected.Of(Connected.Split, joints, phases: 1) with
        {
            Capacitors = capacitor.Length == 0 ? [] : [new(Ends(capacitor)[0], Ends(capacitor)[1])],
            Switches = contact.Length == 0 ? [] : [new(Ends(contact)[0], Ends(contact)[1])],
        });
        Assert.Equal(told, Connected.Told(result));
    }

    [Fact]
    public void A_part_in_both_run_halves_is_told_with_both_of_them()
    {
        var found = Connected.Of(Connected.Halves, "L1:q,8 L2:2,4,5 ~:1,3", phases: 1);
        Assert.Contains("capacitor-misplaced Wrong first,second", Connected.Told(Connected.Checked(found with { Capacitors = [new("1", "q")] })), StringComparison.Ordinal);
        Assert.Contains("switch-misplaced Wrong first,second", Connected.Told(Connected.Checked(found with { Switches = [new("1", "q")] })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_switch_across_one_half_is_misplaced_and_no_short_of_the_line()
    {
        var halves = Connected.Halves.Select(coil => coil with { RatedVolts = 115 }).ToList();
        var result = Connected.Checked(Connected.Of(halves, "L1:1 L2:4,5 ~:2,3,8", phases: 1) with { Switches = [new("1", "2")] });
        Assert.Contains("switch-misplaced Wrong 1,2", Connected.Told(result), StringComparison.Ordinal);
        Assert.DoesNotContain(result.Findings, finding => finding.Rule == "line-shorted");
    }

    [Fact]
    public void A_capacitor_that_no_switch_takes_off_keeps_its_start_half_fed()
    {
        var found = Connected.Of(Connected.AllHalves, "L1:1,3,q,r L2:2,4,5,7", phases: 1) with { Capacitors = [new("6", "r")], Switches = [new("q", "8")] };
        Assert.Equal("start-stays-fed Wrong start", Connected.Told(Connected.Checked(found)));
    }

    [Fact]
    public void Phases_of_slightly_unlike_windings_are_even_all_the_same()
    {
        var coils = Connected.Star.Select(coil => coil with { RatedVolts = coil.Axis == "c" ? 118 : 133 }).ToList();
        Assert.Equal(string.Empty, Connected.Told(Connected.Checked(Connected.Of(coils, "L1:1 L2:2 L3:3 ~:4,5,6"))));
    }

    [Theory]
    [InlineData(20, 20.9, true)]
    [InlineData(20, 21.02, true)] // a twentieth of the greater
    [InlineData(20, 21.1, false)]
    public void Two_windings_are_alike_as_far_as_their_ohms_are(double one, double other, bool alike)
    {
        IReadOnlyList<FoundCoil> coils = [new("one", "X1", "X2", "run", 230, "main", one), new("two", "Y1", "Y2", "run", 230, "start", other)];
        Assert.Equal(alike ? "no-phase-shift Wrong one,two" : string.Empty, Connected.Told(Connected.Checked(Connected.Of(coils, "L1:X1,Y1 L2:X2,Y2"))));
    }

    [Fact]
    public void A_start_half_that_its_switch_does_not_take_off_stays_fed()
    {
        string Of(string joints, params FoundSwitch[] switches) =>
            Connected.Told(Connected.Checked(Connected.Of(Connected.AllHalves, joints, phases: 1) with { Switches = switches }));
        Assert.Equal(string.Empty, Of("L1:1,3,q L2:2,4,5,7", new FoundSwitch("q", "6"), new FoundSwitch("q", "8")));
        Assert.Equal("start-stays-fed Wrong other", Of("L1:1,3,q,8 L2:2,4,5,7", new FoundSwitch("q", "6")));
        Assert.Equal(string.Empty, Of("L1:1,3,6,8 L2:2,4,5,7"));
    }
}
