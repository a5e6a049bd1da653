using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>A winding layout: coils as edges between nodes, which nodes come out, and how it is connected.</summary>
public sealed record Layout
{
    /// <summary>A layout id of the contract.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary><c>single-phase</c>, <c>three-phase</c>, <c>commutator</c> or <c>sealed</c>.</summary>
    public required string Family { get; init; }

    /// <summary>How often it is met among motors with its lead count, against the other layouts with that count; any positive scale.</summary>
    public required double Weight { get; init; }

    /// <summary><c>none</c>, <c>start</c>, <c>run</c> or <c>both</c>: the capacitors that such a motor has.</summary>
    public string Capacitor { get; init; } = "none";

    /// <summary>Whether there is a capacitor, inside or outside.</summary>
    public bool HasCapacitor => Capacitor != "none";

    /// <summary>The coils.</summary>
    public required IReadOnlyList<LayoutCoil> Coils { get; init; }

    /// <summary>Switch, capacitor and protector: what stands in series with coils inside the motor.</summary>
    public IReadOnlyList<LayoutPart> Parts { get; init; } = [];

    /// <summary>The leads that come out.</summary>
    public required IReadOnlyList<LayoutLead> Leads { get; init; }

    /// <summary>How the resistances of groups of like coils stand to each other.</summary>
    public IReadOnlyList<ResistanceRatio> Ratios { get; init; } = [];

    /// <summary>The connection tables.</summary>
    public IReadOnlyList<LayoutConnection> Connections { get; init; } = [];

    /// <summary>Why it cannot be reversed by its leads, as a sentence id; <see langword="null"/> where it can.</summary>
    public string? NotReversible { get; init; }

    /// <summary>Why no connection table is given for it, as a sentence id; <see langword="null"/> where there is one.</summary>
    public string? NotConnected { get; init; }

    /// <summary>What must be said whenever it is in question, as sentence ids: what ohms never tell, what must not be done.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>Absolute ohms met in ordinary motors: plausibility, never pass or fail.</summary>
    public IReadOnlyList<OhmsWindow> Ohms { get; init; } = [];

    /// <summary>Other insides or other leads of the same kind of motor; see <see cref="Forms"/>.</summary>
    public IReadOnlyList<LayoutVariant> Variants { get; init; } = [];

    /// <summary>The variant that this record is the form of; <see langword="null"/> for the layout as it stands.</summary>
    public string? Form { get; init; }

    /// <summary>The layout as it stands, then each variant as a whole layout of the same id, marked by <see cref="Form"/>.</summary>
    public IReadOnlyList<Layout> Forms() => [this, .. Variants.Select(variant => variant.Of(this))];

    /// <summary>The node that a lead is tied to.</summary>
    /// <param name="marking">A marking of this layout, in either standard.</param>
    /// <exception cref="ArgumentException">No lead carries the marking.</exception>
    public string NodeOf(string marking) => LeadOf(marking) is { } found
        ? found.Node ?? found.Marking
        : throw new ArgumentException($"'{marking}' is no lead of {Id}.", nameof(marking));

    /// <summary>The lead that carries a marking in either standard; <see langword="null"/> for none.</summary>
    /// <param name="marking">A marking.</param>
    public LayoutLead? LeadOf(string marking) => Leads.FirstOrDefault(lead => lead.Bears(marking));

    /// <summary>Whether markings are those of all leads, in either standard.</summary>
    /// <param name="markings">Markings, each once.</param>
    public bool IsMarkedBy(IReadOnlyCollection<string> markings) => Leads.Count == markings.Count && markings.All(marking => LeadOf(marking) is not null);

    /// <summary>The coils on the shortest way of direct current between two leads at rest, capacitors taken off; <see langword="null"/> where there is no way.</summary>
    /// <param name="from">A marking of this layout.</param>
    /// <param name="to">Another marking of it.</param>
    /// <param name="bridged">Whether the places of capacitors are bridged.</param>
    public IReadOnlyList<LayoutCoil>? Way(string from, string to, bool bridged = false)
    {
        var ways = Coils.Select(coil => (coil.From, coil.To, Coil: (LayoutCoil?)coil))
            .Concat(Parts.Where(part => bridged || !part.IsCapacitor).Select(part => (part.From, part.To, Coil: (LayoutCoil?)null))).ToList();
        var reached = new List<(string Node, IReadOnlyList<LayoutCoil> Coils)> { (NodeOf(from), []) };
        for (var at = 0; at < reached.Count; at++)
        {
            var (node, coils) = reached[at];
            reached.AddRange(ways.Where(way => way.From == node || way.To == node)
                .Select(way => (way.From == node ? way.To : way.From, (IReadOnlyList<LayoutCoil>)(way.Coil is null ? coils : [.. coils, way.Coil])))
                .Where(next => !reached.Exists(one => one.Node == next.Item1)).ToList());
        }

        var end = NodeOf(to);
        return reached.Find(one => one.Node == end).Coils;
    }

