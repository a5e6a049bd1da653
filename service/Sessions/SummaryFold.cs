using System.Text;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What the list shows of a session, and the words that find it: one fold over its events.</summary>
/// <param name="Shown">What the list shows.</param>
/// <param name="Words">The person's words in lower case, each once, shortened.</param>
internal sealed record SummaryFold(SessionSummary Shown, string Words)
{
    private const int TitleLength = 120;
    private const int WordsLength = 1000;

    public static SummaryFold Of(StoredEvent first) => first.Event is SessionEvent.Opened opened
        ? new(
            new SessionSummary
            {
                Id = first.Session,
                Role = opened.Role,
                Region = opened.Region,
                Status = "open",
                CreatedAt = first.At,
                ChangedAt = first.At,
                Who = opened.Who,
                MotorTag = opened.MotorTag,
                Practice = opened.Practice is not null,
                Events = first.Sequence,
            },
            Lower($"{opened.Who} {opened.MotorTag}".Trim()))
        : throw new StoreException($"The session {first.Session} does not begin with its opening.");

    public SummaryFold With(StoredEvent stored)
    {
        var shown = Shown with { ChangedAt = stored.At, Events = stored.Sequence };
        return stored.Event switch
        {
            SessionEvent.FactsTaken taken => Taken(shown, taken),
            SessionEvent.Retracted => this with { Shown = shown with { Retracted = shown.Retracted + 1 } },
            SessionEvent.CautionShown caution => this with { Shown = shown with { Cautions = With(shown.Cautions, caution.Id) } },
            SessionEvent.Concluded now => this with { Shown = shown with { Status = now.Status, Goal = now.Goal, Layout = now.Layout, Causes = now.Causes } },
            SessionEvent.Asked asked => this with { Shown = shown with { Asked = asked.Text } },
            SessionEvent.Reviewed reviewed => this with { Shown = shown with { Verdict = reviewed.Verdict } },
            SessionEvent.Closed => this with { Shown = shown with { Status = "closed", Asked = null } },
            SessionEvent.Said or SessionEvent.Opened => this with { Shown = shown },
            _ => throw new StoreException($"The list does not know the event {EventFormat.TypeOf(stored.Event)}."),
        };
    }

    private SummaryFold Taken(SessionSummary shown, SessionEvent.FactsTaken taken)
    {
        var confirms = taken.Facts.OfType<Fact.Confirm>().ToList();
        var words = taken.Words ?? taken.Facts.OfType<Fact.Application>().FirstOrDefault()?.Text;
        return new(
            shown with
            {
                Title = shown.Title ?? Short(words),
                Facts = shown.Facts + taken.Facts.Count,
                Touches = shown.Touches + taken.Facts.Count(fact => fact is Fact.Reading),
                Confirmed = confirms.Where(confirm => confirm.Confirmed).Aggregate(shown.Confirmed, (ids, confirm) => With(ids, confirm.Id)),
                NotConfirmed = confirms.Where(confirm => !confirm.Confirmed).Aggregate(shown.NotConfirmed, (ids, confirm) => With(ids, confirm.Id)),
            },
            words is null || Words.Length >= WordsLength ? Words : Lower($"{Words} {words}"));
    }

    private static IReadOnlyList<string> With(IReadOnlyList<string> ids, string id) =>
        ids.Contains(id, StringComparer.Ordinal) ? ids : [.. ids, id];

    private static string? Short(string? words) =>
        string.IsNullOrWhiteSpace(words) ? null : Cut(words.Trim(), TitleLength);

    private static string Lower(string words) =>
        Cut(string.Join(' ', words.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct(StringComparer.Ordinal)), WordsLength);

    private static string Cut(string text, int length)
    {
        if (text.Length <= length)
        {
            return text;
        }

        var end = char.IsHighSurrogate(text[length - 1]) ? length - 1 : length;
        return text[..end].Normalize(NormalizationForm.FormC);
    }
}
