using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>A power factor or an efficiency, given as a share or as percent.</summary>
public static class ShareOrPercent
{
    /// <summary>Why a figure is neither of the two; <see langword="null"/> where it is one.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="field">The member that gave it.</param>
    /// <param name="given">The figure.</param>
    public static Problem? Refusal(TradeKnowledge knowledge, string field, double? given)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        var least = knowledge.Rules["plate-range"]["least-percent"];
        return given > 1 && given < least
            ? new("invalid-fact", field, Statement.Of("nameplate.share-or-percent", ("field", field), ("value", Units.Number(given.Value, 4)), ("least", Units.Text(least, "percent"))))
            : null;
    }
}
