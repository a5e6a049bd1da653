using System.Globalization;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Sessions;

/// <summary>What a session refuses, each with one sentence of advice.</summary>
internal static class Refusals
{
    public static Problem UnknownSession(string session) =>
        new("unknown-session", "session", Statement.Of("session.unknown", ("session", session.Length <= 40 ? session : $"{session[..40]}…")));

    public static Problem Closed() => new("gate-closed", "session", Statement.Of("session.closed"));

    public static Problem NothingAsked() => new("invalid-fact", "questionId", Statement.Of("session.nothing-asked"));

    public static Problem UnknownFact(string fact) =>
        new("invalid-fact", "factId", Statement.Of("session.unknown-fact", ("fact", fact.Length <= 40 ? fact : $"{fact[..40]}…")));

    public static Problem NoPractice() => new("not-ready", "practice", Statement.Of("session.no-practice")) { Missing = ["practice"] };

    public static Problem NoPlan(IReadOnlyList<string> missing) =>
        new("not-ready", "plan", Statement.Of("session.no-plan", ("missing", missing.Count == 0 ? "the windings" : string.Join(", ", missing)))) { Missing = missing };

    public static Problem StoreUnavailable() => new("store-unavailable", "session", Statement.Of("session.store-unavailable"));

    public static Problem Empty(string field) => new("invalid-fact", field, Statement.Of("session.text-empty", ("field", field)));

    public static Problem TooLong(string field, int most) => new("too-large", field, Statement.Of("session.text-too-long", ("field", field), ("most", Number(most))));

    public static Problem NoFacts() => new("invalid-fact", "facts", Statement.Of("session.no-facts"));

    public static Problem TooManyFacts(int most) => new("too-large", "facts", Statement.Of("session.too-many-facts", ("most", Number(most))));

    public static Problem TooManySessions(int found, int most) =>
        new("too-large", "id", Statement.Of("session.too-many-sessions", ("found", Number(found)), ("most", Number(most))));

    public static Problem Needed(string field, string options) =>
        new("invalid-fact", field, Statement.Of("session.needed", ("field", field), ("options", options)));

    public static Problem OneOf(string field, string options) =>
        new("invalid-fact", field, Statement.Of("session.one-of", ("field", field), ("options", options)));

    public static Problem WrongKey(int most) =>
        new("invalid-fact", "Idempotency-Key", Statement.Of("session.dangerous-key", ("field", "Idempotency-Key"), ("most", Number(most))));

    public static Problem WrongCursor() => new("invalid-fact", "after", Statement.Of("session.unknown-cursor", ("field", "after")));

    public static Problem WrongSize(int most) => new("invalid-fact", "size", Statement.Of("session.not-a-size", ("field", "size"), ("most", Number(most))));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
