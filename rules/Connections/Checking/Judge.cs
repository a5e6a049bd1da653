using System.Numerics;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Finds what is wrong with a connection from the volts that it gives each coil.</summary>
internal sealed class Judge
{
    private const string SpeedTap = "speed-tap";
    private const double Quarter = 90;
    private static readonly string[] AxisNames = ["a", "b", "c"];
    private readonly TradeRule _limits;
    private readonly double _degrees;
    private readonly FindingList _findings = new();
    private readonly IReadOnlyList<Ended> _coils;

    public Judge(FoundNodes nodes, TradeKnowledge knowledge)
    {
        Nodes = nodes;
        _coils = nodes.Coils;
        _limits = knowledge.Rules["check-volts"];
        _degrees = knowledge.Rules["check-angle"]["degrees"];
        SupplyFindings.Add(nodes, _findings);
        if (nodes.IsShorted)
        {
            Places = null;
            Volts = [];
            return;
        }

        Places = new PartPlaces(nodes, knowledge.Rules["check-equal-windings"]["share"]);
        _findings.AddRange(Places.Findings);
        Volts = DesignVolts.Of(nodes, coil => Places.Weak.Contains(coil.Id), Places.Wires);
        Unfed();
        Rings();
        Taps();
        Sizes();
        Senses();
        StartBranches();
    }

    public FoundNodes Nodes { get; }

    public PartPlaces? Places { get; }

    /// <summary>The volts that the connection itself gives each coil; empty on a shorted supply.</summary>
    public IReadOnlyList<Complex> Volts { get; }

    /// <summary>The findings, the worst first.</summary>
    public IReadOnlyList<CheckFinding> Findings => _findings.WorstFirst;

    public Verdict Verdict => _findings.Verdict;

    /// <summary>Whether every coil is fed and all of them add to one field, whatever the size of their volts.</summary>
    public bool IsOneField => Enumerable.Range(0, Volts.Count).All(IsFed)
        && _findings.All.All(finding => finding.Rule is not ("halves-opposed" or "start-halves-opposed" or "phases-mixed" or "phase-reversed" or "field-uneven"));

    /// <summary>Whether a coil gets any volts worth speaking of.</summary>
    public bool IsFed(int coil) => Share(coil) >= _limits["none"];

    private double Share(int coil) => Volts[coil].Magnitude / _coils[coil].Coil!.RatedVolts;

    private void Unfed()
    {
        var resting = RestingSet();
        for (var index = 0; index < _coils.Count; index++)
        {
            if (IsFed(index))
            {
                continue;
            }

            var (coil, ended) = (_coils[index].Coil!, _coils[index]);
            if (ended.From == ended.To)
            {
                var coupled = IsCoupled(coil);
                Add("coil-shorted", coupled ? Severity.Danger : Severity.Wrong, [coil.Id], Statement.Of(
                    coupled ? "check.coil-shorted" : "check.coil-on-one-point", ("coil", coil.Called), ("leads", $"{coil.From} + {coil.To}")));
            }
            else if (coil.MayRest || resting.Contains(coil.Id))
            {
                Add("winding-at-rest", Severity.Note, [coil.Id], Statement.Of("check.winding-at-rest", ("coil", coil.Called)));
            }
            else
            {
                var loose = new[] { coil.From, coil.To }.Where(name => IsLoose(name)).ToList();
                var rule = Places!.Weak.Contains(coil.Id) ? "start-branch-open" : loose.Count > 0 ? "lead-open" : "winding-not-fed";
                Add(rule, Severity.Open, [coil.Id, .. loose], Statement.Of(
                    rule switch { "start-branch-open" => "check.start-branch-open", "lead-open" => "check.lead-open", _ => "check.winding-not-fed" },
                    ("coil", coil.Called), ("leads", loose.Count > 0 ? string.Join(", ", loose) : $"{coil.From}, {coil.To}")));
            }
        }
    }

