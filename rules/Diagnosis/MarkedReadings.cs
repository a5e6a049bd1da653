using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What readings between leads with standard marks show of the windings, where nobody has put it in words.</summary>
/// <param name="model">The causes, kinds of motor and layouts.</param>
internal sealed class MarkedReadings(CauseModel model)
{
    private const int All = 3;

    private static readonly Dictionary<string, string> Broken = new(StringComparer.Ordinal)
    {
        ["phase"] = "phase-open",
        ["run"] = "run-open",
        ["start"] = "start-open",
        ["shunt-field"] = "field-open",
    };

    /// <summary>The outcome of the test of resistances, or <see langword="null"/> where the marks do not tell, or not all motors with such marks agree.</summary>
    /// <param name="guide">The test.</param>
    /// <param name="file">The case.</param>
    public string? Outcome(TestGuide guide, CaseFile file)
    {
        var leads = new MarkedLeads(model, file);
        var read = leads.Read();
        var weights = CandidateFamilies.Weights(file, model, sealedCircuit: false);
        if (read.Count == 0)
        {
            return IsOneOfThreeOpen(file) && !model.Families.Where((_, at) => weights[at] > 0).Any(family => family.Phases != All) ? "phase-open" : null;
        }

        var fitting = leads.Bearing.Where(form => read.All(one => one.Reading.Ohms is null || one.Way(form) is not null)).ToList();
        var told = model.Families.Where((_, at) => weights[at] > 0).GroupBy(family => family.Phases)
            .SelectMany(families => Likely([.. fitting.Where(form => families.Any(family => family.Layouts.Contains(form.Id, StringComparer.Ordinal)))], read))
            .Select(form => Outcome(guide, file, form, read)).Distinct(StringComparer.Ordinal).ToList();
        return told is [{ } agreed] ? agreed : null;
    }

    /// <summary>Whether just three leads were read without marks, and one of them is open to both others: a broken phase, whichever it is.</summary>
    private static bool IsOneOfThreeOpen(CaseFile file)
    {
        if (file.ReadLeads.Distinct(StringComparer.OrdinalIgnoreCase).ToList() is not [var one, var other, var third] || file.Leads.Count is not (0 or All))
        {
            return false;
        }

        List<Fact.Reading?> pairs = [Latest(one, other), Latest(one, third), Latest(other, third)];
        return pairs.Count(reading => reading is { Open: true }) == All - 1 && pairs.Exists(reading => reading is { Ohms: not null });

        Fact.Reading? Latest(string from, string to) => file.Readings.LastOrDefault(reading => reading.IsOfPair(from, to));
    }

    /// <summary>The motors with the fewest leads, for whoever names four marks of a motor seldom leaves out two; without those in which much more would be broken than in others.</summary>
    private static IEnumerable<Layout> Likely(List<Layout> forms, IReadOnlyList<MarkedPair> read)
    {
        List<(Layout Form, int Open)> fewest = [.. forms.Where(form => form.Leads.Count == forms.Min(other => other.Leads.Count))
            .Select(form => (form, read.Count(one => one.Reading.Open && one.Way(form) is not null)))];
        return fewest.Where(one => one.Open - fewest.Min(other => other.Open) < All).Select(one => one.Form);
    }

    private string? Outcome(TestGuide guide, CaseFile file, Layout form, IReadOnlyList<MarkedPair> read)
    {
        List<(Fact.Reading Reading, IReadOnlyList<LayoutCoil> Coils)> ways =
            [.. read.Select(one => (one.Reading, Coils: one.Way(form)!)).Where(way => way.Coils is not null)];
        var open = ways.FindAll(way => way.Reading.Open);
        if (open.Count == 0)
        {
            return Whole(guide, file, ways);
        }

        List<string> roles = [.. open.Select(way => way.Coils.Select(coil => coil.Role).Distinct(StringComparer.Ordinal).ToList()).Where(one => one.Count == 1).Select(one => one[0])];
        return (open.Count >= All && open.Count == ways.Count) || (roles.Contains("run") && roles.Contains("start")) ? "all-open"
            : Broken.FirstOrDefault(one => roles.Contains(one.Key)).Value;
    }

    /// <summary>Nothing is open: three that should be alike are held against each other, or two in a row against their sum.</summary>
    private string? Whole(TestGuide guide, CaseFile file, List<(Fact.Reading Reading, IReadOnlyList<LayoutCoil> Coils)> ways)
    {
        var ohms = ways.Where(way => way.Reading.Ohms is not null).Select(way => (Ohms: way.Reading.Ohms!.Value, Groups: Groups(way.Coils))).ToList();
        if (ohms.GroupBy(one => one.Groups, StringComparer.Ordinal).FirstOrDefault(like => like.Count() >= All) is { } alike)
        {
            return Outcomes.Of(guide, [.. alike.Select(one => one.Ohms)], file);
        }

        return ohms.Count == All && ways.Count == All && ohms.OrderBy(one => one.Groups.Length).ToList() is [var one, var other, var both]
            && both.Groups == Groups([.. ways.Where(way => Groups(way.Coils) != both.Groups).SelectMany(way => way.Coils)])
            && Math.Abs(both.Ohms - one.Ohms - other.Ohms) <= model.SumShare * (one.Ohms + other.Ohms) ? "normal" : null;
    }

    private static string Groups(IReadOnlyList<LayoutCoil> coils) => string.Join('+', coils.Select(coil => coil.Group).Order(StringComparer.Ordinal));
}
