using System.Numerics;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Finds what is wrong with the connection of a motor with brushes.</summary>
/// <remarks>
/// A series field has to carry the armature's current and a shunt field the line's volts. Both follow from the joints alone once a series field
/// counts as far lighter, and a shunt field as far heavier, than an armature; no ohms have to be known.
/// </remarks>
internal sealed class CommutatorJudge
{
    private const double Light = 1e-5;
    private const double Heavy = 1e5;
    private const double Trickle = 1e-8;
    private readonly TradeRule _limits;
    private readonly FindingList _findings = new();
    private readonly IReadOnlyList<Ended> _coils;
    private readonly IReadOnlyList<Complex> _volts = [];

    public CommutatorJudge(FoundNodes nodes, TradeKnowledge knowledge)
    {
        (Nodes, _coils, _limits) = (nodes, nodes.Coils, knowledge.Rules["check-volts"]);
        SupplyFindings.Add(nodes, _findings);
        if (nodes.IsShorted)
        {
            return;
        }

        _volts = DesignVolts.Of(nodes, coil => coil.RatedVolts * Weight(coil), []);
        Armatures();
        SeriesFields();
        ShuntFields();
        Senses();
        if (nodes.Found.Hertz > 0 && (Of(FoundCoil.ShuntField).Count > 0 || Of(FoundCoil.SeriesField).Count == 0))
        {
            _findings.Add("direct-current-only", Severity.Wrong, [], Statement.Of("check.direct-current-only"));
        }
    }

    public FoundNodes Nodes { get; }

    public IReadOnlyList<CheckFinding> Findings => _findings.WorstFirst;

    public Verdict Verdict => _findings.Verdict;

    /// <summary>What a person would see at switch-on.</summary>
    public Statement Seen => this switch
    {
        { Verdict: Verdict.Correct } => Statement.Of("check.seen-right"),
        _ when Has("line-shorted") || Has("lead-on-earth") || Has("series-field-across") => Statement.Of("check.seen-short"),
        _ when Has("field-open") => Statement.Of("check.seen-runaway"),
        _ when Has("over-volts") => Statement.Of("check.seen-over-volts"),
        _ when Has("fields-opposed") => Statement.Of("check.seen-differential"),
        _ when IsStill => Statement.Of("check.seen-dead"),
        _ => Statement.Of("check.seen-weak"),
    };

    /// <summary>What a coil gets; of a series field no volts, since they depend on the current.</summary>
    public CheckedCoil Coil(FoundCoil coil)
    {
        var index = Enumerable.Range(0, _coils.Count).First(at => _coils[at].Coil == coil);
        return _volts.Count == 0 || (coil.Role == FoundCoil.SeriesField && IsInCircuit(index))
            ? new(coil.Id, null, null, null, null)
            : new(coil.Id, _volts[index].Magnitude, _volts[index].Real < 0 ? 180 : 0, 100 * Share(index), null);
    }

    private static double Weight(FoundCoil coil) => coil.Role switch { FoundCoil.SeriesField => Light, FoundCoil.ShuntField => Heavy, _ => 1 };

    private List<int> Of(string role) => [.. Enumerable.Range(0, _coils.Count).Where(index => _coils[index].Coil!.Role == role)];

    private double Share(int coil) => _volts[coil].Magnitude / _coils[coil].Coil!.RatedVolts;

    /// <summary>Amps by the model, which tell only whether any flow and which way.</summary>
    private double Flow(int coil) => _volts[coil].Real / (_coils[coil].Coil!.RatedVolts * Weight(_coils[coil].Coil!));

    /// <summary>Carries no more than a shunt field lets through.</summary>
    private bool IsBehindField(int coil) => !IsInCircuit(coil) && Math.Abs(Flow(coil)) > Trickle;

    /// <summary>Carries a current like that of an armature on the line, not that of a shunt field.</summary>
    private bool IsInCircuit(int coil) => Math.Abs(Flow(coil)) > _limits["none"];

    /// <summary>Nothing flows anywhere, or on direct current at most through a field, which makes no sound: no armature works.</summary>
    private bool IsStill => Nodes.Found.Hertz > 0 ? _volts.All(volts => volts == Complex.Zero) : Of(FoundCoil.Armature).TrueForAll(index => !IsInCircuit(index));

