using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>How a test between windings is set up, and what a flick can show.</summary>
internal static class TestSteps
{
    /// <summary>What the needle does.</summary>
    public static readonly IReadOnlyList<string> Kicks = ["up-on-make", "down-on-make", "no-kick"];

    /// <summary>The meter on one winding, the cell on the other.</summary>
    public static IReadOnlyList<Statement> Flick(TestSetup setup) =>
    [
        Statement.Of("ends.how-flick-meter", ("plus", setup.Read[0]), ("minus", setup.Read[1])),
        Statement.Of("ends.how-flick-cell", ("plus", setup.Drive[0]), ("minus", setup.Drive[1])),
        Statement.Of("ends.how-flick-both-ways"),
    ];

    /// <summary>The low voltage on one winding.</summary>
    public static Statement Feed(TestSetup setup, TradeKnowledge knowledge) => Statement.Of("ends.how-feed", ("a", setup.Drive[0]), ("b", setup.Drive[1]))
        .With("volts", knowledge.Rules["ends-applied-volts"].Quote(setup.AppliedVolts!.Value, "volt", "the usual figure"));

    /// <summary>The meter across the free ends.</summary>
    public static Statement Read(TestSetup setup) => Statement.Of("ends.how-read", ("a", setup.Read[0]), ("b", setup.Read[1]));
}
