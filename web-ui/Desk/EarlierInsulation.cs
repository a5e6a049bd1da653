using WireCoach.Rules.Insulation;
using WireCoach.Rules.Reference;

namespace WireCoach.WebUi.Desk;

/// <summary>Insulation of the same motor in earlier sessions, for its trend.</summary>
public sealed class EarlierInsulation(ICoachDesk desk, TradeKnowledge knowledge)
{
    private const int Most = 3;
    private const int Searched = 12;

    /// <summary>MΩ at 40 °C of the sessions before this one whose motor has the same name, the earliest first; the last three at most.</summary>
    public async Task<IReadOnlyList<double>> Of(SessionView session, CancellationToken cancel)
    {
        if (session.MotorTag is not { } tag || session.Practice is not null)
        {
            return [];
        }

        var page = await desk.List(new SessionFilter { MotorTag = tag, To = session.CreatedAt, Size = Searched }, cancel);
        var found = new List<double>();
        foreach (var earlier in (page.Value?.Items ?? []).Where(one => one.Id != session.Id && string.Equals(one.MotorTag, tag, StringComparison.OrdinalIgnoreCase)))
        {
            if ((await desk.Find(earlier.Id, cancel)).Value is { Practice: null } view && InsulationHistory.Left(knowledge, view.Case) is { } megohms)
            {
                found.Add(megohms);
            }

            if (found.Count == Most)
            {
                break;
            }
        }

        found.Reverse();
        return found;
    }
}
