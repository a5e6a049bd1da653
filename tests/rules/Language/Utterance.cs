using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace WireCoach.Rules.Tests.Language;

/// <summary>One message of the development or the held-out set, with what must be read from it.</summary>
public sealed class Utterance
{
    private static readonly IDeserializer Yaml = new DeserializerBuilder().WithNamingConvention(HyphenatedNamingConvention.Instance).Build();

    public string Say { get; set; } = string.Empty;

    public string[] Leads { get; set; } = [];

    public AskedQuestion? Asked { get; set; }

    public string? Region { get; set; }

    public string[] Expect { get; set; } = [];

    /// <summary>Who says it, and which causes may stand among the first three after it: only where it is a whole description.</summary>
    public string Role { get; set; } = string.Empty;

    public string[] Causes { get; set; } = [];

    public bool Corrects { get; set; }

    public static List<Utterance> Read(string file) =>
        Yaml.Deserialize<List<Utterance>>(File.ReadAllText(Path.Combine(Repository.Root, "tests", "rules", "Language", file)));

    /// <summary>The same in other words, in answer to the same question.</summary>
    public Utterance Saying(string words) => new() { Say = words, Leads = Leads, Asked = Asked, Region = Region, Expect = Expect, Corrects = Corrects };

    public Understood Heard(Listener listener) => listener.Understand(Say, Leads, Open(), Place());

    /// <summary>What is weighed of it: its words, and what its phrases tell.</summary>
    internal (CountedWords Counted, IReadOnlyList<string> Phrases) Weighed(Listener listener) => listener.Weighing(Say, Leads, Open(), Place());

    private OpenQuestion? Open() => Asked is null ? null : new OpenQuestion
    {
        Id = Asked.Id,
        Kind = Enum.Parse<QuestionKind>(Asked.Kind, ignoreCase: true),
        About = Asked.About,
        Unit = Asked.Unit,
        Between = Asked.Between,
        Options = [.. Asked.Options.Select(option => new OpenOption(option.Id, option.Text))],
    };

    private Rules.Cases.Region? Place() => Region switch { "na" => Rules.Cases.Region.NorthAmerica, "iec" => Rules.Cases.Region.Iec, _ => null };
}

public sealed class AskedQuestion
{
    public string Id { get; set; } = string.Empty;

    public string Kind { get; set; } = string.Empty;

    public string? About { get; set; }

    public string? Unit { get; set; }

    public string[]? Between { get; set; }

    public AskedOption[] Options { get; set; } = [];
}

public sealed class AskedOption
{
    public string Id { get; set; } = string.Empty;

    public string Text { get; set; } = string.Empty;
}
