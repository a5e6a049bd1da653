using System.Numerics;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Practice;

/// <summary>The practice motor as coupled coils with a cage of two shorted windings at right angles.</summary>
internal sealed class CoupledModel(TradeKnowledge knowledge, Wound wound)
{
    private readonly TradeRule _rule = knowledge.Rules["practice-coils"];

    /// <summary>The coupling of two like coils on one axis at rest.</summary>
    public double AtRest => Coupling(_rule, wound.Cage, 1 / _rule["reactance-low"], wound.OnOwnPoles);

    /// <summary>Volts induced over volts applied of like coils with this cage, everything over the coil's reactance; on poles of their own they share only stray flux, and no cage.</summary>
    public static double Coupling(TradeRule rule, double cage, double ohms, bool onOwnPoles)
    {
        var through = rule["rotor-share"] * rule["rotor-share"] / new Complex(cage, 1);
        var mutual = onOwnPoles ? new Complex(0, rule["stray"]) : new Complex(0, rule["stator-share"]) + through;
        return (mutual / (new Complex(ohms, 1) + through)).Magnitude;
    }

    /// <summary>The network of the motor with nodes renamed as joints demand.</summary>
    /// <param name="node">The joint of a node of the layout.</param>
    /// <param name="hertz">Hertz of the supply.</param>
    /// <param name="turning">The rotor turns with the field: no cage current, and every coil sees the field of the others.</param>
    /// <param name="switchClosed">Whether the start switch is closed.</param>
    /// <param name="bridged">Whether the capacitors are bridged.</param>
    /// <param name="degrees">Other axes than the layout's, for a winding that changes its poles.</param>
    public (List<Element> Elements, List<Coupling> Couplings) Build(Func<string, string> node, double hertz, bool turning, bool switchClosed, bool bridged, IReadOnlyList<double>? degrees = null)
    {
        var elements = new List<Element>();
        var couplings = new List<Coupling>();
        var own = wound.OnOwnPoles && !turning;
        double Axis(int coil) => degrees?[coil] ?? wound.Coils[coil].Degrees;
        for (var one = 0; one < wound.Coils.Count; one++)
        {
            var coil = wound.Coils[one];
            var (ohms, reactance) = Health(coil);
            elements.Add(new Element.Inductor($"coil {one}", node(coil.Coil.From), node(coil.Coil.To), reactance / (2 * Math.PI * wound.Hertz), ohms));
            for (var other = 0; other < one; other++)
            {
                var strangers = coil.Coil.Group != wound.Coils[other].Coil.Group && wound.Form.Id == "two-speed-two-winding-6"; // other poles share no flux
                couplings.Add(new($"coil {one}", $"coil {other}", strangers ? 0 : (own ? _rule["stray"] : _rule["stator-share"]) * Cos(Axis(one) - Axis(other))));
            }
        }

        if (!turning && hertz > 0)
        {
            Cage(elements, couplings, own, Axis);
        }

        Parts(elements, node, switchClosed, bridged);
        return (elements, couplings);
    }

    /// <summary>Solves it; a motor without a solution is one that shorts its supply.</summary>
    public static Answer<Solution> Solve(List<Element> elements, List<Coupling> couplings, double hertz, string ground) =>
        NetworkSolver.Solve(new Network { Elements = elements, Couplings = couplings, Hertz = hertz, Ground = ground, IslandsAllowed = true });

    private void Cage(List<Element> elements, List<Coupling> couplings, bool own, Func<int, double> axisOf)
    {
        var reference = wound.Coils[0].Ohm;
        int PolesOf(int coil) => own ? coil : wound.Form.Id == "two-speed-two-winding-6" && wound.Coils[coil].Coil.Group != wound.Coils[0].Coil.Group ? 1 : 0;
        foreach (var axis in new[] { 0, 90 })
        {
            foreach (var poles in Enumerable.Range(0, wound.Coils.Count).Select(PolesOf).Distinct())
            {
                var name = $"cage {axis} {poles}";
                elements.Add(new Element.Inductor(name, name, $"{name} end", reference / (2 * Math.PI * wound.Hertz)));
                elements.Add(new Element.Resistor($"{name} ohms", name, $"{name} end", reference * wound.Cage));
                couplings.AddRange(Enumerable.Range(0, wound.Coils.Count).Where(coil => poles == PolesOf(coil))
                    .Select(coil => new Coupling($"coil {coil}", name, _rule["rotor-share"] * Cos(axisOf(coil) - axis))));
            }
        }
    }

    private void Parts(List<Element> elements, Func<string, string> node, bool switchClosed, bool bridged)
    {
        foreach (var part in wound.Form.Parts)
        {
            var (from, to) = (node(part.From), node(part.To));
            elements.Add(part.Kind switch
            {
                "switch" => new Element.Switch(part.Id, from, to,
                    (switchClosed || wound.Has("start-switch-stuck-closed", part.Id)) && !wound.Has("start-switch-stuck-open", part.Id)),
                "protector" => new Element.Switch(part.Id, from, to, !wound.Has("protector-open", part.Id)),
                "protector-heater" => new Element.Resistor(part.Id, from, to, 0.1),
                _ when bridged => new Element.Switch(part.Id, from, to, closed: true),
                _ => CapacitorOf(part.Id, part.Kind, from, to),
            });
        }
    }

    /// <summary>A capacitor of the motor between two joints.</summary>
    public Element CapacitorOf(string id, string kind, string from, string to)
    {
        var marked = kind == "start-capacitor" ? wound.Machine.StartMicrofarads : wound.Machine.RunMicrofarads;
        return wound.Fault is not { } fault || fault.At != id ? new Element.Capacitor(id, from, to, marked)
            : fault.Id.EndsWith("-open", StringComparison.Ordinal) ? new Element.Switch(id, from, to, closed: false)
            : fault.Id.EndsWith("-shorted", StringComparison.Ordinal) ? new Element.Resistor(id, from, to, 0.1)
            : new Element.Capacitor(id, from, to, marked * fault.Share);
    }

    private (double Ohms, double Reactance) Health(WoundCoil coil) => wound.Fault is not { } fault || fault.At != coil.Coil.Id ? (coil.Ohms, coil.Ohm)
        : fault.Id.StartsWith("open-", StringComparison.Ordinal) || fault.Id == "field-open" ? (1e9, coil.Ohm)
        : fault.Id.StartsWith("shorted-", StringComparison.Ordinal) ? (coil.Ohms * fault.Share, coil.Ohm * fault.Share * fault.Share)
        : (coil.Ohms, coil.Ohm);

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);
}
