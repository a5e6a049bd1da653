namespace WireCoach.Service.Phrasing;

/// <summary>Rewordings of what was said last; the exact words stand on the page already.</summary>
/// <param name="State"><c>off</c>, <c>ready</c>, <c>busy</c>, <c>resting</c>, or <c>overtaken</c> by a newer turn.</param>
/// <param name="Sequence">The place in the session's log to which they belong.</param>
/// <param name="Notice">One quiet sentence when the model does not answer.</param>
/// <param name="Items">The sentences that were reworded.</param>
internal sealed record Rewordings(string State, int Sequence, string? Notice, IReadOnlyList<Rewording> Items);

/// <summary>A sentence in other words.</summary>
/// <param name="Id">The sentence's id.</param>
/// <param name="Exact">The engine's own words.</param>
/// <param name="Text">The other words.</param>
/// <param name="Mark">What stands beside it on a page.</param>
internal sealed record Rewording(string Id, string Exact, string Text, string Mark);