    private bool Has(string rule) => _findings.All.Any(finding => finding.Rule == rule);

    private void Armatures()
    {
        foreach (var index in Of(FoundCoil.Armature))
        {
            if (IsBehindField(index))
            {
                Add("armature-behind-field", Severity.Wrong, index, Statement.Of("check.armature-behind-field", ("coil", _coils[index].Coil!.Called)));
            }
            else if (Share(index) < _limits["none"])
            {
                Open(index);
            }
            else
            {
                Size(index);
            }
        }
    }

    private void SeriesFields()
    {
        foreach (var index in Of(FoundCoil.SeriesField))
        {
            if (Share(index) > _limits["none"])
            {
                Add("series-field-across", Severity.Danger, index, Statement.Of("check.series-field-across", ("coil", _coils[index].Coil!.Called)));
            }
            else if (!IsInCircuit(index) && !IsBehindField(index))
            {
                Open(index);
            }
            else if (Of(FoundCoil.Armature).TrueForAll(armature => Math.Abs(Math.Abs(Flow(armature)) - Math.Abs(Flow(index))) > 0.01 * Math.Abs(Flow(index))))
            {
                Add("series-field-apart", Severity.Wrong, index, Statement.Of("check.series-field-apart", ("coil", _coils[index].Coil!.Called)));
            }
        }

        if (Of(FoundCoil.SeriesField) is { Count: > 0 } fields && Of(FoundCoil.ShuntField).Count == 0
            && fields.TrueForAll(index => !IsInCircuit(index)) && Of(FoundCoil.Armature).Exists(index => Share(index) >= _limits["none"]))
        {
            Add("field-open", Severity.Danger, fields[0], Statement.Of("check.armature-without-field"));
        }
    }

    private void ShuntFields()
    {
        var driven = Of(FoundCoil.Armature).Exists(index => Share(index) >= _limits["none"]);
        foreach (var index in Of(FoundCoil.ShuntField))
        {
            if (Share(index) >= _limits["none"])
            {
                Size(index);
            }
            else if (driven)
            {
                Add("field-open", Severity.Danger, index, Statement.Of("check.shunt-field-open", ("coil", _coils[index].Coil!.Called)));
            }
            else
            {
                Open(index);
            }
        }
    }

    /// <summary>All fields pull the same way.</summary>
    private void Senses()
    {
        var fields = Of(FoundCoil.SeriesField).Where(IsInCircuit).Concat(Of(FoundCoil.ShuntField).Where(index => Share(index) >= _limits["none"])).ToList();
        foreach (var other in fields.Skip(1).Where(other => Flow(other) * Flow(fields[0]) < 0))
        {
            var alike = _coils[other].Coil!.Role == _coils[fields[0]].Coil!.Role;
            _findings.Add(alike ? "halves-opposed" : "fields-opposed", Severity.Wrong, [_coils[fields[0]].Id, _coils[other].Id], Statement.Of(
                alike ? "check.halves-opposed" : "check.fields-opposed", ("one", _coils[fields[0]].Coil!.Called), ("other", _coils[other].Coil!.Called)));
        }
    }

    private void Size(int index)
    {
        var (share, coil) = (Share(index), _coils[index]);
        if (share >= _limits["least"] && share <= _limits["greatest"])
        {
            return;
        }

        var percent = _limits.Quote(100 * share, "percent", $"{coil.Coil!.Called}: {_volts[index].Magnitude:F1} V of {coil.Coil!.RatedVolts:F1} V");
        Add(share > 1 ? "over-volts" : "under-volts", share >= _limits["dangerous"] ? Severity.Danger : Severity.Wrong, index, share > 1
            ? Statement.Of("check.over-volts", ("coil", coil.Coil!.Called)).With("percent", percent)
            : Statement.Of("check.brushed-under-volts", ("coil", coil.Coil!.Called)).With("percent", percent));
    }

    private void Open(int index) => Add("winding-not-fed", Severity.Open, index, Statement.Of(
        "check.winding-not-fed", ("coil", _coils[index].Coil!.Called), ("leads", $"{_coils[index].Coil!.From}, {_coils[index].Coil!.To}")));

    private void Add(string rule, Severity severity, int coil, Statement why) => _findings.Add(rule, severity, [_coils[coil].Id], why);
}
