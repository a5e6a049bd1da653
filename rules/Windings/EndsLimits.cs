using System.Globalization;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>What the volts of a test of ends can be at all.</summary>
public static class EndsLimits
{
    /// <summary>What is wrong with a reading that no motor can give, such as the nothing of a feed that is off; <see langword="null"/> for one that can be.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="test">A test id; tests without volts pass.</param>
    /// <param name="value">Volts read.</param>
    /// <param name="appliedVolts">Volts on the fed leads; the usual ones where it is left out.</param>
    public static Statement? Against(TradeKnowledge knowledge, string test, double? value, double? appliedVolts)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        var (most, least) = (knowledge.Rules["ends-same-axis"]["most"], knowledge.Rules["ends-same-axis"]["least"]);
        double? share = test switch { "series-voltage" or "half-run" => most, "induced-voltage" => most - 1, _ => null };
        var applied = appliedVolts ?? knowledge.Rules["ends-applied-volts"]["volts"];
        return value is not { } read || share is not { } limit ? null
            : read > limit * applied ? Statement.Of("problem.ends-too-high", ("value", Text(read)), ("applied", Text(applied)), ("most", Text(limit * applied)))
            : test == "series-voltage" && read < least * applied ? Statement.Of("problem.ends-too-low", ("value", Text(read)), ("applied", Text(applied)), ("least", Text(least * applied)))
            : null;
    }

    private static string Text(double volts) => volts.ToString("0.##", CultureInfo.InvariantCulture);
}
