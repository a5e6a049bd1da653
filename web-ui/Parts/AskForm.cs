using System.Globalization;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;

namespace WireCoach.WebUi.Parts;

/// <summary>What comes back from the form of the open question.</summary>
public sealed class AskForm
{
    public string? QuestionId { get; set; }

    public string? Key { get; set; }

    public string? Choice { get; set; }

    public string? Value { get; set; }

    public string? Unit { get; set; }

    public string? Shown { get; set; }

    public string? Text { get; set; }

    /// <summary>Set by the button "I can't tell".</summary>
    public string? CannotTell { get; set; }

    /// <summary>Whether a figure stands beside "over-range": only one of them can be meant.</summary>
    public bool IsTwofold => Shown is "open" or "kick" && !string.IsNullOrWhiteSpace(Value) && !(Shown == "open" && IsOverRange(Value));

    /// <summary>The answer, or <see langword="null"/> where nothing was filled in or a figure cannot be read.</summary>
    public QuestionAnswer? Answer(Question asked)
    {
        var id = QuestionId ?? asked.Id;
        if (CannotTell is not null)
        {
            return new QuestionAnswer { QuestionId = id, Unknown = true };
        }

        return asked.Kind switch
        {
            QuestionKind.Choice => Choice is null ? null : new QuestionAnswer { QuestionId = id, Choice = Choice },
            QuestionKind.Confirm => Choice is null ? null : new QuestionAnswer { QuestionId = id, Confirmed = Choice == "yes" },
            QuestionKind.Text => string.IsNullOrWhiteSpace(Text) ? null : new QuestionAnswer { QuestionId = id, Text = Text },
            QuestionKind.Quantity when IsTwofold => null,
            QuestionKind.Quantity when asked.CanBeOpen && (Shown == "open" || IsOverRange(Value)) => Open(id),
            QuestionKind.Quantity => Number(asked.Unit == "megohm" ? Value?.Trim().TrimStart('>') : Value) is { } value ? new QuestionAnswer { QuestionId = id, Quantity = new(value, Unit) } : null,
            _ => Reading(id),
        };
    }

    /// <summary>The sentence that says what the form lacks to be an answer.</summary>
    public string Lacks(Question asked) => asked.Kind switch
    {
        _ when IsTwofold => "page.figure-or-open",
        QuestionKind.Choice or QuestionKind.Confirm => "page.choose-one",
        QuestionKind.Reading => "page.fill-in-reading",
        QuestionKind.Quantity when asked.CanBeOpen => "page.fill-in-reading",
        QuestionKind.Quantity => asked.Unit == "megohm" ? "page.fill-in-megohms" : "page.fill-in",
        _ => "page.fill-in-words",
    };

    private QuestionAnswer? Reading(string id) => Shown switch
    {
        _ when IsTwofold => null,
        _ when IsOverRange(Value) => Open(id),
        "open" => Open(id),
        "kick" => new QuestionAnswer { QuestionId = id, Reading = new() { Kick = true } },
        _ => Number(Value) is { } ohms
            ? new QuestionAnswer { QuestionId = id, Reading = new() { Ohms = ohms * Times(Shown) } }
            : null,
    };

    private static QuestionAnswer Open(string id) => new() { QuestionId = id, Reading = new() { Open = true } };

    /// <summary>What meters show when a figure lies above their range, typed as it stands there.</summary>
    private static bool IsOverRange(string? text) => text?.Trim().Replace(".", null, StringComparison.Ordinal).ToUpperInvariant() is "OL" or "0L";

    private static double Times(string? unit) => unit switch { "megohm" => 1_000_000, "kilohm" => 1000, _ => 1 };

    /// <summary>A figure with a point or a comma.</summary>
    internal static double? Number(string? text) =>
        double.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
