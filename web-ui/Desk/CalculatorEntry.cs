using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>What a person wrote into the form of a calculator, as a body of the contract.</summary>
public sealed partial class CalculatorEntry
{
    private readonly CalculatorForm _form;
    private readonly IReadOnlyDictionary<string, string> _given;
    private readonly Dictionary<string, string> _members = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _rows = new(StringComparer.Ordinal);
    private readonly List<Problem> _problems = [];

    /// <param name="form">The calculator.</param>
    /// <param name="given">What was written, by field; blank fields are left out.</param>
    public CalculatorEntry(CalculatorForm form, IReadOnlyDictionary<string, string> given)
    {
        (_form, _given) = (form, given);
        foreach (var field in form.Fields.Where(field => given.ContainsKey(field.Name)))
        {
            Put(field, given[field.Name]);
        }
    }

    /// <summary>The body, without the fields that cannot be read.</summary>
    public JsonObject Body { get; } = [];

    /// <summary>Fields that cannot be read.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>The field of the form beside which a problem stands, or <see langword="null"/>.</summary>
    /// <remarks>What cannot be read is named by its field, all else by the member that a field came to be: rows close up where one is missing.</remarks>
    public CalculatorField? FieldOf(Problem problem) =>
        (_problems.Contains(problem) ? null : _form.Fields.FirstOrDefault(field => _members.GetValueOrDefault(field.Name) == problem.Field))
        ?? _form.Fields.FirstOrDefault(field => field.Name == problem.Field)
        ?? _form.Fields.FirstOrDefault(field => field.Name.StartsWith(problem.Field + "[", StringComparison.Ordinal) || problem.Field.StartsWith(field.Name + "[", StringComparison.Ordinal));

    /// <summary>A figure as it was understood.</summary>
    public double? NumberOf(CalculatorField field) => _given.TryGetValue(field.Name, out var text) ? Number(text, field.Unit) : null;

    private void Put(CalculatorField field, string text)
    {
        if (Value(field, text) is not { } value)
        {
            _problems.Add(new("unreadable-quantity", field.Name, Refused(field, text)));
            return;
        }

        _members[field.Name] = Put(field.Name, value);
        foreach (var (member, constant) in field.With)
        {
            Put(member, constant);
        }

        foreach (var member in field.Also.Where(HasRow))
        {
            Put(member, value.DeepClone());
        }
    }

    /// <summary>A member of a list's row is wanted only where the row itself is filled in.</summary>
    private bool HasRow(string member) => _given.Keys.Any(name => name.StartsWith(member[..(member.IndexOf(']', StringComparison.Ordinal) + 1)], StringComparison.Ordinal));

    private static JsonNode? Value(CalculatorField field, string text) => field.Kind switch
    {
        "number" => Number(text, field.Unit) is { } number ? JsonValue.Create(number) : null,
        "numbers" => Numbers(text, field.Unit),
        "yes" => text == "yes" ? JsonValue.Create(true) : null,
        "choice" => field.Options.Any(option => option.Id == text) ? Choice(text) : null,
        _ => JsonValue.Create(text),
    };

    /// <summary>A figure with a point or a comma, with its unit or without.</summary>
    private static double? Number(string text, string? unit)
    {
        var bare = unit is not null && Units.Sign(unit) is { Length: > 0 } sign && text.EndsWith(sign, StringComparison.OrdinalIgnoreCase) ? text[..^sign.Length] : text;
        return double.TryParse(bare.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    private static JsonArray? Numbers(string text, string? unit)
    {
        var numbers = text.Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(part => Number(part.TrimEnd(','), unit)).ToList();
        return numbers.TrueForAll(number => number is not null) ? new JsonArray([.. numbers.Select(number => JsonValue.Create(number!.Value))]) : null;
    }

    private static JsonValue Choice(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? JsonValue.Create(number) : JsonValue.Create(text);

    private Statement Refused(CalculatorField field, string text)
    {
        var statement = Statement.Named(field switch
        {
            { Kind: "choice" or "yes" } => "page.calculator-choose",
            { Unit: { } unit } when Units.Sign(unit).Length > 0 => "page.calculator-not-number-unit",
            _ => "page.calculator-not-number",
        }).With("text", text).With("label", _form.Fields.First(one => one == field).Label).With("example", field.Example ?? string.Empty);
        return field.Unit is { } id ? statement.With("unit", Units.Sign(id)) : statement;
    }

    /// <summary>Puts a value where a path leads and says where that came to be: rows of a list that were left blank close up.</summary>
    private string Put(string path, JsonNode value)
    {
        var steps = Step().Matches(path).Select(step => step.Value).ToList();
        JsonNode at = Body;
        var member = string.Empty;
        var written = string.Empty;
        for (var step = 0; step < steps.Count; step++)
        {
            var (isRow, last) = (steps[step][0] == '[', step == steps.Count - 1);
            written += isRow ? steps[step] : step == 0 ? steps[step] : $".{steps[step]}";
            JsonNode fresh = last ? value : steps[step + 1][0] == '[' ? new JsonArray() : new JsonObject();
            if (isRow)
            {
                var rows = (JsonArray)at;
                if (!_rows.TryGetValue(written, out var row))
                {
                    _rows[written] = row = rows.Count;
                    rows.Add(fresh);
                }

                member += $"[{row.ToString(CultureInfo.InvariantCulture)}]";
                at = rows[row]!;
            }
            else
            {
                var members = (JsonObject)at;
                if (last || members[steps[step]] is null)
                {
                    members[steps[step]] = fresh;
                }

                member += step == 0 ? steps[step] : $".{steps[step]}";
                at = members[steps[step]]!;
            }
        }

        return member;
    }

    [GeneratedRegex(@"\[\d+\]|[^.\[\]]+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Step();
}
