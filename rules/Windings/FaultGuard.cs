using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>Whether a motor of another kind with shorted turns could read just like the one that is believed.</summary>
/// <remarks>How seldom a motor is faulty is a belief about motors and no measurement of this one: roles that rest on it alone are not called.</remarks>
internal static class FaultGuard
{
    /// <summary>The probability of all motors of other kinds with turns shorted in one of several like windings, in which the leads would be other windings.</summary>
    /// <param name="all">The explanations of all readings.</param>
    /// <param name="best">The explanation that is believed.</param>
    /// <param name="figures">The figures of the trade.</param>
    public static double Turns(Explanations all, Leaf best, IdentificationFigures figures)
    {
        var role = RoleKeys.Of(best);
        return all.Share(leaf => leaf.Pattern.Condition.Kind == ConditionKind.ShortedCoil
            && leaf.Pattern.Layout.Id != best.Pattern.Layout.Id && HasLike(leaf.Pattern) && IsMet(leaf, figures.RatioBlur.Value) && RoleKeys.Of(leaf) != role);
    }

    /// <summary>Of two windings that are alike one with shorted turns is just what two windings of different kinds look like.</summary>
    private static bool HasLike(Pattern pattern) => pattern.Layout.Coils.Count(coil => coil.Group == pattern.Condition.Coil!.Group) > 1;

    /// <summary>Whether as much of the winding is left as of any that is still measured, and its windings stand to each other as they are met.</summary>
    private static bool IsMet(Leaf leaf, double blur) => Array.TrueForAll(leaf.Pattern.Ratios, ratio =>
        leaf.LnOhms[ratio.Of] - leaf.LnOhms[ratio.To] is var ln && ln >= ratio.LnLow - blur && ln <= ratio.LnHigh + blur);
}
