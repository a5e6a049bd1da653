using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Where capacitor and switch stand, and which coils form the start branch.</summary>
internal sealed class PartPlaces
{
    private readonly FoundNodes _nodes;
    private readonly double _alike;
    private readonly List<CheckFinding> _findings = [];

    /// <param name="nodes">The connection.</param>
    /// <param name="alike">How near the ohms of alike windings lie, as a share.</param>
    public PartPlaces(FoundNodes nodes, double alike)
    {
        (_nodes, _alike) = (nodes, alike);
        var parts = FoundNodes.Parts(nodes.Found).Select(part => new Ended(part.Id, nodes.Of(part.From), nodes.Of(part.To))).ToList();
        Weak = nodes.Phases == 3 ? [] : [.. nodes.Coils.Where(coil => coil.Coil!.IsStart).Select(coil => coil.Id)];
        var capacitor = parts.Find(part => part.Id == FoundNodes.CapacitorId);
        var contact = parts.Find(part => part.Id == FoundNodes.SwitchId);
        Wires = [.. parts.Where(part => part.From != part.To && !Bridges(part))];
        if (capacitor is not null)
        {
            Capacitor(capacitor, nodes.Found.Capacitor!);
        }

        if (contact is not null)
        {
            Switch(contact, nodes.Found.Switch!);
        }
    }

    /// <summary>The ids of the coils of the start branch.</summary>
    public HashSet<string> Weak { get; private set; }

    /// <summary>Capacitor and switch where they stand in series with something, so that they count as wires for the volts.</summary>
    public IReadOnlyList<Ended> Wires { get; private set; }

    public IReadOnlyList<CheckFinding> Findings => _findings;

    /// <summary>Both ends on conductors, or across a winding that stays fed without it.</summary>
    private bool Bridges(Ended part) => Lost(part) is not { Count: > 0 };

    /// <summary>The coils that lose their way without the part; <see langword="null"/> where the part carries nothing itself.</summary>
    private HashSet<string>? Lost(Ended part)
    {
        var held = _nodes.Held().Keys.ToList();
        var others = FoundNodes.Parts(_nodes.Found).Where(one => one.Id != part.Id)
            .Select(one => new Ended(one.Id, _nodes.Of(one.From), _nodes.Of(one.To))).ToList();
        var with = Paths.Carrying([.. _nodes.Coils, .. others, part], held);
        if (!with.Contains(part.Id))
        {
            return null;
        }

        with.ExceptWith(Paths.Carrying([.. _nodes.Coils, .. others], held));
        with.Remove(part.Id);
        with.RemoveWhere(id => id is FoundNodes.CapacitorId or FoundNodes.SwitchId);
        return with;
    }

    private void Capacitor(Ended capacitor, FoundCapacitor found)
    {
        string[] about = [found.From, found.To];
        if (capacitor.From == capacitor.To)
        {
            Add("capacitor-bridged", Severity.Wrong, about, Statement.Of("check.capacitor-bridged"));
            return;
        }

        var lost = Lost(capacitor);
        if (lost is null)
        {
            Add("capacitor-open", Severity.Open, about, Statement.Of("check.capacitor-open"));
        }
        else if (lost.Count == 0 && !_nodes.Coils.Any(coil => coil.Coil!.IsPhase))
        {
            Add("capacitor-misplaced", Severity.Wrong, about, Statement.Of("check.capacitor-across"));
        }
        else if (_nodes.Phases == 1 && !lost.IsSubsetOf(Weak))
        {
            if (IsChangeover(lost))
            {
                Weak = lost;
            }
            else
            {
                Add("capacitor-misplaced", Severity.Wrong, [.. lost.Order(StringComparer.Ordinal)], Statement.Of("check.capacitor-in-run"));
            }
        }
    }

    /// <summary>Two alike windings, of which either may stand behind the capacitor: the way such motors are reversed.</summary>
    private bool IsChangeover(HashSet<string> behind)
    {
        var (inside, direct) = (_nodes.Found.Coils.Where(coil => behind.Contains(coil.Id)).ToList(), _nodes.Found.Coils.Where(coil => !behind.Contains(coil.Id)).ToList());
        return inside.Count == 1 && direct.Count == 1 && inside[0].Axis != direct[0].Axis && inside[0].RatedVolts == direct[0].RatedVolts
            && (inside[0].Ohms is { } one && direct[0].Ohms is { } other
                ? Math.Abs(one - other) <= _alike * Math.Max(one, other)
                : inside[0].Role == direct[0].Role);
    }

    private void Switch(Ended contact, FoundSwitch found)
    {
        string[] about = [found.From, found.To];
        if (contact.From == contact.To)
        {
            Add("switch-bridged", Severity.Wrong, about, Statement.Of("check.switch-bridged"));
            return;
        }

        var lost = Lost(contact);
        if (lost is null)
        {
            Add("switch-open-way", Severity.Open, about, Statement.Of("check.switch-open-way"));
        }
        else if (!lost.IsSubsetOf(Weak))
        {
            Add("switch-misplaced", Severity.Wrong, [.. lost.Order(StringComparer.Ordinal)], Statement.Of("check.switch-in-run"));
        }
        else if (lost.Count == 0)
        {
            var shorts = _nodes.Lines.ContainsKey(contact.From) && _nodes.Lines.ContainsKey(contact.To);
            Add(shorts ? "line-shorted" : "switch-misplaced", shorts ? Severity.Danger : Severity.Wrong, about, Statement.Of("check.switch-across"));
        }
    }

    private void Add(string rule, Severity severity, IReadOnlyList<string> about, Statement why) => _findings.Add(new(rule, severity, about, why));
}
