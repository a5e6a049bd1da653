using WireCoach.Rules.Cases;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>A case as a person brings it, and what a careful senior hand would think of it.</summary>
public sealed record WrittenCase
{
    public required string Case { get; init; }

    public required string Role { get; init; }

    public string? Family { get; init; }

    public string? Application { get; init; }

    public string? Unknown { get; init; }

    public Dictionary<string, double> Supply { get; init; } = [];

    public Dictionary<string, double> Plate { get; init; } = [];

    public List<string> Seen { get; init; } = [];

    public List<string> Denied { get; init; } = [];

    public Dictionary<string, string> Results { get; init; } = [];

    public List<string> Confirmed { get; init; } = [];

    /// <summary>Accepted causes: one of them is among the first three.</summary>
    public required List<string> Causes { get; init; }

    /// <summary>The cause that must stand first, where the case leaves no doubt.</summary>
    public string? First { get; init; }

    public string? Status { get; init; }

    /// <summary>Tests of which one comes first; empty where any will do.</summary>
    public List<string> Tests { get; init; } = [];

    public List<string> RefusedTests { get; init; } = [];

    public List<string> Cautions { get; init; } = [];

    public string? ReferTo { get; init; }

    public bool Stop { get; init; }

    public static IReadOnlyList<WrittenCase> All { get; } = new DeserializerBuilder()
        .WithNamingConvention(HyphenatedNamingConvention.Instance).WithDuplicateKeyChecking().WithEnforceRequiredMembers().Build()
        .Deserialize<List<WrittenCase>>(File.ReadAllText(Path.Combine(Repository.Root, "tests", "rules", "Diagnosis", "cases.yaml")));

    public CaseFile ToFile() => CaseFile.From(new CaseOpening(Enum.Parse<Role>(Role, ignoreCase: true), Region.NorthAmerica), Facts());

    private IEnumerable<Fact> Facts()
    {
        if (Family is not null)
        {
            yield return new Fact.Choice { Question = "family", Option = Family };
        }

        if (Application is not null)
        {
            yield return new Fact.Application { Text = Application };
        }

        if (Unknown is not null)
        {
            yield return new Fact.Unknown { Question = Unknown };
        }

        if (Supply.Count > 0)
        {
            yield return new Fact.Supply { Volts = Supply["volts"], Phases = (int)Supply["phases"] };
        }

        foreach (var (field, value) in Plate)
        {
            yield return new Fact.Plate { Field = field, Value = PlateValue.Of(value) };
        }

        foreach (var symptom in Seen)
        {
            yield return new Fact.Symptom { Id = symptom };
        }

        foreach (var symptom in Denied)
        {
            yield return new Fact.Symptom { Id = symptom, Present = false };
        }

        foreach (var (test, outcome) in Results)
        {
            yield return new Fact.BenchTest { Test = test, Outcome = outcome };
        }

        foreach (var confirmation in Confirmed)
        {
            yield return new Fact.Confirm { Id = confirmation };
        }
    }
}
