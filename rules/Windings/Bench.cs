using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>One identification's working table: leads and readings as numbers, the patterns in question with their weights.</summary>
internal sealed class Bench
{
    private readonly IdentificationInput _input;
    private readonly IdentificationFigures _figures;
    private readonly PatternBook _book;
    private readonly string?[] _markings;
    private readonly bool[] _beside;
    private readonly int[] _atRings;
    private readonly Lazy<IReadOnlyList<Search>> _faulty;
    private readonly Dictionary<Pattern, int[]> _marked = [];

    public Bench(IdentificationInput input, IdentificationFigures figures, PatternBook book, IReadOnlyList<Measured> readings, AxisEvidence axes, double testVolts)
    {
        (_input, _figures, _book, Axes, TestVolts) = (input, figures, book, axes, testVolts);
        Leads = input.Leads;
        Readings = readings;
        Meter = new(figures, input.Meter);
        Terms = new(figures.KickSeen.Value, figures.SlipSpread.Value, figures.ProtectorOhmsMost.Value);
        _markings = [.. input.Leads.Select(lead => input.Markings.GetValueOrDefault(lead))];
        HasMarkings = Array.Exists(_markings, marking => marking is not null);
        Turning = [.. Readings.Where(reading => input.Readings[reading.Index].ChangesWithShaft)];
        _atRings = [.. input.RingLeads.Select(tag => InputCheck.Lead(input.Leads, tag)).Where(lead => lead >= 0)];
        _beside = Array.ConvertAll(_markings, marking => marking is not null && book.Beside.Contains(marking));
        var patterns = book.Of(input.Leads.Count);
        Sound = States(patterns.Sound);
        _faulty = new(() => States(patterns.Faulty));
    }

    public IReadOnlyList<string> Leads { get; }

    public IReadOnlyList<Measured> Readings { get; }

    public MeterModel Meter { get; }

    public SearchTerms Terms { get; }

    public bool HasMarkings { get; }

    /// <summary>Readings that changed while the shaft was turned.</summary>
    public IReadOnlyList<Measured> Turning { get; }

    public IReadOnlyList<Search> Sound { get; }

    /// <summary>Motors with something the matter; looked at only when sound ones do not explain the readings.</summary>
    public IReadOnlyList<Search> Faulty => _faulty.Value;

    /// <summary>Those of the faulty motors in which something is open that should read.</summary>
    public IEnumerable<Search> Broken => Faulty.Where(state => state.Pattern.Condition.IsBreak);

    public IdentificationFigures Figures => _figures;

    public IdentificationInput Input => _input;

    /// <summary>The volts that a winding is fed with for a test.</summary>
    public double TestVolts { get; }

    /// <summary>What tests between windings have shown.</summary>
    public AxisEvidence Axes { get; }

    /// <summary>Some of the leads with what was read between them, as if there were no others; tests between windings are left aside.</summary>
    /// <param name="leads">Numbers of leads, rising.</param>
    /// <param name="readings">The readings.</param>
    public Bench Part(int[] leads, IReadOnlyList<Measured> readings) => new(
        _input with { Leads = [.. leads.Select(lead => Leads[lead])] }, _figures, _book,
        [.. readings.Select(reading => reading with { First = Array.IndexOf(leads, reading.First), Second = Array.IndexOf(leads, reading.Second) }).Where(reading => reading is { First: >= 0, Second: >= 0 })],
        Axes.WithoutAny(), TestVolts);

    /// <summary>What speaks for or against an explanation besides the readings: the armature, the leads of slip rings, tests between windings, printed markings.</summary>
    public double Outside(Leaf leaf)
    {
        var turned = Axes.LogOf(leaf) + (Turning.Count == 0 ? 0 : Turning.Sum(reading => leaf.TerminalOf[reading.First] >= 0 && !ThroughArmature(leaf, reading) ? Math.Log(_figures.TurningMistaken.Value) : 0))
            + (_atRings.Count(lead => leaf.TerminalOf[lead] >= 0 && !IsOfRotor(leaf.Pattern, leaf.TerminalOf[lead])) * Math.Log(_figures.RingLeadMistaken.Value));
        if (!HasMarkings)
        {
            return turned;
        }

        var marked = Marked(leaf.Pattern);
        var against = 0;
        for (var lead = 0; lead < marked.Length; lead++)
        {
            against += _markings[lead] is not null && leaf.TerminalOf[lead] >= 0 && !Agrees(leaf, lead, marked) ? 1 : 0;
        }

        return turned + (against * Math.Log(_figures.MarkingMistaken.Value));
    }

    /// <summary>Whether a lead carries a marking that no lead of this motor has, while some do: it may be another motor with joints still made.</summary>
    /// <param name="pattern">The motor.</param>
    public bool HasStrangeMarking(Pattern pattern) => HasMarkings && Marked(pattern) is var marked
        && marked.Where((terminal, lead) => terminal < 0 && _markings[lead] is not null && !_beside[lead]).Any() && marked.Any(terminal => terminal >= 0);

