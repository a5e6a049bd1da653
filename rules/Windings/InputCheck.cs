using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Refuses what cannot be: unknown leads, a lead against itself, ohms below zero.</summary>
internal static class InputCheck
{
    private const double MostOhms = 1e9;

    public static IReadOnlyList<Problem> Of(IdentificationInput input)
    {
        var problems = new List<Problem>();
        if (input.Leads.Count < 2)
        {
            problems.Add(new("invalid-fact", "leads", Statement.Of("windings.too-few-leads")));
        }

        foreach (var twice in input.Leads.GroupBy(lead => lead, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1))
        {
            problems.Add(new("invalid-fact", "leads", Statement.Of("windings.lead-twice", ("lead", twice.Key))));
        }

        for (var index = 0; index < input.Readings.Count; index++)
        {
            Check(input, input.Readings[index], $"readings[{index}]", problems);
        }

        Check(input.Meter, problems);
        return problems;
    }

    /// <summary>The number of a lead by its tag in any case; −1 for the frame or the earth, −2 for a lead that is not there.</summary>
    public static int Lead(IReadOnlyList<string> leads, string tag)
    {
        for (var lead = 0; lead < leads.Count; lead++)
        {
            if (string.Equals(leads[lead], tag, StringComparison.OrdinalIgnoreCase))
            {
                return lead;
            }
        }

        return string.Equals(tag, Fact.Reading.Frame, StringComparison.OrdinalIgnoreCase) || string.Equals(tag, Fact.Reading.Earth, StringComparison.OrdinalIgnoreCase) ? -1 : -2;
    }

    private static void Check(IdentificationInput input, Fact.Reading reading, string at, List<Problem> problems)
    {
        var (from, to) = (Lead(input.Leads, reading.From), Lead(input.Leads, reading.To));
        if (from == -2)
        {
            problems.Add(Unknown($"{at}.from", reading.From));
        }

        if (to == -2)
        {
            problems.Add(Unknown($"{at}.to", reading.To));
        }

        if (from == to && from != -2)
        {
            problems.Add(new("invalid-fact", at, Statement.Of("problem.same-lead", ("lead", reading.From))));
        }

        if (reading.Ohms is { } ohms && !(ohms is >= 0 and <= MostOhms))
        {
            problems.Add(new("unreadable-quantity", $"{at}.ohms", Statement.Of("windings.absurd-ohms")));
        }

        if (reading.Ohms is null && !reading.Open && !reading.Short && !reading.Kick)
        {
            problems.Add(new("invalid-fact", at, Statement.Of("windings.empty-reading")));
        }

        Problem Unknown(string field, string lead) =>
            new("unknown-lead", field, Statement.Of("problem.unknown-lead", ("lead", lead), ("leads", string.Join(", ", input.Leads))));
    }

    private static void Check(MeterInput? meter, List<Problem> problems)
    {
        Range("meter.percent", meter?.Percent, 50);
        Range("meter.counts", meter?.Counts, 100);
        Range("meter.testLeadOhms", meter?.TestLeadOhms, 10);

        void Range(string field, double? value, double most)
        {
            if (value is { } given && !(given >= 0 && given <= most))
            {
                problems.Add(new("unreadable-quantity", field, Statement.Of("windings.meter-figure", ("field", field))));
            }
        }
    }
}
