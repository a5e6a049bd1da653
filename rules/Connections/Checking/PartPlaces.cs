using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Where capacitors and switches stand, and which coils form the start branch.</summary>
internal sealed class PartPlaces
{
    private readonly FoundNodes _nodes;
    private readonly double _alike;
    private readonly IReadOnlyCollection<int> _held;
    private readonly List<Ended> _parts;
    private readonly List<CheckFinding> _findings = [];

    /// <param name="nodes">The connection.</param>
    /// <param name="alike">How near the ohms of alike windings lie, as a share.</param>
    public PartPlaces(FoundNodes nodes, double alike)
    {
        (_nodes, _alike) = (nodes, alike);
        _held = [.. nodes.Held().Keys];
        _parts = [.. FoundNodes.Parts(nodes.Found).Select(part => new Ended(part.Id, nodes.Of(part.From), nodes.Of(part.To)))];
        Weak = nodes.Phases == 3 ? [] : [.. nodes.Coils.Where(coil => coil.Coil!.IsStart).Select(coil => coil.Id)];
        Wires = [.. _parts.Where(part => part.From != part.To && Lost(part) is { Count: > 0 })];
        foreach (var (capacitor, found) in _parts.Where(part => part.IsCapacitor).Zip(nodes.Found.Capacitors))
        {
            Capacitor(capacitor, [found.From, found.To]);
        }

        foreach (var (contact, found) in _parts.Where(part => part.IsSwitch).Zip(nodes.Found.Switches))
        {
            Switch(contact, [found.From, found.To]);
        }

        // Two alike windings without a capacitor: neither of them is a start branch.
        if (!Wires.Any(wire => wire.IsCapacitor) && nodes.Coils.Select(coil => coil.Coil!.Role).Distinct(StringComparer.Ordinal).Count() == 1 && IsChangeover(Weak))
        {
            Weak = [];
        }
    }

    /// <summary>The ids of the coils of the start branch.</summary>
    public HashSet<string> Weak { get; private set; }

    /// <summary>Capacitors and switches where they stand in series with something, so that they count as wires for the volts.</summary>
    public IReadOnlyList<Ended> Wires { get; }

    public IReadOnlyList<CheckFinding> Findings => _findings;

    /// <summary>The wires that are left while running: switches open, and where start capacitors go with them, without the run capacitors that are meant to stay.</summary>
    public IReadOnlyList<Ended> WiresOnceOpen()
    {
        var closed = _parts.Where(part => !part.IsSwitch).ToList();
        var staying = Staying(Carrying(_parts), Carrying(closed));
        return [.. Wires.Where(wire => !wire.IsSwitch && !staying.Contains(wire))];
    }

    /// <summary>The coils that lose their way without the part; <see langword="null"/> where the part carries nothing itself.</summary>
    private HashSet<string>? Lost(Ended part)
    {
        // Several capacitors stand side by side in one branch, so each is looked at without the others; only where it then carries nothing they form a string.
        List<Ended> alone = [.. _parts.Where(other => !other.IsCapacitor || other == part)];
        var among = part.IsCapacitor
            ? Carrying(alone).Contains(part.Id) ? alone : _parts
            : [.. _parts.Except(Staying(Carrying(_parts), Carrying(Without(_parts, part))))];
        var with = Carrying(among);
        if (!with.Contains(part.Id))
        {
            return null;
        }

        with.ExceptWith(Carrying(Without(among, part)));
        with.IntersectWith(_nodes.Coils.Select(coil => coil.Id));
        return with;
    }

    /// <summary>The run capacitors of a motor that has start capacitors too: those that still carry when the others have been switched off.</summary>
    private List<Ended> Staying(HashSet<string> before, HashSet<string> after)
    {
        var capacitors = _parts.Where(part => part.IsCapacitor && before.Contains(part.Id)).ToList();
        return capacitors.TrueForAll(capacitor => after.Contains(capacitor.Id)) ? [] : [.. capacitors.Where(capacitor => after.Contains(capacitor.Id))];
    }

    private HashSet<string> Carrying(List<Ended> parts) => Paths.Carrying([.. _nodes.Coils, .. parts], _held);

    private static List<Ended> Without(List<Ended> parts, Ended part) => [.. parts.Where(other => other != part)];

    private void Capacitor(Ended capacitor, string[] about)
    {
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

    private void Switch(Ended contact, string[] about)
    {
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
