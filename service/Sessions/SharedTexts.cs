using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Keeps once what many sessions have in common: names, tags, questions, lists of causes.</summary>
internal sealed class SharedTexts
{
    private const int Most = 50_000;

    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<string>> _lists = new(StringComparer.Ordinal);

    public SessionSummary Share(SessionSummary shown) => shown with
    {
        Status = Text(shown.Status)!,
        Who = Text(shown.Who),
        MotorTag = Text(shown.MotorTag),
        Asked = Text(shown.Asked),
        Goal = Text(shown.Goal),
        Layout = Text(shown.Layout),
        Verdict = Text(shown.Verdict),
        Causes = List(shown.Causes),
        Cautions = List(shown.Cautions),
        Confirmed = List(shown.Confirmed),
        NotConfirmed = List(shown.NotConfirmed),
    };

    private string? Text(string? text) => text is null ? null : Shared(_texts, text, text);

    private IReadOnlyList<string> List(IReadOnlyList<string> ids) => ids.Count == 0 ? [] : Shared(_lists, string.Join('\n', ids), ids);

    /// <summary>The one that is kept. What comes after a great many is taken as it is, so that this never grows without bound.</summary>
    private static T Shared<T>(Dictionary<string, T> known, string key, T value)
    {
        if (known.TryGetValue(key, out var shared))
        {
            return shared;
        }

        if (known.Count < Most)
        {
            known.Add(key, value);
        }

        return value;
    }
}
