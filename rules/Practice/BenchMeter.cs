using WireCoach.Rules.Cases;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Practice;

/// <summary>An ohmmeter on the practice motor, with its own error.</summary>
/// <param name="knowledge">The facts of the trade.</param>
/// <param name="wound">The motor.</param>
/// <param name="share">Its error as a share of a cheap meter's.</param>
internal sealed class BenchMeter(TradeKnowledge knowledge, Wound wound, double share)
{
    private readonly TradeRule _meter = knowledge.Rules["practice-meter"];
    private readonly TradeRule _faults = knowledge.Rules["practice-faults"];

    /// <summary>Ohms of a coil as it is; <see langword="null"/> when it is open.</summary>
    public double? CoilOhms(WoundCoil coil) => wound.Fault is not { } fault || fault.At != coil.Coil.Id ? coil.Ohms
        : fault.Id.StartsWith("open-", StringComparison.Ordinal) || fault.Id == "field-open" ? null
        : fault.Id.StartsWith("shorted-", StringComparison.Ordinal) ? coil.Ohms * fault.Share
        : coil.Ohms;

    /// <summary>What the meter shows.</summary>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag, or the frame.</param>
    /// <param name="together">Tags held together with the first.</param>
    /// <param name="bridged">Whether the capacitors are bridged.</param>
    /// <param name="reset">Whether a protector was reset.</param>
    /// <param name="take">How often this was read before: each take has an error of its own.</param>
    public Fact.Reading Touch(string from, string to, IReadOnlyList<string> together, bool bridged, bool reset, int take) =>
        Joined([[from, .. together]], from, to, bridged, reset, take) with { Together = together };

    /// <summary>What the meter shows while leads are joined.</summary>
    /// <param name="joints">Tags that are joined, group by group.</param>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag, or the frame.</param>
    /// <param name="bridged">Whether the capacitors are bridged.</param>
    /// <param name="reset">Whether a protector was reset.</param>
    /// <param name="take">How often this was read before.</param>
    public Fact.Reading Joined(IReadOnlyList<IReadOnlyList<string>> joints, string from, string to, bool bridged, bool reset, int take)
    {
        List<List<string>> held = [.. joints.Select(joint => joint.Select(wound.NodeOf).ToList())];
        double? Read(double armature, bool capacitorsPass) =>
            new Ohmmeter(Wires(armature, bridged || capacitorsPass, bridged, reset), held).Between(wound.NodeOf(from), wound.NodeOf(to));
        var true1 = Read(1, capacitorsPass: false);
        var reading = new Fact.Reading { From = from, To = to, How = FactEntry.Probe };
        var others = string.Join('&', joints.Select(joint => string.Join('+', joint.Where(tag => tag != from))));
        if (Shown(true1, $"{from}|{others}|{to}|{bridged}{(take == 0 ? string.Empty : $"|{take}")}") is not { } ohms)
        {
            return reading with { Open = true, Kick = Read(1, capacitorsPass: true) is not null };
        }

        var turned = Read(1.3, capacitorsPass: false);
        return reading with { Ohms = ohms, ChangesWithShaft = turned is { } other && Math.Abs(other - true1!.Value) > 0.02 * true1.Value };
    }

    /// <summary>Whether two readings of the same points can differ by this meter's error and its last digit alone.</summary>
    public bool Agree(Fact.Reading one, Fact.Reading other) => one.Open || other.Open ? one.Open == other.Open && one.Kick == other.Kick
        : one.Ohms is { } first && other.Ohms is { } second && Math.Abs(first - second) <= (2 * Error(Math.Max(first, second))) + Step(Math.Max(first, second));

    /// <summary>What it shows with its probes on each other.</summary>
    public double ProbeOhms() => Shown(0, "probes")!.Value;

    /// <summary>Megohms of all leads to the frame, as an insulation tester shows them: hundredths at the least, and three digits.</summary>
    public double Megohms()
    {
        var megohms = wound.Fault is { Id: "grounded-winding" } ground ? ground.Share / 1e6 : wound.Megohms;
        var step = megohms >= 1000 ? 10 : megohms >= 100 ? 1 : megohms >= 10 ? 0.1 : 0.01;
        return Math.Round(Math.Round(megohms / step) * step, 2);
    }

    private double? Shown(double? ohms, string what)
    {
        if (ohms is not { } true1 || true1 > _meter["most-ohms"])
        {
            return null;
        }

        var seen = true1 + _meter["probe-ohms"];
        var step = Step(seen);
        var shown = seen + (new SeededSequence(wound.Seed, what).Between(-1, 1) * Error(seen));
        return Math.Round(Math.Max(0, Math.Round(shown / step) * step), 3);
    }

    private double Error(double seen) => share * ((seen * _meter["percent"] / 100) + (_meter["counts"] * Step(seen)));

    private double Step(double seen)
    {
        var step = _meter["least-step-ohms"];
        while (seen >= 2000 * step)
        {
            step *= 10;
        }

        return step;
    }

    private IEnumerable<Wire> Wires(double armature, bool capacitorsPass, bool bridged, bool reset)
    {
        foreach (var coil in wound.Coils)
        {
            var ohms = CoilOhms(coil) * (coil.Coil.ChangesWithShaft ? armature : 1);
            if (wound.Has("grounded-winding", coil.Coil.Id))
            {
                yield return new(coil.Coil.From, "\0inside", ohms / 2);
                yield return new("\0inside", coil.Coil.To, ohms / 2);
                yield return new("\0inside", Fact.Reading.Frame, wound.Fault!.Share);
            }
            else
            {
                yield return new(coil.Coil.From, coil.Coil.To, ohms);
            }
        }

        foreach (var part in wound.Form.Parts)
        {
            yield return new(part.From, part.To, PartOhms(part, capacitorsPass, bridged, reset));
        }

        yield return new(Fact.Reading.Frame, Fact.Reading.Earth, 0.05);
    }

    private double? PartOhms(LayoutPart part, bool capacitorsPass, bool bridged, bool reset) => part.Kind switch
    {
        "switch" => wound.Has("start-switch-stuck-open", part.Id) ? null : 0,
        "protector" => wound.Has("protector-open", part.Id) && !reset ? null : _faults["protector-ohms"],
        "protector-heater" => new SeededSequence(wound.Seed, part.Id).Between(_faults["heater-low"], _faults["heater-high"]),
        _ when bridged => 0,
        _ => wound.Fault is { } fault && fault.At == part.Id && fault.Id.EndsWith("-shorted", StringComparison.Ordinal) ? 0.1
            : wound.Fault is { } open && open.At == part.Id && open.Id.EndsWith("-open", StringComparison.Ordinal) ? null
            : capacitorsPass ? 0 : null,
    };
}
