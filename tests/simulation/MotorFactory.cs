using WireCoach.Rules.Windings;

namespace WireCoach.Simulation;

/// <summary>Makes random motors of each kind, written down by hand from the trade's drawings.</summary>
internal sealed class MotorFactory(Random chance)
{
    /// <summary>Coils as role, from, to and group; nodes in capitals or starting with T come out.</summary>
    private static readonly Dictionary<string, string> Kinds = new(StringComparer.Ordinal)
    {
        ["capacitor-start-dual-6"] = "run T1 T2 r; run T3 T4 r; start T5 T8 s",
        ["capacitor-start-4"] = "run T1 T4 r; start T5 T8 s",
        ["split-phase-4"] = "run T1 T4 r; start T5 T8 s",
        ["capacitor-start-dual-8"] = "run T1 T2 r; run T3 T4 r; start T5 T6 s; start T7 T8 s",
        ["split-phase-3"] = "run C R r; start C S s",
        ["psc-3"] = "run C R r; start C S s",
        ["sealed-compressor-3"] = "run C R r; start C S s",
        ["psc-4"] = "run T1 T4 r; start T5 T8 s",
        ["psc-reversible-3"] = "run C X r; run C Y r",
        ["psc-tapped"] = "run C H r; speed-tap H M t; speed-tap M L u; start C K s",
        ["dual-voltage-4"] = "run T1 T2 r; run T3 T4 r",
        ["dual-voltage-4, no capacitor"] = "run T1 T2 r; run T3 T4 r; start T3 T4 s",
        ["three-phase-3"] = "phase T1 n r; phase T2 n r; phase T3 n r",
        ["three-phase-4"] = "phase T1 T0 r; phase T2 T0 r; phase T3 T0 r",
        ["three-phase-6"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r",
        ["part-winding-6"] = "phase T1 n r; phase T2 n r; phase T3 n r; phase T7 m r; phase T8 m r; phase T9 m r",
        ["two-speed-two-winding-6"] = "phase T1 n r; phase T2 n r; phase T3 n r; phase T11 m s; phase T12 m s; phase T13 m s",
        ["wound-rotor-6"] = "phase T1 n r; phase T2 n r; phase T3 n r; rotor K m s; rotor L m s; rotor M m s",
        ["two-speed-6"] = "phase T1 T6 r; phase T6 T2 r; phase T2 T5 r; phase T5 T3 r; phase T3 T4 r; phase T4 T1 r",
        ["three-phase-9-star"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; phase T7 n r; phase T8 n r; phase T9 n r",
        ["three-phase-9-delta"] = "phase T1 T4 r; phase T1 T9 r; phase T2 T5 r; phase T2 T7 r; phase T3 T6 r; phase T3 T8 r",
        ["three-phase-12"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; phase T7 T10 r; phase T8 T11 r; phase T9 T12 r",
        ["three-phase-10"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; phase T7 T10 r; phase T8 T10 r; phase T9 T10 r",
        ["dc-permanent-magnet"] = "armature A1 A2 r",
        ["series-commutator"] = "armature A1 A2 r; series-field S1 S2 f",
        ["shaded-pole-2"] = "run T1 T2 r",
        ["split-phase-2"] = "run T1 T4 r; start T1 T4 s",
        ["psc-2"] = "run T1 T4 r",
        ["psc-tapped, two speeds"] = "run C H r; speed-tap H L t; start C K s",
        ["psc-tapped, four speeds"] = "run C H r; speed-tap H M t; speed-tap M N u; speed-tap N L u; start C K s",
        ["two-value-capacitor"] = "run T1 T4 r; start T5 T8 s",
        ["two-value-capacitor, six leads"] = "run T1 T2 r; run T3 T4 r; start T5 T8 s",
        ["capacitor-start-dual-6, protector"] = "run T1 T2 r; run T3 T4 r; start T5 T8 s; protector P1 P2 p",
        ["three-phase-6, heater"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; other H1 H2 h",
        ["three-phase-3, thermistors"] = "phase T1 n r; phase T2 n r; phase T3 n r; other P1 P2 h",
        ["dc-shunt"] = "armature A1 A2 r; shunt-field F1 F2 s",
        ["dc-compound"] = "armature A1 A2 r; series-field S1 S2 t; shunt-field F1 F2 s",
        ["psc-tapped, start from the low end"] = "run C H r; speed-tap H M t; speed-tap M L u; start L K s",
        ["psc-tapped, two speeds, start from the low end"] = "run C H r; speed-tap H L t; start L K s",
    };

    public static IReadOnlyList<string> All { get; } = [.. Kinds.Keys];

    /// <summary>A motor of a kind with its leads hidden behind tags in a random order.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="fault">open, shorted, grounded or empty; grounded shows nothing between leads.</param>
    /// <param name="capacitorInTheWay">Whether the start pair of a capacitor-start motor is read through its capacitor.</param>
    /// <param name="ohms">Ohms of one coil of the first group; 0 for any usual value.</param>
    /// <param name="ratio">The second group against the first; 0 for any usual value.</param>
    public SimulatedMotor Make(string kind, string fault = "", bool capacitorInTheWay = false, double ohms = 0, double ratio = 0)
    {
        var coils = Kinds[kind].Split("; ").Select(coil => coil.Split(' ')).ToList();
        var motor = new SimulatedMotor { Layout = kind, Fault = fault };
        var first = ohms > 0 ? ohms : Usual(kind);
        var of = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["r"] = first,
            ["s"] = first * (ratio > 0 ? ratio : Ratio(kind)),
            ["t"] = first * Log(0.15, 0.5),
        };
        of["u"] = of["t"] * (kind.StartsWith("psc-tapped", StringComparison.Ordinal) ? Log(0.5, 2) : 1);
        of["f"] = kind == "series-commutator" ? first / Log(0.5, 5) : 0;
        of["p"] = 0.05;
        of["h"] = kind is "three-phase-6, heater" or "three-phase-3, thermistors" ? Log(100, 700) : 0;
        var hurt = fault is "open" or "shorted" ? chance.Next(coils.Count(coil => coil[0] is not ("protector" or "other"))) : -1;
        for (var index = 0; index < coils.Count; index++)
        {
            var (from, to) = (coils[index][1], coils[index][2]);
            var value = of[coils[index][3]] * (1 + (0.01 * ((2 * chance.NextDouble()) - 1)));
            double? left = index != hurt ? value : fault == "open" ? null : value * Log(0.5, 0.85);
            if (capacitorInTheWay && coils[index][0] == "start")
            {
                motor.Coil(from, "inner" + index, left);
                if (left is not null)
                {
                    motor.Capacitor("inner" + index, to);
                }
            }
            else
            {
                motor.Coil(from, to, left);
            }
        }

        var nodes = coils.SelectMany(coil => coil.Skip(1).Take(2)).Distinct(StringComparer.Ordinal).Where(node => char.IsUpper(node[0])).ToArray();
        chance.Shuffle(nodes);
        for (var lead = 0; lead < nodes.Length; lead++)
        {
            motor.Lead($"{lead + 1}", nodes[lead]);
            motor.Tags.Add($"{lead + 1}");
        }

        foreach (var coil in coils)
        {
            string[] ends = [.. coil.Skip(1).Take(2).Where(node => char.IsUpper(node[0])).Select(motor.TagOf).Order(StringComparer.Ordinal)];
            motor.Windings.Add((coil[0], ends));
        }

        motor.CapacitorUse = CapacitorOf(kind);
        motor.Looks = LooksOf(kind, motor.CapacitorUse);
        for (var index = 0; index < coils.Count; index++)
        {
            if (coils[index][0] is not ("protector" or "other") && (index != hurt || fault != "open"))
            {
                motor.Fields.Add((coils[index][1], coils[index][2], Degrees(coils[index][0], index)));
            }
        }

        motor.RotorOhms = Log(1, 6);
        motor.Stray = kind.Contains("dual", StringComparison.Ordinal) && chance.NextDouble() < 0.12 ? 0.05 * chance.NextDouble() : null;
        return motor;
    }

    private static int Degrees(string role, int index) => role switch { "phase" or "rotor" => index % 3 * 120, "start" or "armature" => 90, _ => 0 };

    /// <summary>Of a kind that needs one, what is printed on its capacitor.</summary>
    private string CapacitorOf(string kind) => kind switch
    {
        _ when kind.StartsWith("psc", StringComparison.Ordinal) => "run",
        _ when kind.StartsWith("two-value", StringComparison.Ordinal) => "both",
        _ when kind.StartsWith("capacitor-start", StringComparison.Ordinal) => "start",
        "dual-voltage-4" => "start",
        "sealed-compressor-3" => chance.Next(2) == 0 ? "run" : "none",
        _ => "none",
    };

    /// <summary>Motors that may be wired to turn either way or only one are met both ways.</summary>
    private Looks LooksOf(string kind, string capacitor) => new()
    {
        BothWays = kind switch
        {
            "psc-reversible-3" => true,
            "psc-2" or "psc-3" or "dual-voltage-4" or "dual-voltage-4, no capacitor" or "sealed-compressor-3" or "shaded-pole-2" or "split-phase-2" or "split-phase-3" => false,
            _ when kind.StartsWith("psc-tapped", StringComparison.Ordinal) => false,
            _ => chance.Next(4) == 0,
        },
        CapacitorOutside = kind switch
        {
            "psc-3" or "psc-4" or "psc-reversible-3" => true,
            _ when kind.StartsWith("psc-tapped", StringComparison.Ordinal) => true,
            _ when capacitor == "none" => null,
            _ => false,
        },
        Brushes = kind.StartsWith("dc-", StringComparison.Ordinal) || kind is "series-commutator" or "wound-rotor-6",
        Speeds = kind.StartsWith("psc-tapped", StringComparison.Ordinal) || kind.StartsWith("two-speed", StringComparison.Ordinal),
        Drags = kind switch { "dc-permanent-magnet" => true, "dc-shunt" or "dc-compound" or "series-commutator" => false, _ => null },
    };

    private double Usual(string kind) => kind switch
    {
        "psc-2" or "psc-3" or "psc-4" or "psc-reversible-3" => Log(5, 100),
        _ when kind.StartsWith("psc-tapped", StringComparison.Ordinal) => Log(5, 100),
        "shaded-pole-2" => Log(5, 150),
        "dc-shunt" or "dc-compound" or "dc-permanent-magnet" or "series-commutator" => Log(0.4, 4),
        "two-value-capacitor" or "two-value-capacitor, six leads" => Log(0.5, 7),
        "capacitor-start-4" or "split-phase-4" or "split-phase-3" => Log(0.5, 10),
        "capacitor-start-dual-6" or "capacitor-start-dual-6, protector" or "capacitor-start-dual-8" or "dual-voltage-4" or "dual-voltage-4, no capacitor" => Log(0.8, 8),
        "sealed-compressor-3" => Log(0.5, 20),
        _ => Log(0.5, 25),
    };

    private double Ratio(string kind) => kind switch
    {
        "capacitor-start-dual-6" or "capacitor-start-dual-6, protector" => Log(1.1, 3),
        "psc-3" or "psc-4" or "two-value-capacitor" or "two-value-capacitor, six leads" => Log(1.1, 3),
        _ when kind.StartsWith("psc-tapped", StringComparison.Ordinal) => Log(1.1, 3),
        "dc-shunt" or "dc-compound" => Log(80, 800),
        "two-speed-two-winding-6" => Log(0.3, 4),
        "wound-rotor-6" => Log(0.05, 2),
        "sealed-compressor-3" => Log(2, 5),
        "dual-voltage-4, no capacitor" => Log(1, 4),
        _ => Log(2, 6),
    };

    private double Log(double low, double high) => low * Math.Exp(chance.NextDouble() * Math.Log(high / low));
}
