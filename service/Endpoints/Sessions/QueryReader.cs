using System.Globalization;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>Reads a query string and remembers what was wrong in it.</summary>
internal sealed class QueryReader(IQueryCollection query)
{
    private const int Longest = 200;

    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    public string? Text(string name)
    {
        var text = query[name].ToString();
        if (text.Length > Longest)
        {
            _problems.Add(Refusals.TooLong(name, Longest));
        }

        return text.Length == 0 ? null : text;
    }

    public string? Choice(string name, IReadOnlyList<string> options)
    {
        var text = Text(name);
        if (text is null || options.Contains(text, StringComparer.Ordinal))
        {
            return text;
        }

        _problems.Add(Refusals.OneOf(name, string.Join(", ", options)));
        return null;
    }

    public DateTimeOffset? Time(string name)
    {
        var text = Text(name);
        if (text is null)
        {
            return null;
        }

        if (DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time))
        {
            return time;
        }

        _problems.Add(new("invalid-fact", name, Statement.Of("session.not-a-time", ("field", name))));
        return null;
    }

    public int? Number(string name, int most)
    {
        var text = Text(name);
        if (text is null)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= most)
        {
            return number;
        }

        _problems.Add(Refusals.WrongSize(most));
        return null;
    }
}