    /// <summary>Whether a coil that is fed drives its flux through this one.</summary>
    private bool IsCoupled(FoundCoil coil) => Enumerable.Range(0, _coils.Count)
        .Any(other => _coils[other].Coil != coil && (coil.IsPhase || _coils[other].Coil!.Axis == coil.Axis) && IsFed(other));

    /// <summary>Two speeds joined, or halves tied into a ring: the coils that are fed induce a current round it.</summary>
    private void Rings()
    {
        var open = Enumerable.Range(0, _coils.Count).Where(index => !IsFed(index) && _coils[index].From != _coils[index].To).Select(index => _coils[index]).ToList();
        foreach (var ring in ClosedLoops.Of(open).Where(ring => ring.Any(coil => IsCoupled(coil.Coil!))))
        {
            Add("coil-shorted", Severity.Danger, [.. ring.Select(coil => coil.Id)], Statement.Of(
                "check.ring-closed", ("coils", string.Join(" + ", ring.Select(coil => coil.Coil!.Called)))));
        }
    }

    /// <summary>Speed taps that the line feeds without the run winding.</summary>
    private void Taps()
    {
        var fed = Enumerable.Range(0, _coils.Count).Where(index => IsFed(index) && !Places!.Weak.Contains(_coils[index].Id)).Select(index => _coils[index].Coil!).ToList();
        if (fed.Count > 0 && fed.TrueForAll(coil => coil.Role == SpeedTap))
        {
            Add("taps-alone", Severity.Danger, [.. fed.Select(coil => coil.Id)], Statement.Of("check.taps-alone", ("coils", string.Join(" + ", fed.Select(coil => coil.Called)))));
        }
    }

    /// <summary>A second three-phase winding for another speed: its coils have other ohms, none is fed, and it must lie open.</summary>
    private HashSet<string> RestingSet()
    {
        var resting = Enumerable.Range(0, _coils.Count).Where(index => _coils[index].Coil!.IsPhase && !IsFed(index)).Select(index => _coils[index].Coil!).ToList();
        var working = Enumerable.Range(0, _coils.Count).Where(index => _coils[index].Coil!.IsPhase && IsFed(index)).Select(index => _coils[index].Coil!).ToList();
        bool Whole(List<FoundCoil> set) => AxisNames.All(axis => set.Exists(coil => coil.Axis == axis));
        var apart = resting.TrueForAll(coil => IsLooseOrInside(coil, resting)) && resting.TrueForAll(coil => coil.Ohms is not null) && working.TrueForAll(coil => coil.Ohms is not null);
        return Whole(resting) && Whole(working) && apart && !ClosedLoops.Of([.. _coils.Where(coil => resting.Contains(coil.Coil!) && coil.From != coil.To)]).Any() && Differ(resting.Average(coil => coil.Ohms!.Value), working.Average(coil => coil.Ohms!.Value))
            ? [.. resting.Select(coil => coil.Id)]
            : [];
    }

    private bool IsLooseOrInside(FoundCoil coil, List<FoundCoil> set) =>
        new[] { Nodes.Of(coil.From), Nodes.Of(coil.To) }.All(node => !Nodes.Lines.ContainsKey(node)
            && _coils.All(other => (other.From != node && other.To != node) || set.Contains(other.Coil!)));

    private static bool Differ(double one, double other) => Math.Abs(one - other) > 0.1 * Math.Max(one, other);

    private bool IsLoose(string name)
    {
        var node = Nodes.Of(name);
        return !Nodes.Lines.ContainsKey(node) && _coils.Sum(coil => (coil.From == node ? 1 : 0) + (coil.To == node ? 1 : 0)) < 2
            && FoundNodes.Parts(Nodes.Found).All(part => Nodes.Of(part.From) != node && Nodes.Of(part.To) != node);
    }

