using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Reference;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Puts beside a new insulation reading what earlier sessions of the same motor left. It becomes part of the fact, so that a session says the same again whatever happens to the others.</summary>
internal sealed class EarlierSessions(ISessionStore store, TradeKnowledge knowledge)
{
    private const int Most = 3;
    private const int Searched = 12;

    /// <summary>What was given, its insulation readings with those of earlier sessions.</summary>
    /// <param name="session">The session's id.</param>
    /// <param name="opened">How it was opened.</param>
    /// <param name="before">When it was opened.</param>
    /// <param name="given">What was given.</param>
    /// <param name="cancel">Who gave it went away.</param>
    public async Task<Given> Beside(string session, SessionEvent.Opened opened, DateTimeOffset before, Given given, CancellationToken cancel)
    {
        if (!given.Facts.Any(fact => fact is Fact.Insulation))
        {
            return given;
        }

        var earlier = await Of(session, opened, before, cancel);
        return given with { Facts = [.. given.Facts.Select(fact => fact is Fact.Insulation reading ? reading with { EarlierMegohms = earlier } : fact)] };
    }

    /// <summary>Only those who may see all sessions of a shop are told of the others.</summary>
    private async Task<IReadOnlyList<double>> Of(string session, SessionEvent.Opened opened, DateTimeOffset before, CancellationToken cancel)
    {
        if (opened is not { MotorTag: { } tag, Practice: null, Role: Role.Technician or Role.Manager })
        {
            return [];
        }

        var found = new List<double>();
        var page = await store.List(new SessionFilter { MotorTag = tag, To = before, Size = Searched }, cancel);
        foreach (var one in page.Items.Where(one => one.Id != session && !one.Practice))
        {
            if (found.Count < Most && InsulationHistory.Left(knowledge, SessionState.From(await store.Events(one.Id, cancel)).Case) is { } megohms)
            {
                found.Add(megohms);
            }
        }

        found.Reverse();
        return found;
    }
}
