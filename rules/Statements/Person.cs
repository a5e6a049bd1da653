namespace WireCoach.Rules.Statements;

/// <summary>Whoever takes a motor over, as people call them.</summary>
public static class Person
{
    /// <summary>The words for a person of whom the gate or a cause gives the id.</summary>
    /// <param name="id">For example <c>licensed-electrician</c>.</param>
    public static Statement Named(string id) => Statement.Word(id.Replace('-', ' '), [$"term.person.{id}"]);
}
