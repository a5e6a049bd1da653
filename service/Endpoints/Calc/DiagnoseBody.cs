using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>A case as a client describes it in one go.</summary>
internal sealed record DiagnoseBody
{
    public Role? Role { get; init; }

    public Region? Region { get; init; }

    public DiagnoseMachine? Machine { get; init; }

    public PlateBody? Plate { get; init; }

    public Fact.Supply? Supply { get; init; }

    public IReadOnlyList<DiagnoseSymptom>? Symptoms { get; init; }

    public IReadOnlyList<Fact>? Facts { get; init; }

    public string? Text { get; init; }

    public IReadOnlyList<DiagnoseResult>? Results { get; init; }

    public string? Application { get; init; }

    public IReadOnlyList<string>? Instruments { get; init; }

    /// <summary>Whether anything at all was said of what is wrong.</summary>
    public bool Says => Symptoms is { Count: > 0 } || Facts is { Count: > 0 } || Results is { Count: > 0 } || !string.IsNullOrWhiteSpace(Text) || !string.IsNullOrWhiteSpace(Application);

    /// <summary>The facts in the order in which they count: the machine, what was noticed, what was said, what was tested.</summary>
    public IReadOnlyList<Fact> Read(TradeKnowledge knowledge, IReadOnlyList<Fact> heard, List<Problem> problems)
    {
        var facts = new List<Fact>();
        facts.AddRange(Machine?.Facts(knowledge, problems) ?? []);
        facts.AddRange((Plate?.Fields() ?? PlateFields.Empty).All.Select(field => new Fact.Plate { Field = field.Key, Value = field.Value }));
        facts.AddRange(Supply is null ? [] : [Supply]);
        facts.AddRange(string.IsNullOrWhiteSpace(Application) ? [] : [new Fact.Application { Text = Application, ApplicationId = Application.Contains(' ', StringComparison.Ordinal) ? null : Application }]);
        facts.AddRange((Instruments ?? []).Select(id => new Fact.Instrument { Id = id }));
        facts.AddRange(heard);
        for (var at = 0; at < (Symptoms?.Count ?? 0); at++)
        {
            var symptom = Symptoms![at];
            if (symptom?.Id is { } id && knowledge.Symptoms.ContainsKey(id))
            {
                facts.Add(new Fact.Symptom { Id = id, Present = symptom.Present });
            }
            else
            {
                problems.Add(new Problem("invalid-fact", $"symptoms[{at}].id", Statement.Of("diagnose.unknown-symptom", ("field", $"symptoms[{at}].id"), ("value", symptom?.Id ?? "missing"))));
            }
        }

        facts.AddRange((Facts ?? []).OfType<Fact>());
        for (var at = 0; at < (Results?.Count ?? 0); at++)
        {
            var answer = (Results![at] ?? new DiagnoseResult()).Result().Facts(knowledge, $"results[{at}]");
            facts.AddRange(answer.Value ?? []);
            problems.AddRange(answer.Problems);
        }

        return facts;
    }
}

/// <summary>A symptom that was seen, or denied.</summary>
internal sealed record DiagnoseSymptom
{
    public string? Id { get; init; }

    public bool Present { get; init; } = true;
}

/// <summary>What a test showed.</summary>
internal sealed record DiagnoseResult
{
    public string? Test { get; init; }

    public string? Outcome { get; init; }

    public JsonElement Value { get; init; }

    public double? Volts { get; init; }

    public double? Amps { get; init; }

    public double? Hertz { get; init; }

    public double? Ohms { get; init; }

    public double? Megohms { get; init; }

    public double? Microfarads { get; init; }

    public TestResult Result() => new()
    {
        Test = Test ?? "missing",
        Outcome = Outcome ?? (Value.ValueKind == JsonValueKind.String ? Value.GetString() : null),
        Values = [.. Sent()],
    };

    private IEnumerable<(string, double?)> Sent() => Value.ValueKind switch
    {
        JsonValueKind.Number => [("value", Value.GetDouble())],
        JsonValueKind.Array => Value.EnumerateArray().Select(item => ("value", Number(item))),
        JsonValueKind.Object => Value.EnumerateObject().Select(member => (member.Name, Number(member.Value))),
        _ => new[] { ("volts", Volts), ("amps", Amps), ("hertz", Hertz), ("ohms", Ohms), ("megohms", Megohms), ("microfarads", Microfarads) }.Where(one => one.Item2 is not null),
    };

    /// <summary>Anything but a number (null, "open", "OL") is an open circuit.</summary>
    private static double? Number(JsonElement item) => item.ValueKind == JsonValueKind.Number ? item.GetDouble() : null;
}

/// <summary>What is known of the machine.</summary>
internal sealed record DiagnoseMachine
{
    public string? Family { get; init; }

    public string? Layout { get; init; }

    public int? Phases { get; init; }

    public bool? HasCapacitor { get; init; }

    public PlateValue? Volts { get; init; }

    public PlateValue? Amps { get; init; }

    public PlateValue? Horsepower { get; init; }

    public PlateValue? Kilowatts { get; init; }

    public double? Rpm { get; init; }

    public double? Hertz { get; init; }

    public Fact.Supply? Supply { get; init; }

    public IReadOnlyList<Fact> Facts(TradeKnowledge knowledge, List<Problem> problems)
    {
        var facts = new List<Fact>();
        if (Family is not null)
        {
            facts.AddRange(OfFamily(knowledge, problems));
        }

        if (Layout is not null)
        {
            facts.Add(new Fact.Choice { Question = "layout", Option = Layout });
            if (!knowledge.Layouts.ContainsKey(Layout))
            {
                problems.Add(new Problem("invalid-fact", "machine.layout", Statement.Of("diagnose.unknown-layout", ("field", "machine.layout"), ("value", Layout))));
            }
        }

        facts.AddRange(Marks());
        facts.AddRange(HasCapacitor is { } has ? [new Fact.Capacitor { Present = has }] : []);
        facts.AddRange(Supply is null ? [] : [Supply]);
        return facts;
    }

    /// <summary>What stands on the plate.</summary>
    public IEnumerable<Fact.Plate> Marks()
    {
        (string Field, PlateValue? Value)[] all =
        [
            ("phases", Number(Phases)), ("volts", Volts), ("amps", Amps), ("horsepower", Horsepower), ("kilowatts", Kilowatts), ("rpm", Number(Rpm)), ("hertz", Number(Hertz)),
        ];
        return all.Where(mark => mark.Value is not null).Select(mark => new Fact.Plate { Field = mark.Field, Value = mark.Value! });

        static PlateValue? Number(double? number) => number is { } given ? PlateValue.Of(given) : null;
    }

    private IEnumerable<Fact> OfFamily(TradeKnowledge knowledge, List<Problem> problems)
    {
        var name = Family!.Trim().ToLowerInvariant().Replace(' ', '-').Replace("-motor", string.Empty, StringComparison.Ordinal);
        if (name == "single-phase")
        {
            return [new Fact.Plate { Field = "phases", Value = PlateValue.Of(1) }];
        }

        if (knowledge.Families.Values.FirstOrDefault(family => family.Id == name || family.Also.Contains(name, StringComparer.Ordinal)) is { } known)
        {
            return [new Fact.Choice { Question = "family", Option = known.Id }];
        }

        problems.Add(new Problem("invalid-fact", "machine.family", Statement.Of("diagnose.unknown-family", ("field", "machine.family"), ("value", Family!), ("known", string.Join(", ", knowledge.Families.Keys)))));
        return [];
    }
}
