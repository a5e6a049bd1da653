using System.Text.Json;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The members of a JSON object by any of their usual names; what is missing or of the wrong kind is collected.</summary>
internal sealed class Members
{
    private readonly Dictionary<string, (string Path, JsonElement Value)> _members = new(StringComparer.Ordinal);
    private readonly List<Problem> _wrong;
    private readonly string _path;

    public Members(JsonElement body, string path, List<Problem> wrong)
    {
        (_path, _wrong) = (path, wrong);
        if (body.ValueKind == JsonValueKind.Object)
        {
            foreach (var member in body.EnumerateObject())
            {
                _members.TryAdd(Plain(member.Name), (At(member.Name), member.Value));
            }
        }
        else if (body.ValueKind != JsonValueKind.Undefined)
        {
            wrong.Add(WrongKind(path.Length == 0 ? "body" : path));
        }
    }

    public bool Has(params ReadOnlySpan<string> names) => Find(names) is not null;

    public double? Number(params ReadOnlySpan<string> names)
    {
        if (Find(names) is not { } found)
        {
            return null;
        }

        if (found.Value.ValueKind == JsonValueKind.Number && found.Value.TryGetDouble(out var number) && double.IsFinite(number))
        {
            return number;
        }

        _wrong.Add(WrongKind(found.Path));
        return null;
    }

    /// <summary>A number that must be there; the first name is the contract's.</summary>
    public double Needed(params ReadOnlySpan<string> names)
    {
        if (!Has(names))
        {
            _wrong.Add(Problem.NotGiven(At(names[0])));
        }

        return Number(names) ?? 1;
    }

    public string? Text(params ReadOnlySpan<string> names)
    {
        if (Find(names) is not { } found)
        {
            return null;
        }

        if (found.Value.ValueKind == JsonValueKind.String)
        {
            return found.Value.GetString();
        }

        _wrong.Add(WrongKind(found.Path));
        return null;
    }

    public IReadOnlyList<double>? Numbers(params ReadOnlySpan<string> names)
    {
        if (Find(names) is not { } found)
        {
            return null;
        }

        if (found.Value.ValueKind == JsonValueKind.Array && found.Value.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Number && double.IsFinite(item.GetDouble())))
        {
            return [.. found.Value.EnumerateArray().Select(item => item.GetDouble())];
        }

        _wrong.Add(WrongKind(found.Path));
        return null;
    }

    public Members Inner(params ReadOnlySpan<string> names) =>
        Find(names) is { } found ? new Members(found.Value, found.Path, _wrong) : new Members(default, At(names[0]), _wrong);

    public JsonValueKind KindOf(params ReadOnlySpan<string> names) => Find(names)?.Value.ValueKind ?? JsonValueKind.Undefined;

    public string At(string name) => _path.Length == 0 ? name : $"{_path}.{name}";

    private static Problem WrongKind(string path) => new("invalid-fact", path, Statement.Of("body.wrong-kind", ("field", path)));

    private static string Plain(string name) =>
        string.Concat(name.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private (string Path, JsonElement Value)? Find(ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (_members.TryGetValue(Plain(name), out var found) && found.Value.ValueKind != JsonValueKind.Null)
            {
                return found;
            }
        }

        return null;
    }
}
