using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Whole checks and curves, as they were looked at.</summary>
public sealed class WrittenChecksTest
{
    private static readonly IReadOnlyList<FoundCoil> Split = [Connected.Split[0] with { Ohms = 4 }, Connected.Split[1] with { Ohms = 9 }];

    private static readonly IReadOnlyList<FoundCoil> Halves = [.. Connected.Halves.Select(coil => coil with { RatedVolts = 115, Ohms = coil.Role == "run" ? 1.5 : 3.4 })];

    private static readonly IReadOnlyList<FoundCoil> Star = [.. Connected.Star.Select(coil => coil with { Ohms = 5 })];

    private static readonly IReadOnlyList<FoundCoil> Nine =
    [
        .. new[] { ("a", "1", "4"), ("b", "2", "5"), ("c", "3", "6"), ("a", "7", "n"), ("b", "8", "n"), ("c", "9", "n") }
            .Select(coil => Connected.Phase(coil.Item1, coil.Item2, coil.Item3, 66.4) with { Ohms = 2 }),
    ];

    [Fact]
    public void Each_check_is_the_one_that_was_looked_at() => Sheets.Hold("checks.txt", Checks().Select(one => (one.About, (object)Connected.Checked(one.Found))));

    [Fact]
    public void Each_curve_is_the_one_that_was_looked_at()
    {
        var curve = new FieldCurve(Trade.Knowledge);
        Sheets.Hold("curves.txt", Curves().Select(one => (one.About, (object)curve.Of(one.Found, one.Right).Where((_, at) => at % 6 == 0 || at is 33 or 34))));
    }