    private void Sizes()
    {
        // A speed tap in series is there to take volts from the run winding.
        var tapped = Enumerable.Range(0, _coils.Count).Any(index => _coils[index].Coil!.Role == SpeedTap && IsFed(index))
            && Nodes.Found.SupplyVolts >= _limits["least"] * _coils.Max(coil => coil.Coil!.RatedVolts);
        for (var index = 0; index < _coils.Count; index++)
        {
            var (share, coil) = (Share(index), _coils[index].Coil!);
            if (share < _limits["none"] || (share >= _limits["least"] && share <= _limits["greatest"])
                || (tapped && share < 1 && !Places!.Weak.Contains(coil.Id)))
            {
                continue;
            }

            var start = Places!.Weak.Contains(coil.Id);
            var percent = _limits.Quote(100 * share, "percent", $"{coil.Called}: {Volts[index].Magnitude:F1} V of {coil.RatedVolts:F1} V");
            var over = share > 1;
            var rule = (start, over) switch { (true, true) => "start-branch-over-volts", (true, false) => "start-branch-under-volts", (false, true) => "over-volts", _ => "under-volts" };
            Add(rule, share >= _limits["dangerous"] ? Severity.Danger : Severity.Wrong, [coil.Id], rule switch
            {
                "start-branch-over-volts" => Statement.Of("check.start-branch-over-volts", ("coil", coil.Called)).With("percent", percent),
                "start-branch-under-volts" => Statement.Of("check.start-branch-under-volts", ("coil", coil.Called)).With("percent", percent),
                "over-volts" => Statement.Of("check.over-volts", ("coil", coil.Called)).With("percent", percent),
                _ => Statement.Of("check.under-volts", ("coil", coil.Called)).With("percent", percent),
            });
        }
    }

    private void Senses()
    {
        var fed = Enumerable.Range(0, _coils.Count).Where(IsFed).ToList();
        if (fed.Any(index => _coils[index].Coil!.IsPhase))
        {
            Phases(fed);
            return;
        }

        foreach (var axis in fed.GroupBy(index => Places!.Weak.Contains(_coils[index].Id) ? "start" : _coils[index].Coil!.Axis))
        {
            var (first, rest) = (axis.First(), axis.Skip(1));
            foreach (var other in rest.Where(other => Apart(Volts[first], Volts[other]) > _degrees))
            {
                Opposed(first, other, axis.Key == "start");
            }
        }

        var direct = fed.Where(index => !Places!.Weak.Contains(_coils[index].Id)).ToList();
        if (direct.Select(index => _coils[index].Coil!.Axis).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            Unshifted(direct);
        }
    }

    /// <summary>Windings of two axes straight on the line: on one phase their volts are in step, on three lines they need not be.</summary>
    private void Unshifted(List<int> direct)
    {
        var apart = direct.Max(other => Apart(Volts[direct[0]], Volts[other]) is var angle && angle > Quarter ? (2 * Quarter) - angle : angle); // a winding the other way round turns the sense, not the shift
        var ids = direct.Select(index => _coils[index].Id).ToList();
        if (apart <= _degrees)
        {
            Add("no-phase-shift", Severity.Wrong, ids, Statement.Of("check.no-phase-shift"));
        }
        else
        {
            Add("single-phase-on-three-lines", Severity.Wrong, ids, Statement.Of("check.single-phase-on-three-lines")
                .With("degrees", _limits.Quote(Math.Round(apart), "degree", string.Join(", ", direct.Select(index => $"{_coils[index].Coil!.Called}: {Volts[index].Magnitude:F1} V")))));
        }
    }

    /// <summary>Coils that are meant to work against the other half of their phase.</summary>
    public IReadOnlySet<string> Turned { get; private set; } = new HashSet<string>(StringComparer.Ordinal);

