using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>How unequal three volts, amps or resistances are.</summary>
public sealed record UnbalanceReport
{
    /// <summary>Greatest deviation from the mean in percent.</summary>
    public required Quoted Percent { get; init; }

    /// <summary>Share of the rated power that is left; <see langword="null"/> where volts are not the question, or past the table.</summary>
    public Quoted? Derating { get; init; }

    /// <summary>
    /// Volts: <c>ok</c>, <c>derate</c>, <c>do-not-run</c>. Amps: <c>ok</c>, <c>note</c>, <c>investigate</c>, <c>lost-phase</c>.
    /// Ohms: <c>ok</c>, <c>repeat</c>, <c>fault</c>, <c>cannot-tell</c>.
    /// </summary>
    public required string Verdict { get; init; }

    /// <summary>Why.</summary>
    public required Statement Why { get; init; }

    /// <summary>What a high current keeps to while the leads move on: <c>supply</c>, <c>motor</c>, <c>mixed</c>; <see langword="null"/> where nothing was moved or nothing stands out.</summary>
    public string? Follows { get; init; }

    /// <summary>The line or the lead that it keeps to.</summary>
    public string? On { get; init; }

    /// <summary>Negative sequence of the volts in percent.</summary>
    public Quoted? NegativeSequencePercent { get; init; }

    /// <summary>Extra rise of the winding from unequal volts, in percent of its rise.</summary>
    public Quoted? ExtraRisePercent { get; init; }

    /// <summary>The legs of the star that the readings would be.</summary>
    public IReadOnlyList<Quoted>? StarOhms { get; init; }

    /// <summary>The phases of the delta that the readings would be.</summary>
    public IReadOnlyList<Quoted>? DeltaOhms { get; init; }
}

/// <summary>Unbalance of volts, of amps, of resistances, and the test that moves the leads round.</summary>
public static class Unbalance
{
    /// <summary>Unbalance of three line-to-line volts.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="volts">Three readings.</param>
    public static Answer<UnbalanceReport> OfVolts(TradeKnowledge knowledge, IReadOnlyList<double> volts)
    {
        if ((Wrong("volts", volts, zeroAllowed: false) ?? HeatProblems.Outside("volts", volts.Max(), "volt", 0, knowledge.Rules["plate-range"]["most-volts"])) is { } problem)
        {
            return problem;
        }

        var rule = knowledge.Rules["voltage-unbalance"];
        var percent = rule.Quote(Spread.Percent(volts), "percent", Inputs(volts, "volt"));
        var derating = Derating(knowledge, percent);
        var verdict = percent.Value <= rule["full-rating-percent"] + Slack ? "ok" : percent.Value <= rule["do-not-run-percent"] + Slack && derating is not null ? "derate" : "do-not-run";
        var sequence = NegativeSequence(volts) is { } share ? knowledge.Rules["negative-sequence"].Quote(share, "percent", Inputs(volts, "volt")) : null;
        var heat = knowledge.Rules["unbalance-heat"];
        return new UnbalanceReport
        {
            Percent = percent,
            Derating = derating,
            Verdict = verdict,
            Why = verdict switch
            {
                "ok" => Statement.Of("heat.volts-balanced").With("percent", percent),
                "derate" => Statement.Of("heat.volts-derate").With("percent", percent).With("share", derating!),
                _ => Statement.Of("heat.volts-do-not-run").With("percent", percent),
            },
            NegativeSequencePercent = sequence,
            ExtraRisePercent = heat.Quote(heat["factor"] * percent.Value!.Value * percent.Value.Value, "percent", percent.Text),
        };
    }

    /// <summary>Unbalance of three line currents.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="amps">Three readings at one load.</param>
    public static Answer<UnbalanceReport> OfAmps(TradeKnowledge knowledge, IReadOnlyList<double> amps)
    {
        if ((Wrong("amps", amps, zeroAllowed: true) ?? HeatProblems.Outside("amps", amps.Max(), "amp", 0, knowledge.Rules["plate-range"]["most-amps"])) is { } problem)
        {
            return problem;
        }

        var rule = knowledge.Rules["current-unbalance"];
        var percent = rule.Quote(Spread.Percent(amps), "percent", Inputs(amps, "amp"));
        var lost = amps.Min() < rule["lost-share"] * amps.Average();
        var (verdict, why) = lost ? ("lost-phase", Statement.Of("heat.amps-lost"))
            : percent.Value > rule["investigate-percent"] ? ("investigate", Statement.Of("heat.amps-investigate"))
            : percent.Value > rule["note-percent"] ? ("note", Statement.Of("heat.amps-note"))
            : ("ok", Statement.Of("heat.amps-balanced"));
        return new UnbalanceReport { Percent = percent, Verdict = verdict, Why = why.With("percent", percent) };
    }

    /// <summary>Share of the rated power that is left at a voltage unbalance; <see langword="null"/> past the table.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="percent">Voltage unbalance in percent.</param>
    public static Quoted? Derating(TradeKnowledge knowledge, Quoted percent)
    {
        ArgumentNullException.ThrowIfNull(percent);
        var table = knowledge.Tables["nema-derating"];
        var at = percent.Value!.Value;
        for (var row = 1; row < table.Rows.Count; row++)
        {
            var (from, to) = (table.Rows[row - 1].Size(), table.Rows[row].Size());
            if (at <= to + Slack)
            {
                var (low, high) = (table.Number(table.Rows[row - 1], "factor")!.Value, table.Number(table.Rows[row], "factor")!.Value);
                return table.Quote(low + (high - low) * (at - from) / (to - from), "ratio",
                    $"{percent.Text} between {Units.Text(from, "percent")} and {Units.Text(to, "percent")}", null, percent.Trail);
            }
        }

        return null;
    }

    internal static string Inputs(IReadOnlyList<double> values, string unit) => string.Join(", ", values.Select(value => Units.Text(value, unit, 5)));

    internal static Problem? Wrong(string field, IReadOnlyList<double> values, bool zeroAllowed) =>
        values.Count != 3 ? new Problem("invalid-fact", field, Statement.Of("heat.three-needed", ("field", field), ("count", Units.Number(values.Count))))
        : values.Any(value => !double.IsFinite(value) || value < 0 || (!zeroAllowed && value == 0)) || values.All(value => value == 0)
            ? new Problem("invalid-fact", field, Statement.Of("heat.above-zero", ("field", field)))
            : null;

    /// <summary>Negative sequence in percent; <see langword="null"/> where three such volts close no triangle.</summary>
    private static double? NegativeSequence(IReadOnlyList<double> volts)
    {
        var squares = volts.Select(volt => volt * volt).ToList();
        var beta = squares.Sum(square => square * square) / (squares.Sum() * squares.Sum());
        var root = 3 - 6 * beta;
        return root < 0 ? null : 100 * Math.Sqrt(Math.Max(0, 1 - Math.Sqrt(root)) / (1 + Math.Sqrt(root)));
    }

    private const double Slack = 1e-9;
}