    /// <summary>Where the markings, tables and ratios come from.</summary>
    public required Source Source { get; init; }
}

/// <summary>Another inside, or other leads, of the same kind of motor. What is left out is as in the layout.</summary>
public sealed record LayoutVariant
{
    /// <summary>Its id within the layout, for example <c>delta</c> or <c>protector-2</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>On the scale of <see cref="Layout.Weight"/>.</summary>
    public required double Weight { get; init; }

    /// <summary>In place of <see cref="Layout.Capacitor"/>.</summary>
    public string? Capacitor { get; init; }

    /// <summary>In place of <see cref="Layout.Coils"/>.</summary>
    public IReadOnlyList<LayoutCoil>? Coils { get; init; }

    /// <summary>In place of <see cref="Layout.Parts"/>.</summary>
    public IReadOnlyList<LayoutPart>? Parts { get; init; }

    /// <summary>In place of <see cref="Layout.Leads"/>.</summary>
    public IReadOnlyList<LayoutLead>? Leads { get; init; }

    /// <summary>In place of <see cref="Layout.Ratios"/>.</summary>
    public IReadOnlyList<ResistanceRatio>? Ratios { get; init; }

    /// <summary>In place of <see cref="Layout.Ohms"/>.</summary>
    public IReadOnlyList<OhmsWindow>? Ohms { get; init; }

    /// <summary>In place of <see cref="Layout.Connections"/>.</summary>
    public IReadOnlyList<LayoutConnection>? Connections { get; init; }

    /// <summary>In place of <see cref="Layout.NotReversible"/>.</summary>
    public string? NotReversible { get; init; }

    /// <summary>In place of <see cref="Layout.NotConnected"/>; goes with an empty <see cref="Connections"/>.</summary>
    public string? NotConnected { get; init; }

    /// <summary>Beside <see cref="Layout.Warnings"/>.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>Where it differs from the layout's source.</summary>
    public Source? Source { get; init; }

    internal Layout Of(Layout layout) => layout with
    {
        Form = Id,
        Name = Name,
        Weight = Weight,
        Capacitor = Capacitor ?? layout.Capacitor,
        Coils = Coils ?? layout.Coils,
        Parts = Parts ?? layout.Parts,
        Leads = Leads ?? layout.Leads,
        Ratios = Ratios ?? layout.Ratios,
        Ohms = Ohms ?? layout.Ohms,
        Connections = Connections ?? layout.Connections,
        NotReversible = NotReversible ?? layout.NotReversible,
        NotConnected = NotConnected ?? layout.NotConnected,
        Warnings = [.. layout.Warnings, .. Warnings],
        Source = Source ?? layout.Source,
        Variants = [],
    };
}

/// <summary>Ohms of one coil of a group as met in ordinary motors.</summary>
public sealed record OhmsWindow
{
    /// <summary>The group.</summary>
    public required string Of { get; init; }

    /// <summary>The least usual ohms.</summary>
    public required double Low { get; init; }

    /// <summary>The greatest usual ohms.</summary>
    public required double High { get; init; }

    /// <summary>Where the window comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>One coil.</summary>
public sealed record LayoutCoil
{
    /// <summary>Its id within the layout.</summary>
    public required string Id { get; init; }

    /// <summary>A winding role of the contract: <c>run</c>, <c>start</c>, <c>phase</c>, …</summary>
    public required string Role { get; init; }

    /// <summary>The node of its start: the dotted end.</summary>
    public required string From { get; init; }

    /// <summary>The node of its finish.</summary>
    public required string To { get; init; }

    /// <summary>Its magnetic axis in electrical degrees.</summary>
    public double Axis { get; init; }

    /// <summary>Coils of one group are alike: same wire, same turns, same resistance.</summary>
    public required string Group { get; init; }

    /// <summary>Rated volts of this coil as a share of the plate's lowest voltage, at its right connection.</summary>
    public double RatedShare { get; init; } = 1;

