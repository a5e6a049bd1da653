namespace WireCoach.Rules.Quantities;

/// <summary>A number that leaves the engine, with everything a person needs to check it.</summary>
/// <param name="Value">The unrounded value in <paramref name="Unit"/>; <see langword="null"/> where the rule gives no number.</param>
/// <param name="Unit">The unit's id, see <see cref="Units"/>.</param>
/// <param name="Text">The rounded value with its unit sign, as it may be printed.</param>
/// <param name="Rule">The id of the rule that made it.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Caution">The id of the caution that travels with it, or <see langword="null"/>.</param>
/// <param name="Trail">How it was worked out, step by step.</param>
public sealed record Quoted(
    double? Value, string Unit, string Text, string Rule, Source Source, string? Caution, IReadOnlyList<TrailStep> Trail)
{
    /// <summary>The caution on every planning figure: the adopted code and the inspector decide.</summary>
    public const string CodeDeferral = "code-deferral";

    /// <summary>Quotes a value with three significant figures and its unit's sign.</summary>
    /// <param name="value">The unrounded value.</param>
    /// <param name="unit">The unit's id, see <see cref="Units"/>.</param>
    /// <param name="rule">The id of the rule that made it.</param>
    /// <param name="source">Where the rule comes from.</param>
    /// <param name="trail">How it was worked out.</param>
    public static Quoted Of(double value, string unit, string rule, Source source, params IReadOnlyList<TrailStep> trail) =>
        new(value, unit, Units.Text(value, unit), rule, source, CodeDeferral, trail);

    /// <summary>Quotes something that is not a number, such as a wire size or a class letter.</summary>
    /// <param name="text">The text as it may be printed.</param>
    /// <param name="unit">The kind of thing, for example <c>awg</c>.</param>
    /// <param name="rule">The id of the rule that made it.</param>
    /// <param name="source">Where the rule comes from.</param>
    /// <param name="trail">How it was worked out.</param>
    public static Quoted Named(string text, string unit, string rule, Source source, params IReadOnlyList<TrailStep> trail) =>
        new(null, unit, text, rule, source, CodeDeferral, trail);
}

/// <summary>One step of how a number was worked out.</summary>
/// <param name="Step">What is worked out, in a few words.</param>
/// <param name="Formula">The formula in symbols.</param>
/// <param name="Inputs">The inputs with their units.</param>
/// <param name="Result">The result with its unit.</param>
public sealed record TrailStep(string Step, string Formula, string Inputs, string Result);
