using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>What insulation readings amount to.</summary>
public sealed record InsulationReport
{
    /// <summary>The one-minute reading at 40 °C in MΩ; <see langword="null"/> where it cannot be corrected.</summary>
    public Quoted? CorrectedMegohms { get; init; }

    /// <summary>The least that this kind of winding must have at 40 °C.</summary>
    public required Quoted MinimumMegohms { get; init; }

    /// <summary>Ten minutes over one; <see langword="null"/> where it is not measured or says nothing.</summary>
    public Quoted? PolarizationIndex { get; init; }

    /// <summary>One minute over half a minute; <see langword="null"/> where it is not measured.</summary>
    public Quoted? AbsorptionRatio { get; init; }

    /// <summary>Why a ratio does not apply here, or <see langword="null"/>.</summary>
    public Statement? NotApplicable { get; init; }

    /// <summary><c>pass</c>, <c>marginal</c>, <c>fail</c>, <c>retest</c> (cannot be corrected) or <c>no-proof</c> (not an insulation test, or its range ends too low).</summary>
    public required string Verdict { get; init; }

    /// <summary>Why, in a sentence.</summary>
    public required Statement Why { get; init; }

    /// <summary>What to do next, in order.</summary>
    public required IReadOnlyList<Statement> DoNext { get; init; }

    /// <summary>What else stands out: test volts, absorption, trend.</summary>
    public IReadOnlyList<Statement> Notes { get; init; } = [];

    /// <summary>How it moved since earlier sessions; <see langword="null"/> where there are none, or this reading is no insulation test.</summary>
    public Statement? Trend { get; init; }

    /// <summary>The test volts that such a winding takes.</summary>
    public QuotedRange? TestVolts { get; init; }
}
