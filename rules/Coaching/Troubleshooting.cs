using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>Gate and diagnosis together: what may be done, what is likely wrong, and the next test that the gate allows. Pure.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class Troubleshooting(TradeKnowledge knowledge)
{
    private readonly SafetyGate _gate = new(knowledge);
    private readonly Diagnostician _diagnostician = new(knowledge);
    private readonly Listener _listener = new(knowledge);

    /// <summary>What a description in plain words amounts to: facts, and the dangers among them.</summary>
    /// <param name="text">The person's words.</param>
    /// <param name="region">Which units and supplies are meant; <see langword="null"/> where nobody said.</param>
    public Answer<IReadOnlyList<Fact>> Hear(string text, Region? region = null)
    {
        var heard = _listener.Hear(text, region: region);
        return heard.Value is { } understood
            ? Answer<IReadOnlyList<Fact>>.Given([.. understood.Facts, .. understood.Dangers.Select(danger => SafetyGate.Heard(danger.Id, danger.Span))])
            : Answer<IReadOnlyList<Fact>>.Refused(heard.Problems);
    }

    /// <summary>What may be done and what is wrong.</summary>
    /// <param name="file">The case.</param>
    public TroubleReport Examine(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var gate = _gate.Judge(file);
        var access = knowledge.GateTasks.Keys.ToDictionary(
            task => task, task => gate.Opens(task) ? TaskAccess.Open : new TaskAccess(!gate.CouldOpen(task), gate.WaitsFor(task)), StringComparer.Ordinal);
        var faults = _diagnostician.Examine(file, access, gate.Holding.Contains("sealed-circuit", StringComparer.Ordinal), gate.KeptFor);
        return new TroubleReport(faults.ReferTo is null || gate.ReferOut ? gate : Referred(gate, faults.ReferTo), faults, Cautions(gate, faults));
    }

    /// <summary>A gate that refers the case because nothing that is open here settles it.</summary>
    private static Gate Referred(Gate gate, string referTo) => gate with
    {
        ReferOut = true,
        ReferTo = referTo,
        Reason = gate.Reason ?? Statement.Of("diagnosis.nothing-open-settles-it"),
    };

    /// <summary>The cautions of the gate, of the next test, of what has to be confirmed before it, and of what is to be done, each once, the weightiest first.</summary>
    private List<Caution> Cautions(Gate gate, FaultReport faults) =>
    [
        .. gate.Cautions.Select(caution => caution.Id)
            .Concat(faults.Cautions)
            .Concat(faults.Next?.Needs.SelectMany(need => knowledge.Confirmations[need].Cautions) ?? [])
            .Concat(faults.ReferTo is { } to && knowledge.Cautions.ContainsKey($"call-{to}") ? [$"call-{to}"] : [])
            .Distinct(StringComparer.Ordinal)
            .OrderByDescending(id => knowledge.Cautions[id].Weight)
            .Select(id => new Caution(id, Statement.Of($"caution.{id}"))),
    ];
}

/// <summary>What may be done and what is wrong.</summary>
/// <param name="Gate">What may be done.</param>
/// <param name="Faults">What is wrong, and the next test.</param>
/// <param name="Cautions">All cautions that apply, the weightiest first.</param>
public sealed record TroubleReport(Gate Gate, FaultReport Faults, IReadOnlyList<Caution> Cautions);
