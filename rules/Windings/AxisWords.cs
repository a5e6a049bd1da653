using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>A test between two windings that are not told apart yet, in words: how it is done, and what each outcome means.</summary>
internal static class AxisWords
{
    /// <summary>The test that identification wants.</summary>
    public static NextTest Of(NextReading wanted, TradeKnowledge knowledge)
    {
        var setup = wanted.Setup!;
        var flick = wanted.Kind == AxisEvidence.ByFlick;
        return new()
        {
            Test = wanted.Kind,
            Setup = setup,
            Unit = flick ? null : "volt",
            Outcomes = flick ? TestSteps.Kicks : [],
            Task = "low-voltage-test",
            Why = wanted.Why,
            How = [.. flick ? TestSteps.Flick(setup) : [TestSteps.Feed(setup, knowledge), TestSteps.Read(setup)], Statement.Of("windings.how-others-apart")],
            Expect = flick ? Kicks() : Volts(setup.AppliedVolts!.Value, knowledge),
        };
    }

    private static IReadOnlyList<Expectation> Kicks() =>
    [
        new(Statement.Of("ends.when-up"), Statement.Of("windings.means-coupled")),
        new(Statement.Of("ends.when-down"), Statement.Of("windings.means-coupled")),
        new(Statement.Of("ends.when-no-kick"), Statement.Of("windings.means-apart")),
    ];

    private static IReadOnlyList<Expectation> Volts(double applied, TradeKnowledge knowledge)
    {
        var rule = knowledge.Rules["ends-induced"];
        Quoted At(string figure) => rule.Quote(rule[figure] * applied, "volt", string.Create(CultureInfo.InvariantCulture, $"{rule[figure]:0.00} × {applied:0.#} V"));
        return
        [
            new(Statement.Of("ends.when-above").With("volts", At("same-axis")), Statement.Of("windings.means-one-axis")),
            new(Statement.Of("ends.when-between").With("low", At("phases")).With("high", At("same-axis")), Statement.Of("windings.means-phases")),
            new(Statement.Of("ends.when-below").With("volts", At("null")), Statement.Of("windings.means-apart")),
            new(Statement.Of("ends.when-between").With("low", At("null")).With("high", At("phases")), Statement.Of("windings.means-neither")),
        ];
    }
}
