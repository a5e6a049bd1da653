using System.Collections;
using System.Reflection;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>One line of a calculator's answer, whatever record the answer is.</summary>
/// <param name="Name">The member in kebab-case, for its word in knowledge.</param>
/// <param name="Under">The members and rows that it stands under, outermost first.</param>
public sealed record AnswerLine(string Name, IReadOnlyList<string> Under)
{
    /// <summary>A quoted value, or the two ends of a range.</summary>
    public IReadOnlyList<Quoted> Values { get; init; } = [];

    /// <summary>Sentences.</summary>
    public IReadOnlyList<Statement> Said { get; init; } = [];

    /// <summary>What may be seen, with what it means.</summary>
    public IReadOnlyList<Expectation> Seen { get; init; } = [];

    /// <summary>A word of the contract, or a plain figure that was given.</summary>
    public string? Word { get; init; }

    /// <summary>The lines of an answer, in the order of its members.</summary>
    public static IEnumerable<AnswerLine> Of(object answer) => Of(answer, []);

    /// <summary>The members that make a line: what is only derived from others makes none.</summary>
    public static IEnumerable<PropertyInfo> Members(Type answer) =>
        answer.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(member => member.CanWrite && member.GetIndexParameters().Length == 0);

    /// <summary>A member's name as its word in knowledge has it.</summary>
    public static string Kebab(string name) =>
        string.Concat(name.Select((letter, at) => char.IsUpper(letter) ? (at == 0 ? string.Empty : "-") + char.ToLowerInvariant(letter) : letter.ToString()));

    private static IEnumerable<AnswerLine> Of(object answer, IReadOnlyList<string> under)
    {
        var members = Members(answer.GetType()).Select(member => (member.Name, Value: member.GetValue(answer))).ToList();
        var said = members.Select(member => member.Value).OfType<Statement>().ToHashSet();
        return members.Where(member => member.Value is not IEnumerable<Statement> list || list.Any(one => !said.Contains(one)))
            .SelectMany(member => Of(Kebab(member.Name), member.Value, under));
    }

    private static IEnumerable<AnswerLine> Of(string name, object? value, IReadOnlyList<string> under)
    {
        var line = new AnswerLine(name, under);
        return value switch
        {
            null or "" => [],
            Quoted quoted => [line with { Values = [quoted] }],
            QuotedRange range => [line with { Values = [.. new[] { range.Low, range.High }.OfType<Quoted>()] }],
            Statement statement => [line with { Said = [statement] }],
            string word => [line with { Word = word }],
            bool yes => [line with { Word = yes ? "yes" : "no" }],
            double number => [line with { Word = Units.Number(number, 4) }],
            IEnumerable<Statement> said => said.Any() ? [line with { Said = [.. said] }] : [],
            IEnumerable<Quoted> several => several.Any() ? [line with { Values = [.. several] }] : [],
            IEnumerable<Expectation> expected => expected.Any() ? [line with { Seen = [.. expected] }] : [],
            IEnumerable rows => rows.Cast<object>().SelectMany((row, at) => Of(row, [.. under, $"{name} {at + 1}"])),
            _ => Of(value, [.. under, name]),
        };
    }
}
