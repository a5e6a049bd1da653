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
}
