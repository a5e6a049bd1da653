using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Refuses instruments that no test uses: whoever names one is told which there are, or would wait in vain for a test that it was meant to allow.</summary>
internal static class InstrumentCheck
{
    /// <summary>What is wrong with the instruments of a request.</summary>
    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, IReadOnlyList<string?>? instruments)
    {
        var known = FactCheck.InstrumentsOf(knowledge);
        return (instruments ?? []).Select((id, at) => (Id: id, Field: $"instruments[{at}]"))
            .Where(one => one.Id is null || !known.Contains(one.Id, StringComparer.Ordinal))
            .Select(one => string.IsNullOrWhiteSpace(one.Id) ? Problem.NotGiven(one.Field)
                : new("invalid-fact", one.Field, Statement.Of("fact.unknown-id", ("field", one.Field), ("value", FactCheck.Shortened(one.Id)), ("options", string.Join(", ", known)))));
    }
}
