using System.Numerics;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>The nodes of a found connection, with the conductors on them.</summary>
internal sealed class FoundNodes
{
    private static readonly string[] LineNames = ["L1", "L2", "L3"];
    private readonly Ties _ties = new();
    private readonly Dictionary<string, string> _conductorNode = new(StringComparer.Ordinal);

    public FoundNodes(FoundConnection found)
    {
        Found = found;
        foreach (var coil in found.Coils)
        {
            _ties.Add(coil.From);
            _ties.Add(coil.To);
        }

        foreach (var part in Parts(found))
        {
            _ties.Add(part.From);
            _ties.Add(part.To);
        }

        foreach (var joint in found.Joints)
        {
            Tie(joint);
        }

        foreach (var tied in found.Inside.Concat(found.Protectors).Where(tied => tied.Count > 0))
        {
            _ties.TieAll(tied);
        }

        Lines = _conductorNode.GroupBy(line => _ties.GroupOf(line.Value)).ToDictionary(group => group.Key, group => group.Select(line => line.Key).Order(StringComparer.Ordinal).ToList());
        Phases = found.Phases ?? (_conductorNode.ContainsKey("L3") || found.Coils.Any(coil => coil.IsPhase) ? 3 : 1);
        Coils = [.. found.Coils.Select(coil => new Ended(coil.Id, Of(coil.From), Of(coil.To), coil))];
    }

    public FoundConnection Found { get; }

    /// <summary>The conductors on each node that has one.</summary>
    public Dictionary<int, List<string>> Lines { get; }

    public int Phases { get; }

    /// <summary>The coils with the nodes of their ends.</summary>
    public IReadOnlyList<Ended> Coils { get; }

    public int Count => _ties.Groups;

    /// <summary>Names in joints that belong to no coil and no part.</summary>
    public IEnumerable<string> StrayLeads => Found.Joints.SelectMany(joint => joint.Leads).Distinct(StringComparer.Ordinal).Where(lead => !IsKnown(lead)).Order(StringComparer.Ordinal);

    /// <summary>Whether a name is the end of a coil or a part.</summary>
    public bool IsKnown(string lead) => Found.Coils.Any(coil => coil.From == lead || coil.To == lead)
        || Parts(Found).Any(part => part.From == lead || part.To == lead) || Found.Inside.Concat(Found.Protectors).Any(tied => tied.Contains(lead));

    /// <summary>Whether two conductors of the supply meet in one node.</summary>
    public bool IsShorted => Lines.Values.Any(line => line.Count(IsLine) > 1);

    public IReadOnlyCollection<string> Conductors => _conductorNode.Keys;

    /// <summary>The line conductors of a three-phase supply that reach no lead.</summary>
    public IEnumerable<string> MissingLines => Phases == 3 ? LineNames.Where(line => !Conductors.Contains(line)) : [];

    public int Of(string name) => _ties.GroupOf(name);

    /// <summary>All names on a node, in order.</summary>
    public IEnumerable<string> NamesOn(int node) =>
        _ties.Nodes.Where(name => _ties.GroupOf(name) == node && !name.StartsWith('\u0001')).Order(StringComparer.Ordinal);

    /// <summary>The volts of a conductor.</summary>
    public Complex Volts(string conductor)
    {
        var volts = Found.SupplyVolts;
        if (Phases == 3)
        {
            return conductor switch
            {
                "L1" => volts / Math.Sqrt(3),
                "L2" => Complex.FromPolarCoordinates(volts / Math.Sqrt(3), -2 * Math.PI / 3),
                "L3" => Complex.FromPolarCoordinates(volts / Math.Sqrt(3), 2 * Math.PI / 3),
                _ => Complex.Zero,
            };
        }

        var middle = Conductors.Contains("N") && Conductors.Contains("L2");
        return conductor switch { "+" => volts, "L1" => middle ? volts / 2 : volts, "L2" => middle ? -volts / 2 : 0, _ => Complex.Zero };
    }

    /// <summary>Volts of the nodes that a conductor holds.</summary>
    public IReadOnlyDictionary<int, Complex> Held() =>
        Lines.Where(line => line.Value.Exists(IsLine)).ToDictionary(line => line.Key, line => Volts(line.Value.First(IsLine)));

    /// <summary>Whether it is a conductor of the supply and not the earth.</summary>
    public static bool IsLine(string conductor) => conductor != "PE";

    /// <summary>Capacitors and switches with their ends.</summary>
    public static IEnumerable<(string Id, string From, string To)> Parts(FoundConnection found) =>
    [
        .. found.Capacitors.Select((capacitor, index) => ($"{CapacitorId}{index}", capacitor.From, capacitor.To)),
        .. found.Switches.Select((contact, index) => ($"{SwitchId}{index}", contact.From, contact.To)),
    ];

    internal const string CapacitorId = "\u0001capacitor ";

    internal const string SwitchId = "\u0001switch ";

    private void Tie(FoundJoint joint)
    {
        foreach (var lead in joint.Leads)
        {
            _ties.Add(lead);
        }

        if (joint.Leads.Count > 0)
        {
            _ties.TieAll(joint.Leads);
        }

        if (joint.Conductor is { } conductor)
        {
            var node = $"\u0001{conductor}";
            _ties.Add(node);
            _conductorNode[conductor] = node;
            if (joint.Leads.Count > 0)
            {
                _ties.Tie(node, joint.Leads[0]);
            }
        }
    }
}

/// <summary>A two-ended thing with the nodes of its ends.</summary>
/// <param name="Id">Its id.</param>
/// <param name="From">The node of its start.</param>
/// <param name="To">The node of its finish.</param>
/// <param name="Coil">The coil; <see langword="null"/> for a capacitor or switch.</param>
internal sealed record Ended(string Id, int From, int To, FoundCoil? Coil = null)
{
    /// <summary>Whether it is a capacitor.</summary>
    public bool IsCapacitor => Id.StartsWith(FoundNodes.CapacitorId, StringComparison.Ordinal);

    /// <summary>Whether it is a switch.</summary>
    public bool IsSwitch => Id.StartsWith(FoundNodes.SwitchId, StringComparison.Ordinal);
}
