using System.Globalization;
using WireCoach.Rules.Cases;

namespace WireCoach.WebUi.Desk;

/// <summary>The filters of the list as they stand in its address: whoever gets the address sees the same list.</summary>
public sealed class SessionQuery
{
    private readonly IReadOnlyDictionary<string, string> _given;

    /// <summary>The filters of an address.</summary>
    /// <param name="value">The value of a name in the address.</param>
    public SessionQuery(Func<string, string?> value)
        : this(Names.Select(name => (name, Text: value(name)?.Trim() ?? string.Empty)).Where(one => one.Text.Length > 0).ToDictionary(one => one.name, one => one.Text, StringComparer.Ordinal))
    {
    }

    private SessionQuery(IReadOnlyDictionary<string, string> given) => _given = given;

    /// <summary>What can be filtered by, in the order of the page.</summary>
    public static IReadOnlyList<string> Names { get; } = ["text", "who", "motorTag", "role", "status", "verdict", "cause", "caution", "from", "to"];

    /// <summary>The filters that are given.</summary>
    public IEnumerable<(string Name, string Value)> Given => Names.Where(_given.ContainsKey).Select(name => (name, _given[name]));

    /// <summary>The value of a filter, or <see langword="null"/>.</summary>
    public string? this[string name] => _given.GetValueOrDefault(name);

    /// <summary>The same without one filter, or with another value in it.</summary>
    public SessionQuery With(string name, string? value)
    {
        var changed = _given.Where(one => one.Key != name).ToDictionary(StringComparer.Ordinal);
        if (!string.IsNullOrEmpty(value))
        {
            changed[name] = value;
        }

        return new SessionQuery(changed);
    }

    /// <summary>What stands behind the question mark; empty without filters.</summary>
    public string Line => string.Join('&', Given.Select(one => $"{one.Name}={Uri.EscapeDataString(one.Value)}"));

    /// <summary>The address of the list.</summary>
    public string Link => Line.Length == 0 ? "sessions" : $"sessions?{Line}";

    /// <summary>The filter for the desk; days are whole days of UTC.</summary>
    public SessionFilter Filter(string? after, int size) => new()
    {
        Text = this["text"],
        Who = this["who"],
        MotorTag = this["motorTag"],
        Role = Enum.TryParse<Role>(this["role"], ignoreCase: true, out var role) ? role : null,
        Status = this["status"],
        Verdict = this["verdict"],
        Cause = this["cause"],
        Caution = this["caution"],
        From = Day(this["from"]),
        To = Day(this["to"])?.AddDays(1),
        After = string.IsNullOrEmpty(after) ? null : after,
        Size = size,
    };

    /// <summary>A day of the address, or <see langword="null"/> where it is none.</summary>
    public static DateTimeOffset? Day(string? text) =>
        DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var day) ? day : null;
}
