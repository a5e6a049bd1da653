using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>What is said of the likeliest cause is what the list of causes says.</summary>
public sealed class MostLikelyTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    public static TheoryData<Role> Roles => [Role.Technician, Role.Homeowner, Role.Manager, Role.Apprentice];

    [Theory]
    [MemberData(nameof(Roles))]
    public void The_cause_that_is_called_most_likely_leads_the_list(Role role)
    {
        var symptoms = Trade.Knowledge.Symptoms.Keys.Order(StringComparer.Ordinal).ToList();
        var said = symptoms.SelectMany((first, at) => (string[][])[[first], [first, symptoms[(at + 7) % symptoms.Count]]])
            .Select(shown => Coach.Assess(CaseFile.From(new CaseOpening(role, Region.Iec), [.. shown.Select(id => new Fact.Symptom { Id = id })])))
            .SelectMany(assessed => assessed.Say.Where(one => one.Id is "diagnosis.most-likely" or "diagnosis.cannot-tell-of-many")
                .Select(one => (Said: one.ToString(), Listed: $"{one.Id} (cause: {Trade.Knowledge.Causes[assessed.Causes[0].Id].Name})")))
            .ToList();
        Assert.True(said.Count > 20, $"Said {said.Count} times.");
        Assert.All(said, one => Assert.Equal(one.Listed, one.Said));
    }
}
