using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A session with its case and what the rules say of it.</summary>
/// <param name="State">The session as its events make it.</param>
/// <param name="Case">The facts that count, folded.</param>
/// <param name="Assessment">What the rules say.</param>
/// <param name="Last">The last reply; <see langword="null"/> after a restart, until the next one.</param>
internal sealed record LiveSession(SessionState State, CaseFile Case, Assessment Assessment, Reply? Last);