    /// <summary>Resistance changes as the shaft is turned (an armature).</summary>
    public bool ChangesWithShaft { get; init; }
}

/// <summary>A part in the way of the meter or the current.</summary>
public sealed record LayoutPart
{
    /// <summary>Its id within the layout.</summary>
    public required string Id { get; init; }

    /// <summary><c>switch</c>, <c>start-capacitor</c>, <c>run-capacitor</c>, <c>protector</c>, <c>protector-heater</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>The node of one terminal.</summary>
    public required string From { get; init; }

    /// <summary>The node of the other terminal.</summary>
    public required string To { get; init; }

    /// <summary>Whether it is a capacitor of either kind.</summary>
    public bool IsCapacitor => Kind.EndsWith("capacitor", StringComparison.Ordinal);
}

/// <summary>A lead that comes out.</summary>
public sealed record LayoutLead
{
    /// <summary>The marking of NEMA MG 1.</summary>
    public required string Marking { get; init; }

    /// <summary>The marking of IEC 60034-8.</summary>
    public string? Iec { get; init; }

    /// <summary>Markings that are met beside those of both standards.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>The node it is tied to; the marking where nothing else is said.</summary>
    public string? Node { get; init; }

    /// <summary>The colour that a standard or a habit gives it; never proof.</summary>
    public string? Colour { get; init; }

    /// <summary>Whether it carries a marking, in either standard or as it is met beside them, in any case.</summary>
    /// <param name="marking">A marking.</param>
    public bool Bears(string marking) =>
        string.Equals(Marking, marking, StringComparison.OrdinalIgnoreCase) || string.Equals(Iec, marking, StringComparison.OrdinalIgnoreCase)
        || Also.Contains(marking, StringComparer.OrdinalIgnoreCase);
}

/// <summary>How the coil resistance of one group stands to that of another.</summary>
public sealed record ResistanceRatio
{
    /// <summary>The group above the line.</summary>
    public required string Of { get; init; }

    /// <summary>The group below the line.</summary>
    public required string To { get; init; }

    /// <summary>The least ratio met.</summary>
    public required double Low { get; init; }

    /// <summary>The greatest ratio met.</summary>
    public required double High { get; init; }

    /// <summary>Where the range comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>One row of a connection table.</summary>
public sealed record LayoutConnection
{
    /// <summary>Its id within the layout, for example <c>high-counterclockwise</c>.</summary>
    public required string Id { get; init; }

    /// <summary><c>low</c>, <c>high</c> or <c>only</c> plate voltage; or <c>low-star</c>, <c>high-delta</c>, a speed, …</summary>
    public required string For { get; init; }

    /// <summary>Line volts of this row as a multiple of the plate's lowest voltage.</summary>
    public double VoltsShare { get; init; } = 1;

    /// <summary><c>clockwise</c>, <c>counterclockwise</c>, or <see langword="null"/> where the row does not settle it.</summary>
    public string? Rotation { get; init; }

    /// <summary><c>shaft-end</c> or <c>opposite-end</c>: where <see cref="Rotation"/> is seen from.</summary>
    public string? SeenFrom { get; init; }

    /// <summary>Used only for the seconds of starting, on the way to another row (part-winding start).</summary>
    public bool Starting { get; init; }

    /// <summary>The leads on each line conductor, by conductor name: <c>L1</c>, <c>L2</c>, <c>L3</c>, <c>N</c>, or <c>+</c> and <c>-</c> for DC.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<string>> Lines { get; init; }

    /// <summary>Leads joined with each other and with nothing else.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Joints { get; init; } = [];

    /// <summary>Leads capped one by one.</summary>
    public IReadOnlyList<string> Capped { get; init; } = [];

    /// <summary>Exchanges that turn the direction round, each a pair of leads; empty where lines are swapped or it cannot be.</summary>
    public IReadOnlyList<IReadOnlyList<string>> ReverseSwap { get; init; } = [];

    /// <summary>The two line conductors whose exchange turns the direction round; empty where that does nothing.</summary>
    public IReadOnlyList<string> ReverseLines { get; init; } = [];

    /// <summary>A part outside the motor that this row needs between two leads: its capacitor, or a relay that opens after the start; <see langword="null"/> for none.</summary>
    public LayoutPart? OuterPart { get; init; }

    /// <summary>In place of <see cref="LayoutCoil.RatedShare"/> at this row, by group (two-speed windings).</summary>
    public IReadOnlyDictionary<string, double> RatedShares { get; init; } = new Dictionary<string, double>();

    /// <summary>Where this row comes from, where it differs from the layout's source.</summary>
    public Source? Source { get; init; }
}
