using System.Collections;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Whether a session fits a filter; when it was opened is looked at before.</summary>
internal sealed class SummaryFit
{
    private readonly HashSet<string>? _only;
    private readonly Role? _role;
    private readonly string? _status;
    private readonly string? _verdict;
    private readonly string? _who;
    private readonly string? _motorTag;
    private readonly string? _cause;
    private readonly string? _caution;
    private readonly List<BitArray> _texts;

    public SummaryFit(SessionFilter filter, WordBook words)
    {
        _only = filter.Only?.ToHashSet(StringComparer.Ordinal);
        _role = filter.Role;
        (_status, _verdict) = (Given(filter.Status), Given(filter.Verdict));
        (_who, _motorTag) = (Given(filter.Who?.ToLowerInvariant()), Given(filter.MotorTag?.ToLowerInvariant()));
        (_cause, _caution) = (Given(filter.Cause), Given(filter.Caution));
        _texts = [.. (filter.Text ?? string.Empty).ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(words.Holding)];
    }

    /// <param name="shown">The session.</param>
    /// <param name="words">The numbers of the words that occur in it.</param>
    public bool Fits(SessionSummary shown, int[] words) =>
        (_only is null || _only.Contains(shown.Id))
        && (_role is null || shown.Role == _role)
        && (_status is null || shown.Status == _status)
        && (_verdict is null || shown.Verdict == _verdict)
        && (_who is null || _who == shown.Who?.ToLowerInvariant())
        && (_motorTag is null || _motorTag == shown.MotorTag?.ToLowerInvariant())
        && (_cause is null || shown.Causes.Contains(_cause, StringComparer.Ordinal))
        && (_caution is null || shown.Cautions.Contains(_caution, StringComparer.Ordinal))
        && _texts.TrueForAll(holding => Array.Exists(words, word => holding[word]));

    private static string? Given(string? text) => string.IsNullOrEmpty(text) ? null : text;
}
