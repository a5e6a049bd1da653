using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Reads the evidence about what is wrong out of a case.</summary>
/// <param name="model">The causes as numbers.</param>
internal sealed class SignReader(CauseModel model)
{
    private readonly MarkedReadings _marked = new(model);
    private readonly CapacitorReadings _capacitors = new(model);

    /// <summary>The evidence in a fixed order: symptoms by id, those in doubt, what was left unsaid beside them, then tests in the order of knowledge. Of one test the latest result counts.</summary>
    /// <param name="file">The case.</param>
    /// <param name="shown">Outcomes by test id for tests that were not made by themselves.</param>
    public IReadOnlyList<Sign> Read(CaseFile file, IReadOnlyDictionary<string, string>? shown = null)
    {
        var symptoms = new SortedDictionary<string, bool>(file.Symptoms.ToDictionary(), StringComparer.Ordinal);
        foreach (var run in file.Runs)
        {
            if (Said(run) is { } symptom)
            {
                symptoms[symptom] = true;
            }
        }

        var signs = new List<Sign>();
        foreach (var (id, present) in symptoms)
        {
            if (Place(model.Symptoms, symptom => symptom.Id == id) is var at and >= 0)
            {
                signs.Add(new Sign.Noticed(at, id, present));
            }
        }

        int[] doubted = [.. Enumerable.Range(0, model.Symptoms.Count).Where(at => !symptoms.ContainsKey(model.Symptoms[at].Id) && file.Choices.ContainsKey(Fact.Choice.Doubted + model.Symptoms[at].Id))];
        signs.AddRange(doubted.Select(at => new Sign.Doubted(at)));
        if (symptoms.ContainsValue(true))
        {
            signs.Add(new Sign.Untold([.. Enumerable.Range(0, model.Symptoms.Count).Except(doubted).Where(at => !symptoms.ContainsKey(model.Symptoms[at].Id))]));
        }

        for (var test = 0; test < model.Tests.Count; test++)
        {
            var results = Results(file, test);
            foreach (var (kind, outcome) in results.Count == 0 && shown?.GetValueOrDefault(model.Tests[test].Id) is { } before ? [new(null, before)] : results)
            {
                signs.Add(new Sign.Shown(test, model.Tests[test].Id, Place(model.Tests[test].Outcomes, one => one.Id == outcome), outcome, kind));
            }
        }

        return signs;
    }

    /// <summary>Tests whose values cannot be judged, because what they are measured against is not known.</summary>
    public IReadOnlyList<string> Unjudged(CaseFile file) =>
        [.. Enumerable.Range(0, model.Tests.Count).Where(test => model.Tests[test].Value is not null && Results(file, test).Count == 0
            && file.BenchTests.Any(result => result.Test == model.Tests[test].Id && result.Value is not null)).Select(test => model.Tests[test].Id)];

    private static string? Said(Fact.Running run) => run.Outcome switch
    {
        "hummed" => "hums-no-start",
        "tripped" => "trips-at-once",
        "nothing" => "silent-no-start",
        "slow" => "runs-slow",
        _ => run.Direction == "wrong" ? "wrong-direction" : null,
    };

    /// <summary>What a test showed; of capacitors there may be several results, each of another one.</summary>
    private IReadOnlyList<CapacitorReading> Results(CaseFile file, int place) =>
        model.Tests[place].Id == CapacitorReadings.Test ? _capacitors.Of(model.Tests[place], file)
        : Result(file, place) is { } outcome ? [new(null, outcome)] : [];

    private string? Result(CaseFile file, int place)
    {
        var guide = model.Tests[place];
        string? outcome = null;
        var values = new List<double>();
        foreach (var fact in file.Facts)
        {
            if (fact is Fact.BenchTest test && test.Test == guide.Id)
            {
                if (test.Outcome is { } named && guide.Outcomes.Any(one => one.Id == named))
                {
                    (outcome, values) = (named, []);
                }
                else if (test.Value is { } value)
                {
                    values.Add(value);
                    outcome = null;
                }
            }
            else if (Value(guide.Id, fact) is { } read)
            {
                values.Add(read);
                outcome = null;
            }
            else if (guide.Id == "resistance" && fact is Fact.Reading reading && ToFrame(reading))
            {
                outcome ??= "to-frame";
            }
        }

        if (guide.Id == "resistance" && outcome is "all-open" && _marked.Outcome(guide, file) is { } told)
        {
            return told; // readings between marked leads say which winding it is
        }

        return outcome ?? Outcomes.Of(guide, values, file) ?? guide.Id switch
        {
            "plate" => Connected.Against(file),
            "resistance" => _marked.Outcome(guide, file),
            "run-direction" => Turned(file),
            "supply-voltage" => model.SupplyLevel.Of(file),
            _ => null,
        };
    }

    /// <summary>The direction that somebody saw already; nobody starts it again to see it.</summary>
    private static string? Turned(CaseFile file) => file.Symptoms.GetValueOrDefault("wrong-direction") ? "wrong" : null;

    /// <summary>A value that another kind of fact gives for a test.</summary>
    private static double? Value(string test, Fact fact) => (test, fact) switch
    {
        ("insulation", Fact.Insulation insulation) => insulation.Megohms,
        ("run-current", Fact.Running running) => running.Outcome is null or "ran" ? running.Amps : null,
        ("run-speed", Fact.Running running) => running.Rpm,
        ("supply-voltage", Fact.Running running) => running.Volts,
        (Fact.BenchTest.EarthContinuity, Fact.Reading { Ohms: not null }) => CaseFile.EarthOhms(fact),
        _ => null,
    };

    private static bool ToFrame(Fact.Reading reading) =>
        (reading.Short || reading.Ohms is not null) && !reading.Open
        && (reading.To == Fact.Reading.Frame || reading.From == Fact.Reading.Frame)
        && reading.To != Fact.Reading.Earth && reading.From != Fact.Reading.Earth;

    private static int Place<T>(IReadOnlyList<T> all, Predicate<T> match)
    {
        for (var i = 0; i < all.Count; i++)
        {
            if (match(all[i]))
            {
                return i;
            }
        }

        return -1;
    }
}
