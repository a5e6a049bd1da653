using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>Holds a whole conversation through HTTP from the members of <c>ask</c> alone: it reads no sentence.</summary>
internal sealed class MemberClient(HttpClient http, IBenchAnswers answers)
{
    /// <summary>Whoever gave the same answer so many times has answered.</summary>
    private const int MostOften = 3;

    private readonly List<string> _asked = [];
    private readonly List<JsonElement> _asks = [];

    private JsonElement _reply;
    private string _id = string.Empty;

    public IReadOnlyList<string> Asked => _asked;

    /// <summary>A question as it was asked last.</summary>
    public JsonElement Question(string id) => _asks.Last(ask => ask.GetProperty("id").GetString() == id);

    public JsonElement Assessment => _reply.GetProperty("assessment");

    public string Id => _id;

    public string Status => Assessment.GetProperty("status").GetString()!;

    public JsonElement Plan => Assessment.GetProperty("plan");

    public async Task Hold(object opening, IReadOnlyDictionary<string, string>? marks = null)
    {
        var opened = await http.PostAsJsonAsync("/api/sessions", opening);
        Assert.Equal(System.Net.HttpStatusCode.Created, opened.StatusCode);
        var session = await opened.Content.ReadFromJsonAsync<JsonElement>();
        _id = session.GetProperty("id").GetString()!;
        var named = await http.PostAsJsonAsync($"/api/sessions/{_id}/facts", new { facts = answers.Known(marks) });
        _reply = await named.Content.ReadFromJsonAsync<JsonElement>();
        var ask = _reply.GetProperty("ask");
        for (var turn = 0; ask.ValueKind == JsonValueKind.Object; turn++)
        {
            Assert.True(turn < 90, $"The conversation does not end: {string.Join(", ", _asked.TakeLast(8))}");
            _asked.Add(ask.GetProperty("id").GetString()!);
            _asks.Add(ask);
            Assert.True(_asked.Count(asked => asked == _asked[^1]) <= MostOften, $"'{_asked[^1]}' is asked for ever: {string.Join(", ", _asked)} {Assessment.GetProperty("identification")}");
            var answered = await http.PostAsJsonAsync($"/api/sessions/{_id}/answers", answers.Answer(ask, Plan));
            Assert.True(answered.IsSuccessStatusCode, $"{_asked[^1]}: {await answered.Content.ReadAsStringAsync()}");
            _reply = await answered.Content.ReadFromJsonAsync<JsonElement>();
            ask = _reply.GetProperty("ask");
        }
    }
}
