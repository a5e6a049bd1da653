namespace WireCoach.Rules.Windings;

/// <summary>Whether one mistaken reading could have turned one winding into another.</summary>
internal sealed class SlipGuard(Bench bench, IReadOnlyList<Measured> readings)
{
    /// <summary>Shares below this are not counted.</summary>
    private const double Nothing = 1e-9;

    private static readonly double LnOfNothing = Math.Log(Nothing);

    /// <summary>The reading whose mistake would most easily have turned the roles; <see langword="null"/> when none would.</summary>
    /// <param name="all">The explanations of all readings.</param>
    /// <param name="best">The explanation that is believed.</param>
    public Measured? Turns(Explanations all, Leaf best)
    {
        var figures = bench.Figures;
        var role = RoleKeys.Of(best);
        var sum = new Turned(0, 0, 0);
        Measured? worst = null;
        var most = 0.0;
        var bound = new Turned(
            (HasLikeWindings(best.Pattern) ? figures.SlipTurnsRoles : figures.SlipTurnsLoneRoles).Value,
            1 - figures.Enough.Value,
            HasLikeWindings(best.Pattern) ? figures.SlipAndFaultTurnRoles.Value : double.PositiveInfinity);
        foreach (var slip in Slip.Each(bench, readings, reading => States(best, reading), all.LogTotal + LnOfNothing))
        {
            var turned = Mass(slip, all, role, best.Pattern.Layout.Id);
            sum = new(sum.Near + turned.Near, sum.Any + turned.Any, sum.Faulty + turned.Faulty);
            if (turned.Against(bound) is var weight && weight > most)
            {
                (most, worst) = (weight, slip.Reading);
            }
        }

        return sum.Exceeds(bound) ? worst : null;
    }

    /// <summary>A slip together with something that is the matter counts only within the layout in question, and only where one winding bears out another.</summary>
    private IEnumerable<Search> States(Leaf best, Measured reading) => HasLike(best, reading)
        ? bench.Sound.Concat(bench.Faulty.Where(state => state.Pattern.Layout.Id == best.Pattern.Layout.Id))
        : bench.Sound;

    private static Turned Mass(Slip slip, Explanations all, string role, string layout)
    {
        var scale = Math.Exp(slip.LogWeight - all.LogTotal);
        var (near, any, faulty) = (0.0, 0.0, 0.0);
        for (var index = 0; index < slip.Rest.Leaves.Count; index++)
        {
            var leaf = slip.Rest.Leaves[index];
            var share = slip.Rest.Probabilities[index] * scale;
            if (share > Nothing && RoleKeys.Of(leaf) != role)
            {
                var isNear = leaf.Pattern.Layout.Id == layout;
                var whole = leaf.Pattern.Condition.IsWhole;
                any += whole ? share : 0;
                near += whole && isNear ? share : 0;
                faulty += !whole && isNear && IsUsual(leaf) ? share : 0;
            }
        }

        return new(near, any, faulty);
    }

    /// <summary>Whether a reading is of a winding that has its like: only that likeness may come by chance from a slip and shorted turns.</summary>
    private static bool HasLike(Leaf leaf, Measured reading) => leaf.Pattern.Windings.Any(winding =>
        winding.Terminals.Contains(leaf.TerminalOf[reading.First]) && winding.Terminals.Contains(leaf.TerminalOf[reading.Second])
        && leaf.Pattern.Windings.Count(other => other.Group == winding.Group) > 1);

    /// <summary>Whether windings stand to each other as they are met; two troubles at once in an unusual motor are not guarded against.</summary>
    private static bool IsUsual(Leaf leaf) => Array.TrueForAll(leaf.Pattern.Ratios, ratio =>
        leaf.LnOhms[ratio.Of] - leaf.LnOhms[ratio.To] is var ln && ln >= ratio.LnLow - ratio.Tail && ln <= ratio.LnHigh + ratio.Tail);

    /// <summary>Whether a reading of one winding is borne out by that of another.</summary>
    private static bool HasLikeWindings(Pattern pattern) =>
        pattern.Windings.Any(winding => winding.Junction) || pattern.Windings.Select(winding => winding.Group).Distinct(StringComparer.Ordinal).Count() < pattern.Windings.Count;

    /// <summary>How likely it is that a slip turned the roles.</summary>
    /// <param name="Near">Within the layout in question.</param>
    /// <param name="Any">In any layout.</param>
    /// <param name="Faulty">Within the layout in question together with something that is the matter.</param>
    private sealed record Turned(double Near, double Any, double Faulty)
    {
        public bool Exceeds(Turned bound) => Near > bound.Near || Any > bound.Any || Faulty > bound.Faulty;

        public double Against(Turned bound) => (Near / bound.Near) + (Any / bound.Any) + (Faulty / bound.Faulty);
    }
}
