using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>The last check before windings are called by their roles: what the roles rest on must be plain to the meter.</summary>
internal static class RoleGuard
{
    /// <summary>What stands against it; <see langword="null"/> for nothing.</summary>
    public static Statement? Against(Bench bench, AxisEvidence axes, Leaf leaf, IReadOnlyList<Winding> windings)
    {
        if (leaf.Pattern.Layout.Coils.Any(coil => coil.ChangesWithShaft) && bench.Turning.Count == 0)
        {
            return Statement.Of("windings.turn-the-shaft");
        }

        var groups = leaf.Pattern.Windings.ToDictionary(winding => string.Join(' ', Tags(bench, leaf, winding)), winding => winding.Group, StringComparer.Ordinal);
        var measured = windings.Where(winding => winding.Ohms is not null && winding.Role is not ("protector" or "other")).ToList();
        for (var first = 0; first < measured.Count; first++)
        {
            for (var second = first + 1; second < measured.Count; second++)
            {
                var (one, other) = (measured[first], measured[second]);
                if (Pair(bench, one, other, Group(one) == Group(other)) is { } against)
                {
                    if (!MadeUnlike(bench, leaf, one, other))
                    {
                        return against;
                    }

                    if (!axes.ShowsCoupled(Leads(bench, one), Leads(bench, other)))
                    {
                        return Say(Statement.Of("windings.halves-or-not"), one, other);
                    }
                }
            }
        }

        return null;

        string Group(Winding winding) => groups.GetValueOrDefault(string.Join(' ', winding.Leads.Order(StringComparer.Ordinal)), winding.Role);
    }

    /// <summary>Whether like windings need not read alike, because something lies across one of them.</summary>
    private static bool MadeUnlike(Bench bench, Leaf leaf, Winding one, Winding other)
    {
        var (first, second) = (Leads(bench, one), Leads(bench, other));
        return AxisEvidence.Winding(leaf, first[0], first[^1]) is { } winding && AxisEvidence.Winding(leaf, second[0], second[^1]) is { } twin && winding.Group == twin.Group
            && Formula(first) != Formula(second);

        int Formula(int[] leads) => leaf.Pattern.Formula[leaf.TerminalOf[leads[0]]][leaf.TerminalOf[leads[^1]]];
    }

    private static int[] Leads(Bench bench, Winding winding) => [.. winding.Leads.Select(tag => InputCheck.Lead(bench.Leads, tag))];

    private static IEnumerable<string> Tags(Bench bench, Leaf leaf, PatternWinding winding)
    {
        var leadOf = RoleKeys.LeadOf(leaf);
        return winding.Terminals.Select(terminal => bench.Leads[leadOf[terminal]]).Order(StringComparer.Ordinal);
    }

    private static Statement? Pair(Bench bench, Winding one, Winding other, bool alike)
    {
        var (first, second) = (one.Ohms!.Value, other.Ohms!.Value);
        var apart = Math.Abs(first - second);
        if (alike)
        {
            return one.Junction == other.Junction && one.Leads.Count == other.Leads.Count && apart > bench.Meter.NotAlike(first, second)
                ? Say(Statement.Of("windings.like-windings-unlike"), one, other)
                : null;
        }

        if (one.Junction != other.Junction || one.Leads.Count != other.Leads.Count || one.Taps is not null || other.Taps is not null)
        {
            return null;
        }

        if (apart <= bench.Meter.CannotTell(first, second))
        {
            return Say(Statement.Of("windings.too-near"), one, other);
        }

        var start = one.Role == "start" ? one : other.Role == "start" ? other : null;
        var run = one.Role == "run" ? one : other.Role == "run" ? other : null;
        return start is not null && run is not null && start.Ohms < run.Ohms ? Say(Statement.Of("windings.start-is-lower"), start, run) : null;
    }

    private static Statement Say(Statement statement, Winding one, Winding other) =>
        statement.With("one", string.Join("–", one.Leads)).With("other", string.Join("–", other.Leads));
}
