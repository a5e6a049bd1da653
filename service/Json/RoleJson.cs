using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Json;

/// <summary>The contract's JSON in the words of each reader.</summary>
internal sealed class RoleJson(SentenceBook sentences)
{
    private readonly Dictionary<Role, JsonSerializerOptions> _options = Enum.GetValues<Role>().ToDictionary(role => role, role =>
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web);
        WireJson.Configure(options, sentences, role);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    });

    public JsonSerializerOptions this[Role role] => _options[role];
}
