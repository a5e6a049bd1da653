namespace WireCoach.Service.Phrasing;

/// <summary>A piece of a sentence that carries meaning.</summary>
/// <param name="Class">A class of the word list, <c>lead</c>, <c>quantity</c>, <c>mark</c> or <c>word</c>.</param>
/// <param name="Text">The writing by which it is compared.</param>
internal readonly record struct Atom(string Class, string Text)
{
    public const string Lead = "lead";
    public const string Quantity = "quantity";
    public const string Mark = "mark";
    public const string Word = "word";

    public const string Number = "number";
    public const string Verb = "verb";
    public const string Negation = "negation";
    public const string Condition = "condition";
    public const string Order = "order";
    public const string Modality = "modality";
    public const string Quantifier = "quantifier";
    public const string Hazard = "hazard";
    public const string State = "state";
    public const string Grammar = "grammar";

    /// <summary>Whether it may reach beyond the end of its own clause.</summary>
    public bool Reaches => Class is Condition or Negation or Modality;

    /// <summary>Whether it carries more than a plain word does: a comma beside it may turn the meaning.</summary>
    public bool Weighs => Class is not (Word or Grammar or Mark);
}
