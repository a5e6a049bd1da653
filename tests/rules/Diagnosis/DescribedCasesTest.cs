using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Tests.Language;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>From whole descriptions in plain words to likely causes and warnings.</summary>
public sealed class DescribedCasesTest(ITestOutputHelper output)
{
    private static readonly Troubleshooting Troubleshooting = new(Trade.Knowledge);

    [Theory]
    [InlineData("described.yaml", 0.90, 0)]
    [InlineData("described-second.yaml", 0.85, 0)]
    [InlineData("described-third.yaml", 0.85, 0)]
    [InlineData("described-fourth.yaml", 0.85, 2)] // two whose wrong volts show only in joints that are told without marks, or in a leg of the supply
    [InlineData("described-fifth.yaml", 0.85, 3)] // pushing a blade by hand, told in few words, and volts of a plate that is only named by the machine
    [InlineData("described-sixth.yaml", 0.85, 1)] // a direction that only an arrow tells
    [InlineData("described-seventh.yaml", 0.88, 0)]
    [InlineData("described-tenth.yaml", 0.85, 0)]
    [InlineData("described-ninth.yaml", 0.66, 12)] // most of its words are unheard
    [InlineData("development-fifteenth.yaml", 0.92, 0)]
    [InlineData("development-sixteenth.yaml", 0.88, 0)]
    [InlineData("described-eighth.yaml", 0.85, 1)] // links that were left as they were, with nothing said of the supply
    public void An_accepted_cause_is_mostly_among_the_first_three_and_warnings_are_there(string file, double share, int mostWithoutWarning)
    {
        var cases = Read(file);
        var named = 0;
        var silent = new List<string>();
        foreach (var one in cases)
        {
            var facts = Troubleshooting.Hear(one.Say).Value!;
            var report = Troubleshooting.Examine(CaseFile.From(new CaseOpening(Enum.Parse<Role>(one.Role, ignoreCase: true), one.Region == "iec" ? Region.Iec : Region.NorthAmerica), facts));
            List<string> first = [.. report.Faults.Causes.Take(3).Select(cause => cause.Id)];
            var missing = one.Cautions.Except(report.Cautions.Select(caution => caution.Id)).ToList();
            named += first.Intersect(one.Causes).Any() ? 1 : 0;
            if (missing.Count > 0 || !first.Intersect(one.Causes).Any())
            {
                output.WriteLine($"{one.Say}\n    first {string.Join(", ", first)}; lacks {string.Join(", ", missing)}; heard {string.Join(", ", facts.OfType<Fact.Symptom>().Select(symptom => symptom.Present ? symptom.Id : "no " + symptom.Id))}");
            }

            silent.AddRange(missing.Select(caution => $"{caution}: {one.Say}"));
        }

        output.WriteLine($"{named} of {cases.Count}");
        Assert.True(silent.Count <= mostWithoutWarning, string.Join("; ", silent));
        Assert.True(named >= share * cases.Count, $"{named} of {cases.Count}");
    }

    private static List<DescribedCase> Read(string file) => file.StartsWith("development", StringComparison.Ordinal)
        ? [.. Utterance.Read(file).Where(told => told.Causes.Length > 0).Select(told => new DescribedCase { Role = told.Role, Region = told.Region!, Say = told.Say, Causes = told.Causes })]
        : ReadDescribed(file);

    private static List<DescribedCase> ReadDescribed(string file) =>
        new DeserializerBuilder().WithNamingConvention(HyphenatedNamingConvention.Instance).Build()
            .Deserialize<List<DescribedCase>>(File.ReadAllText(Path.Combine(Repository.Root, "tests", "rules", "Diagnosis", file)));
}

/// <summary>A description with what must come of it.</summary>
public sealed class DescribedCase
{
    public string Role { get; set; } = string.Empty;

    public string Region { get; set; } = "na";

    public string Say { get; set; } = string.Empty;

    public string[] Causes { get; set; } = [];

    public string[] Cautions { get; set; } = [];
}
