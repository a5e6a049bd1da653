using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What a test showed, as a client sends it: an outcome by id or in the words of the test, or measured values.</summary>
public sealed record TestResult
{
    /// <summary>A test id.</summary>
    public required string Test { get; init; }

    /// <summary>The outcome's id, or its reading in words; <see langword="null"/> where values were measured.</summary>
    public string? Outcome { get; init; }

    /// <summary>Measured values by name: <c>value</c>, <c>volts</c>, <c>amps</c>, <c>hertz</c>, <c>run</c>, <c>start</c>, <c>frame</c>; a <see langword="null"/> value is an open circuit.</summary>
    public IReadOnlyList<(string Name, double? Value)> Values { get; init; } = [];

    /// <summary>The facts that it amounts to.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="field">The member that holds it, for problems.</param>
    public Answer<IReadOnlyList<Fact>> Facts(TradeKnowledge knowledge, string field)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        if (!knowledge.Tests.TryGetValue(Test, out var guide))
        {
            return new Problem("invalid-fact", $"{field}.test", Statement.Of("diagnose.unknown-test", ("field", $"{field}.test"), ("value", Test)));
        }

        var known = string.Join(", ", guide.Outcomes.Select(one => one.Id));
        if (Outcome is not null)
        {
            var named = guide.Outcomes.FirstOrDefault(one => one.Id == Outcome || string.Equals(one.Reading, Outcome, StringComparison.OrdinalIgnoreCase));
            return named is null
                ? new Problem("invalid-fact", $"{field}.outcome", Statement.Of("diagnose.unknown-outcome", ("field", $"{field}.outcome"), ("value", Outcome), ("test", guide.Name), ("known", known)))
                : Given([new Fact.BenchTest { Test = Test, Outcome = named.Id }]);
        }

        if (Values.Any(one => one.Value is { } value && !(double.IsFinite(value) && value >= 0)))
        {
            return new Problem("invalid-fact", $"{field}.value", Statement.Of("diagnose.value-out-of-range", ("field", $"{field}.value")));
        }

        return Measured(knowledge, guide) is { Count: > 0 } facts
            ? Given(facts)
            : new Problem("invalid-fact", $"{field}.value", Statement.Of("diagnose.value-or-outcome", ("field", $"{field}.value"), ("test", guide.Name), ("known", known)));
    }

    private static Answer<IReadOnlyList<Fact>> Given(IReadOnlyList<Fact> facts) => Answer<IReadOnlyList<Fact>>.Given(facts);

    private List<Fact> Measured(TradeKnowledge knowledge, TestGuide guide)
    {
        if (guide.Id == "capacitance" && Named("volts") is { } volts && Named("amps") is { } amps && Named("hertz") is { } hertz && volts > 0 && hertz > 0)
        {
            var measured = CapacitorHealth.Measured(knowledge, new CapacitorInput { Measured = new CapacitorMeasured { Volts = volts, Amps = amps, Hertz = hertz } });
            return [new Fact.BenchTest { Test = Test, Value = measured!.Value, Unit = "microfarad" }];
        }

        if (guide.Id == "resistance" && Values.Any(one => one.Name is "run" or "start" or "frame"))
        {
            return [new Fact.BenchTest { Test = Test, Outcome = Winding() }];
        }

        if (guide.Value is null)
        {
            return [];
        }

        if (guide.Id == "resistance" && Values.Any(one => one.Value is null))
        {
            return [new Fact.BenchTest { Test = Test, Outcome = Values.All(one => one.Value is null) ? "all-open" : "phase-open" }];
        }

        return [.. Values.Where(one => one.Value is not null).Select(one => new Fact.BenchTest { Test = Test, Value = one.Value, Unit = guide.Value.Unit })];
    }

    /// <summary>Run winding, start branch and frame in one result: what is open or down to the frame decides.</summary>
    private string Winding() =>
        Has("frame") && Named("frame") is not null ? "to-frame"
        : Open("run") && Open("start") ? "all-open"
        : Open("run") ? "run-open"
        : Open("start") ? "start-open"
        : "normal";

    private bool Has(string name) => Values.Any(one => one.Name == name);

    private bool Open(string name) => Has(name) && Named(name) is null;

    private double? Named(string name) => Values.FirstOrDefault(one => one.Name == name).Value;
}