    private static IEnumerable<(string About, FoundConnection Found)> Checks() =>
    [
        ("a right one, nothing measured", Connected.Of(Connected.Split, "L1:M1,A1 L2:M2,A2", phases: 1)),
        ("a right one with its ohms", Connected.Of(Split, "L1:M1,A1 L2:M2,A2", phases: 1)),
        ("the same at 5 % slip, of 50 Hz", Connected.Of(Split, "L1:M1,A1 L2:M2,A2", phases: 1, hertz: 50) with { Slip = 0.05 }),
        ("only the start winding measured", Connected.Of([Connected.Split[0], Split[1]], "L1:M1,A1 L2:M2,A2", phases: 1)),
        ("with its capacitor", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "q", 120)] }),
        ("with a capacitor that nobody read", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1, hertz: null) with { Capacitors = [new("A1", "q")] }),
        ("with half a capacitor", Connected.Of(Connected.Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "q", Left: 0.5)] }),
        ("with capacitor and switch, running", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "p", 120)], Switches = [new("p", "q", Closed: false)], Slip = 0.05 }),
        ("with capacitor and switch, at rest", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "p", 120)], Switches = [new("p", "q")] }),
        ("a three-phase motor with a capacitor across its lines", Connected.Of(Star, "L1:1 L2:2 L3:3 ~:4,5,6") with { Capacitors = [new("1", "2", 10)] }),
        ("halves opposed", Connected.Of(Halves, "L1:2 L2:4,5 ~:1,3,8", phases: 1)),
        ("halves in series", Connected.Of(Halves, "L1:1 L2:4,5 ~:2,3,8", phases: 1)),
        ("a half left open", Connected.Of(Connected.Halves, "L1:1,8 L2:2,5 ~:3 ~:4", phases: 1)),
        ("a lead that was forgotten", Connected.Of(Connected.Halves, "L1:1,3,8 L2:2,5 ~:z", phases: 1)),
        ("start halves opposed", Connected.Of(Connected.AllHalves, "L1:1,3,6,7 L2:2,4,5,8", phases: 1)),
        ("a ring of loose halves", Connected.Of([Connected.Run("first", "1", "2"), Connected.Run("second", "3", "4"), Connected.Run("third", "5", "6"), Connected.Start("start", "8", "9")], "L1:1,8 L2:2,9 ~:3,6 ~:4,5", phases: 1)),
        ("speed sections alone", Connected.Of([Connected.Run("main", "1", "2"), new("tap", "2", "3", "speed-tap", 60, "main"), new("other tap", "3", "4", "speed-tap", 60, "main"), Connected.Start("start", "8", "9")], "L1:2,8 L2:4,9", phases: 1)),
        ("a start half that stays fed", Connected.Of(Connected.AllHalves, "L1:1,3,q,8 L2:2,4,5,7", phases: 1) with { Switches = [new("q", "6")] }),
        .. new[] { "X", "Y" }.Select(line => ($"two alike windings, {line} straight on the line", new FoundConnection
        {
            Coils = [new("one", "C", "X", "run", 230, "main", 20), new("two", "C", "Y", "run", 230, "start", 20)],
            Joints = [new([line], "L1"), new(["C"], "L2")], SupplyVolts = 230, Phases = 1, Hertz = 50, Capacitors = [new("X", "Y", 10)],
        })),
        ("a run and a start capacitor, running", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "q", 30), new("A1", "p", 150)], Switches = [new("p", "q", Closed: false)], Slip = 0.05 }),
        ("two start capacitors in a string", Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Capacitors = [new("A1", "p", 200), new("p", "q", 200)] }),
        ("a switch across the line", Connected.Of(Split, "L1:M1,A1 L2:M2,A2", phases: 1) with { Switches = [new("M1", "M2")] }),
        ("a lead on earth", Connected.Of(Split, "L1:M1,A1 L2:M2 PE:A2", phases: 1)),
        ("no-load taps in the line", Connected.Of([Connected.Run("main", "1", "2"), new("tap", "2", "3", "speed-tap", 60, "main"), Connected.Start("start", "8", "9")], "L1:1,8 L2:3,9", phases: 1)),
        ("low volts", Connected.Of(Split, "L1:M1,A1 L2:M2,A2", 180, 1)),
        ("far too high", Connected.Of(Split, "L1:M1,A1 L2:M2,A2", 460, 1)),
        ("a star", Connected.Of(Star, "L1:1 L2:2 L3:3 ~:4,5,6")),
        ("a star turning the other way, at 3 % slip", Connected.Of(Star, "L1:2 L2:1 L3:3 ~:4,5,6") with { Slip = 0.03 }),
        ("a star driven backwards", Connected.Of(Star, "L1:1 L2:2 L3:3 ~:4,5,6") with { Slip = 1.9 }),
        ("a star with one phase round", Connected.Of(Star, "L1:4 L2:2 L3:3 ~:1,5,6")),
        ("a star that lost a line", Connected.Of(Star, "L1:1 L2:2 ~:3 ~:4,5,6")),
        ("phases mixed", Connected.Of(Nine, "L1:1 L2:2 L3:3 ~:4,8 ~:5,9 ~:6,7")),
        ("a delta", Connected.Of([.. Star.Select(coil => coil with { RatedVolts = 230 })], "L1:1,6 L2:2,4 L3:3,5")),
        ("a half of one phase turned", Connected.Of(Nine, "L1:4 L2:2 L3:3 ~:1,7 ~:5,8 ~:6,9")),
        ("two lines joined", Connected.Of(Star, "L1:1,2 L2:2 L3:3 ~:4,5,6")),
        ("nothing on the line", Connected.Of(Star, "~:1 ~:2 ~:3 ~:4,5,6", phases: 3)),
        ("a shunt motor", Connected.Of(Connected.Shunt, "+:A1,F1 -:A2,F2", hertz: 0)),
        ("a shunt motor with its field open", Connected.Of(Connected.Shunt, "+:A1,F1 -:A2 ~:F2", hertz: 0)),
        ("a shunt motor with its armature behind the field", Connected.Of(Connected.Shunt, "+:F1 ~:F2,A1 -:A2", hertz: 0)),
        ("a series motor on alternating current", Connected.Of(Connected.Series, "L1:A1 ~:A2,S1 L2:S2", hertz: 50)),
        ("a series motor side by side", Connected.Of(Connected.Series, "+:A1,S1 -:A2,S2", hertz: 0)),
        ("a compound motor", Connected.Of(Connected.Compound, "+:A1,F1 ~:A2,S1 -:S2,F2", hertz: 0)),
        ("a compound motor with its fields opposed", Connected.Of(Connected.Compound, "+:A1,F1 ~:A2,S2 -:S1,F2", hertz: 0)),
        ("a compound motor on low volts", Connected.Of(Connected.Compound, "+:A1,F1 ~:A2,S1 -:S2,F2", 120, hertz: 0)),
        ("two series fields", Connected.Of(Connected.TwoSeries, "+:S1 ~:S2,A1 ~:A2,S3 -:S4", hertz: 0)),
        ("two series fields, one round", Connected.Of(Connected.TwoSeries, "+:S1 ~:S2,A1 ~:A2,S4 -:S3", hertz: 0)),
        ("an armature with nothing on it", Connected.Of(Connected.Series, "+:A1 -:S2", hertz: 0)),
        ("a series motor on alternating current, open", Connected.Of(Connected.Series, "L1:A1 L2:S2 ~:A2 ~:S1", hertz: 50)),
    ];

    private static IEnumerable<(string About, FoundConnection Found, FoundConnection Right)> Curves()
    {
        var split = Connected.Of(Split, "L1:M1,q L2:M2,A2", phases: 1) with { Switches = [new("A1", "q")] };
        var star = Connected.Of(Star, "L1:1 L2:2 L3:3 ~:4,5,6");
        return
        [
            ("a split-phase motor", split, split),
            ("the same on low volts", split with { SupplyVolts = 200 }, split),
            ("the same turned round", Connected.Of(Split, "L1:M1,A2 L2:M2,q", phases: 1) with { Switches = [new("A1", "q")] }, split),
            ("a star", star, star),
            ("a star turning the other way", Connected.Of(Star, "L1:2 L2:1 L3:3 ~:4,5,6"), star),
            ("a star that lost a line", Connected.Of(Star, "L1:1 L2:2 ~:3 ~:4,5,6"), star),
            ("a star with a phase round", Connected.Of(Star, "L1:4 L2:2 L3:3 ~:1,5,6"), star),
            ("a star on one that is shorted", star, Connected.Of(Star, "L1:1,2 L2:2 L3:3 ~:4,5,6")),
            ("a motor with brushes", Connected.Of(Connected.Shunt, "+:A1,F1 -:A2,F2", hertz: 0), star),
            ("no connection at all", star, star with { Coils = [] }),
        ];
    }
}
