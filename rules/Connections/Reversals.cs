using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>How the direction of a planned motor is turned round.</summary>
internal static class Reversals
{
    public static Reversal Of(Layout layout, LayoutConnection row, IReadOnlyDictionary<string, string> tags, bool direct)
    {
        if (row.ReverseSwap.Count > 0)
        {
            IReadOnlyList<IReadOnlyList<string>> swap = [.. row.ReverseSwap.Select(pair => (IReadOnlyList<string>)[.. pair.Select(marking => tags[marking])])];
            return new(true, swap, Why(layout, swap, direct));
        }

        if (row.ReverseLines.Count > 0)
        {
            return new(true, [row.ReverseLines], layout.Family == "three-phase"
                ? Statement.Of("connections.reverse-two-lines")
                : Statement.Of("connections.reverse-polarity"));
        }

        return new(false, [], layout.NotReversible is { } reason ? Statement.Of(reason) : Statement.Of("connections.reverse-not-known"));
    }

    private static Statement Why(Layout layout, IReadOnlyList<IReadOnlyList<string>> swap, bool direct)
    {
        var pairs = string.Join("; ", swap.Select(pair => string.Join(" ↔ ", pair)));
        return layout.Family == "commutator"
            ? layout.Coils.Count == 1 && direct
                ? Statement.Of("connections.reverse-polarity")
                : Statement.Of("connections.reverse-armature", ("pairs", pairs))
            : swap.Count > 1
                ? Statement.Of("connections.reverse-both-halves", ("pairs", pairs))
                : layout.Coils.Any(coil => coil.Role == "start")
                    ? Statement.Of("connections.reverse-start-ends", ("pairs", pairs))
                    : Statement.Of("connections.reverse-other-winding", ("pairs", pairs));
    }
}