    private void Phases(List<int> fed)
    {
        var senses = new Senses(fed.Select(index => (_coils[index].Coil!, Volts[index])).ToList(), _degrees);
        Turned = senses.Turned;
        foreach (var (one, other) in senses.Opposed)
        {
            Add("halves-opposed", Severity.Wrong, [one, other], Statement.Of("check.halves-opposed", ("one", CalledOf(one)), ("other", CalledOf(other))));
        }

        foreach (var coil in senses.Mixed)
        {
            Add("phases-mixed", Severity.Wrong, [coil], Statement.Of("check.phases-mixed", ("coil", CalledOf(coil))));
        }

        if (fed.Count == _coils.Count || _findings.All.All(finding => finding.Severity != Severity.Open))
        {
            if (senses.Reversed.Count > 0)
            {
                Add("phase-reversed", Severity.Wrong, senses.Reversed, Statement.Of("check.phase-reversed", ("coils", string.Join(" + ", senses.Reversed.Select(CalledOf)))));
            }
            else if (senses.IsUneven)
            {
                Add("field-uneven", Severity.Wrong, [], Statement.Of("check.field-uneven"));
            }
        }
    }

    private void Opposed(int one, int other, bool start)
    {
        var (first, second) = (_coils[one].Coil!.Called, _coils[other].Coil!.Called);
        Add(start ? "start-halves-opposed" : "halves-opposed", Severity.Wrong, [_coils[one].Id, _coils[other].Id], start
            ? Statement.Of("check.start-halves-opposed", ("one", first), ("other", second))
            : Statement.Of("check.halves-opposed", ("one", first), ("other", second)));
    }

    /// <summary>Two start halves stand side by side or in one string; otherwise one of them may stay fed when the switch opens.</summary>
    private void StartBranches()
    {
        if (Nodes.Phases == 3)
        {
            return;
        }

        var starts = _coils.Where(coil => Places!.Weak.Contains(coil.Id) && coil.From != coil.To).ToList();
        if (_coils.All(coil => !coil.Coil!.IsStart) && Places!.Weak.Count == 0)
        {
            Add("no-start-winding", Severity.Note, [], Statement.Of("check.no-start-winding"));
        }

        if (Places!.Wires.Any(wire => wire.IsSwitch))
        {
            var after = DesignVolts.Of(Nodes, coil => Places.Weak.Contains(coil.Id), Places.WiresOnceOpen());
            StayFed([.. Enumerable.Range(0, _coils.Count).Where(index => Places.Weak.Contains(_coils[index].Id) && after[index].Magnitude / _coils[index].Coil!.RatedVolts > _limits["none"])]);
        }
        else if (starts.Count > 1)
        {
            StayFed([.. Enumerable.Range(0, _coils.Count).Where(index => starts.Contains(_coils[index]) && starts.Exists(other => other != _coils[index] && Share(_coils[index], other)))]);
        }
    }

    /// <summary>Two start coils meet in a point that a run coil also touches, and are not side by side.</summary>
    private bool Share(Ended one, Ended other)
    {
        bool Beside() => (one.From == other.From && one.To == other.To) || (one.From == other.To && one.To == other.From);
        var common = new[] { one.From, one.To }.Where(node => node == other.From || node == other.To).ToList();
        return !Beside() && common.Exists(node => !Nodes.Lines.ContainsKey(node) && _coils.Any(coil => !Places!.Weak.Contains(coil.Id) && (coil.From == node || coil.To == node)));
    }

    private void StayFed(List<int> coils)
    {
        if (coils.Count > 0)
        {
            Add("start-stays-fed", Severity.Wrong, [.. coils.Select(index => _coils[index].Id)], Statement.Of(
                "check.start-stays-fed", ("coils", string.Join(" + ", coils.Select(index => _coils[index].Coil!.Called)))));
        }
    }

    private string CalledOf(string id) => _coils.First(coil => coil.Id == id).Coil!.Called;

    internal static double Apart(Complex one, Complex other) => Math.Abs((one * Complex.Conjugate(other)).Phase) * 180 / Math.PI;

    private void Add(string rule, Severity severity, IReadOnlyList<string> about, Statement why) => _findings.Add(rule, severity, about, why);
}