    /// <summary>A winding whose leads are marked as those of a winding of another role; <see langword="null"/> where there is none.</summary>
    /// <param name="leaf">What is believed of the leads.</param>
    public IReadOnlyList<string>? MarkedAsAnother(Leaf leaf)
    {
        if (!HasMarkings)
        {
            return null;
        }

        var (marked, leadOf) = (Marked(leaf.Pattern), RoleKeys.LeadOf(leaf));
        return leaf.Pattern.Windings.Where(winding => !winding.Junction).Select(winding => (winding.Role, Leads: winding.Terminals.Select(terminal => leadOf[terminal]).ToArray()))
            .Where(one => leaf.Pattern.Windings.Any(other => other.Role != one.Role && one.Leads.All(lead => other.Terminals.Contains(marked[lead]))))
            .Select(one => (IReadOnlyList<string>)[.. one.Leads.Order().Select(lead => Leads[lead])]).FirstOrDefault();
    }

    /// <summary>By lead the terminal that its marking names; −1 where there is none.</summary>
    private int[] Marked(Pattern pattern)
    {
        if (!_marked.TryGetValue(pattern, out var terminals))
        {
            terminals = Array.ConvertAll(_markings, marking => marking is null ? -1 : Terminal(pattern, marking));
            _marked.Add(pattern, terminals);
        }

        return terminals;
    }

    /// <summary>The terminal that carries a marking in either standard; −1 for none.</summary>
    public static int Terminal(Pattern pattern, string marking)
    {
        var leads = pattern.Layout.Leads;
        for (var index = 0; index < leads.Count; index++)
        {
            if (leads[index].Bears(marking))
            {
                return index;
            }
        }

        return -1;
    }

    /// <summary>A marking agrees when the lead stands to all other marked leads as the marked terminals stand to each other: exchanges that no reading shows do not count, but that of a rotor and its stator, which only the marking tells.</summary>
    private bool Agrees(Leaf leaf, int lead, int[] marked)
    {
        var terminal = marked[lead];
        if (terminal < 0)
        {
            return _beside[lead] && leaf.Pattern.Windings.Any(winding => winding.Role is "protector" or "other" && winding.Terminals.Contains(leaf.TerminalOf[lead]));
        }

        if (IsOfRotor(leaf.Pattern, terminal) != IsOfRotor(leaf.Pattern, leaf.TerminalOf[lead]))
        {
            return false;
        }

        var pattern = leaf.Pattern.SoundTwin ?? leaf.Pattern;
        var (fits, all) = (0, 0);
        for (var other = 0; other < marked.Length; other++)
        {
            var twin = marked[other];
            if (other != lead && twin >= 0 && twin != terminal && leaf.TerminalOf[other] >= 0)
            {
                all++;
                fits += pattern.Links[leaf.TerminalOf[lead]][leaf.TerminalOf[other]] == pattern.Links[terminal][twin]
                    && pattern.Formula[leaf.TerminalOf[lead]][leaf.TerminalOf[other]] == pattern.Formula[terminal][twin] ? 1 : 0;
            }
        }

        return all == 0 || 2 * fits > all;
    }

    private static bool ThroughArmature(Leaf leaf, Measured reading) => leaf.Pattern.Windings.Any(winding =>
        winding.Terminals.Contains(leaf.TerminalOf[reading.First]) && winding.Terminals.Contains(leaf.TerminalOf[reading.Second])
        && leaf.Pattern.Layout.Coils.Any(coil => coil.ChangesWithShaft && winding.Coils.Contains(coil.Id)));

    private static bool IsOfRotor(Pattern pattern, int terminal) => pattern.Windings.Any(winding => winding.Role == "rotor" && winding.Terminals.Contains(terminal));

    private List<Search> States(IReadOnlyList<Pattern> patterns)
    {
        var states = new List<Search>();
        foreach (var pattern in patterns)
        {
            var weight = Weight(pattern);
            if (!double.IsNegativeInfinity(weight))
            {
                states.Add(new(pattern, pattern.LogPrior + weight));
            }
        }

        return states;
    }

    private double Weight(Pattern pattern)
    {
        var layout = pattern.Layout;
        var brushesSaid = _input.Plate.Phases == 0 || Turning.Count > 0 || _input.Looks?.Brushes == true;
        var log = layout.Family == "commutator" && !brushesSaid ? Math.Log(_figures.BrushesUnsaid.Value) : 0;
        log += PlateWeight.Of(layout, _input.Plate, _figures);
        log += _input.CapacitorUse is { } use && layout.Capacitor != "none" && layout.Capacitor != use ? Math.Log(_figures.CapacitorMissed.Value) : 0;
        log += _input.HasCapacitor switch
        {
            true when layout.Capacitor == "none" => Math.Log(_figures.CapacitorMissed.Value),
            false when layout.Capacitor != "none" => Math.Log(_figures.CapacitorMissed.Value),
            _ => 0,
        };
        log += (_input.Looks?.Against(layout) ?? 0) * Math.Log(_figures.LookMissed.Value);
        return log + (layout.Parts.Any(part => part.Kind is "start-capacitor" or "run-capacitor") ? InTheWay(pattern) : 0);
    }

    private double InTheWay(Pattern pattern) => (pattern.CapacitorWithinReach ? _input.CapacitorBridged : null, pattern.Condition.Blocked) switch
    {
        (true, true) or (false, false) => Math.Log(_figures.CapacitorMissed.Value),
        (true, false) or (false, true) => 0,
        (_, true) => Math.Log(_figures.CapacitorInTheWay.Value),
        _ => Math.Log(1 - _figures.CapacitorInTheWay.Value),
    };
}
