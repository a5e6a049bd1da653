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
        ["three-phase-3"] = "phase T1 n r; phase T2 n r; phase T3 n r",
        ["three-phase-4"] = "phase T1 T0 r; phase T2 T0 r; phase T3 T0 r",
        ["three-phase-6"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r",
        ["part-winding-6"] = "phase T1 n r; phase T2 n r; phase T3 n r; phase T7 m r; phase T8 m r; phase T9 m r",
        ["two-speed-two-winding-6"] = "phase T1 n r; phase T2 n r; phase T3 n r; phase T11 m s; phase T12 m s; phase T13 m s",
        ["two-speed-6"] = "phase T1 T6 r; phase T6 T2 r; phase T2 T5 r; phase T5 T3 r; phase T3 T4 r; phase T4 T1 r",
        ["three-phase-9-star"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; phase T7 n r; phase T8 n r; phase T9 n r",
        ["three-phase-9-delta"] = "phase T1 T4 r; phase T1 T9 r; phase T2 T5 r; phase T2 T7 r; phase T3 T6 r; phase T3 T8 r",
        ["three-phase-12"] = "phase T1 T4 r; phase T2 T5 r; phase T3 T6 r; phase T7 T10 r; phase T8 T11 r; phase T9 T12 r",
        ["dc-shunt"] = "armature A1 A2 r; shunt-field F1 F2 s",
        ["dc-compound"] = "armature A1 A2 r; series-field S1 S2 t; shunt-field F1 F2 s",
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
        of["u"] = kind == "psc-tapped" ? of["t"] * Log(0.5, 2) : 0;
        var hurt = fault is "open" or "shorted" ? chance.Next(coils.Count) : -1;
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

        return motor;
    }

    private double Usual(string kind) => kind switch
    {
        "psc-3" or "psc-4" or "psc-reversible-3" or "psc-tapped" => Log(5, 100),
        "dc-shunt" or "dc-compound" => Log(0.4, 4),
        "capacitor-start-4" or "split-phase-4" or "split-phase-3" => Log(0.5, 10),
        "capacitor-start-dual-6" or "capacitor-start-dual-8" or "dual-voltage-4" => Log(0.8, 8),
        "sealed-compressor-3" => Log(0.5, 20),
        _ => Log(0.5, 25),
    };

    private double Ratio(string kind) => kind switch
    {
        "capacitor-start-dual-6" => Log(1.1, 3),
        "psc-3" or "psc-4" or "psc-tapped" => Log(1.1, 3),
        "dc-shunt" or "dc-compound" => Log(80, 800),
        "two-speed-two-winding-6" => Log(0.3, 4),
        "sealed-compressor-3" => Log(2, 5),
        _ => Log(2, 6),
    };

    private double Log(double low, double high) => low * Math.Exp(chance.NextDouble() * Math.Log(high / low));
}
