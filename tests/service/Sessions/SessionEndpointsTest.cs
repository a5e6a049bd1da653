using System.Net;
using System.Text;
using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>The conversation over HTTP.</summary>
public sealed class SessionEndpointsTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly object SixLeads = new
    {
        facts = Enumerable.Range(1, 6).Select(lead => new { kind = "lead", tag = $"{lead}" }),
    };

    [Fact]
    public async Task A_session_opens_with_its_plate_and_instruments_and_is_found_again()
    {
        var opened = await service.Post("/api/sessions", new
        {
            role = "technician",
            region = "na",
            who = "AB",
            motorTag = "brine pump",
            instruments = new[] { "multimeter" },
            motor = new { volts = new[] { 115, 230 }, amps = new[] { 10.4, 5.2 }, horsepower = 0.75, rpm = 1140 },
        });
        var (status, found) = await service.Get($"/api/sessions/{opened.GetProperty("id").GetString()}");
        Assert.Equal(200, status);
        Assert.Equal("technician", found.GetProperty("role").GetString());
        Assert.Equal("na", found.GetProperty("region").GetString());
        Assert.Equal("open", found.GetProperty("status").GetString());
        Assert.Equal(
            ["instrument", "plate", "plate", "plate", "plate"],
            found.GetProperty("facts").EnumerateArray().Select(fact => fact.GetProperty("kind").GetString()!));
        Assert.Equal(JsonValueKind.Null, found.GetProperty("review").ValueKind);
    }

    [Fact]
    public async Task A_retracted_fact_no_longer_counts_and_the_log_keeps_both()
    {
        var id = await Open();
        await service.Post($"/api/sessions/{id}/facts", SixLeads);
        var reply = await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "reading", from = "1", to = "4", ohms = 3.2 } } });
        var fact = reply.GetProperty("understood")[0].GetProperty("factId").GetString();
        using var retracted = await service.Client.DeleteAsync($"/api/sessions/{id}/facts/{fact}", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, retracted.StatusCode);

        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.DoesNotContain(session.GetProperty("facts").EnumerateArray(), known => known.GetProperty("kind").GetString() == "reading");
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        var written = events.ToString();
        Assert.Contains("3.2", written, StringComparison.Ordinal);
        Assert.Contains("\"retracted\"", written, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_double_tap_with_one_key_is_stored_once()
    {
        var id = await Open();
        var first = await Keyed(id, "tap-1", """{"text":"red to blue is 3.2 ohm"}""");
        var second = await Keyed(id, "tap-1", """{"text":"red to blue is 3.2 ohm"}""");
        Assert.Equal(first.GetProperty("sequence").GetInt32(), second.GetProperty("sequence").GetInt32());
        Assert.Equal(first.GetProperty("understood").ToString(), second.GetProperty("understood").ToString());
    }

    [Fact]
    public async Task The_same_facts_twice_in_a_row_are_stored_once()
    {
        var id = await Open();
        var first = await service.Post($"/api/sessions/{id}/facts", SixLeads);
        var second = await service.Post($"/api/sessions/{id}/facts", SixLeads);
        Assert.Equal(first.GetProperty("sequence").GetInt32(), second.GetProperty("sequence").GetInt32());
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.Equal(6, session.GetProperty("facts").GetArrayLength());
    }

    [Fact]
    public async Task Twenty_taps_at_once_with_one_key_are_stored_once()
    {
        var id = await Open();
        var taps = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Keyed(id, "tap", """{"text":"it just hums"}""")));
        Assert.Single(taps.Select(tap => tap.GetProperty("sequence").GetInt32()).Distinct());
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        Assert.Single(events.EnumerateArray(), stored => stored.GetProperty("type").GetString() == "facts-taken");
    }

    [Fact]
    public async Task Twenty_taps_at_once_with_one_key_open_one_job()
    {
        var taps = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => KeyedAt("/api/sessions", "open-tap", """{"role":"technician","region":"na","motorTag":"shelf conveyor 20"}""")));
        Assert.Single(taps.Select(tap => tap.GetProperty("id").GetString()).Distinct());
        var (_, listed) = await service.Get("/api/sessions?motorTag=shelf%20conveyor%2020");
        Assert.Equal(1, listed.GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task A_closed_session_takes_nothing_more()
    {
        var id = await Open();
        await service.Post($"/api/sessions/{id}/close", new { });
        var (status, problem) = await service.PostText($"/api/sessions/{id}/facts", JsonSerializer.Serialize(SixLeads));
        Assert.Equal(403, status);
        Assert.Equal("gate-closed", problem.GetProperty("type").GetString());
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.Equal("closed", session.GetProperty("status").GetString());
        Assert.Empty(session.GetProperty("facts").EnumerateArray());
    }

    [Fact]
    public async Task A_manager_judges_and_the_list_finds_it_by_the_verdict()
    {
        var id = await Open(who: "judged");
        var session = await service.Post($"/api/sessions/{id}/review", new { verdict = "redo", note = "ohms to frame missing" });
        Assert.Equal("redo", session.GetProperty("review").GetProperty("verdict").GetString());
        var (_, page) = await service.Get("/api/sessions?verdict=redo&who=judged");
        Assert.Equal(1, page.GetProperty("total").GetInt32());
        Assert.Equal(id, page.GetProperty("items")[0].GetProperty("id").GetString());
    }

    [Fact]
    public async Task The_list_pages_by_key_and_shows_each_session_once()
    {
        var opened = new List<string>();
        for (var number = 0; number < 7; number++)
        {
            opened.Add(await Open(who: "pager"));
        }

        var listed = new List<string>();
        string? after = null;
        do
        {
            var (_, page) = await service.Get($"/api/sessions?who=pager&size=3{(after is null ? string.Empty : $"&after={after}")}");
            Assert.Equal(7, page.GetProperty("total").GetInt32());
            listed.AddRange(page.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("id").GetString()!));
            after = page.GetProperty("next").GetString();
        }
        while (after is not null);

        Assert.Equal(opened.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("?size=0", "size")]
    [InlineData("?size=9999", "size")]
    [InlineData("?from=yesterday", "from")]
    [InlineData("?role=electrician", "role")]
    [InlineData("?status=lost", "status")]
    [InlineData("?verdict=splendid", "verdict")]
    [InlineData("?cause=gremlins", "cause")]
    [InlineData("?caution=be-nice", "caution")]
    [InlineData("?after=../../etc", "after")]
    public async Task A_wrong_filter_is_refused_by_its_name(string query, string field)
    {
        var (status, problem) = await service.Get($"/api/sessions{query}");
        Assert.Equal(400, status);
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _), problem.ToString());
    }

    [Theory]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"9","ohms":1}]}""", "unknown-lead", "facts[0].to")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"1","ohms":1}]}""", "invalid-fact", "facts[0].to")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2","ohms":-1}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2","ohms":1e12}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2"}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2","ohms":1,"open":true}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2","ohms":"three"}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","to":"2","ohms":1e999}]}""", "invalid-fact", "facts[0].ohms")]
    [InlineData("""{"facts":[{"kind":"reading","from":null,"to":"2","ohms":1}]}""", "invalid-fact", "facts[0].from")]
    [InlineData("""{"facts":[{"kind":"reading","from":"1","ohms":1}]}""", "invalid-fact", "facts[0].to")]
    [InlineData("""{"facts":[{"kind":"symptom","id":"sings"}]}""", "invalid-fact", "facts[0].id")]
    [InlineData("""{"facts":[{"kind":"goal","id":"fame"}]}""", "invalid-fact", "facts[0].id")]
    [InlineData("""{"facts":[{"kind":"instrument","id":"crystal-ball"}]}""", "invalid-fact", "facts[0].id")]
    [InlineData("""{"facts":[{"kind":"confirm","id":"on-my-honour"}]}""", "invalid-fact", "facts[0].id")]
    [InlineData("""{"facts":[{"kind":"bench-test","test":"tea-leaves","outcome":"good"}]}""", "invalid-fact", "facts[0].test")]
    [InlineData("""{"facts":[{}]}""", "invalid-fact", "facts[0]")]
    [InlineData("""{"facts":[{"from":"1","to":"2","ohms":1}]}""", "invalid-fact", "facts[0]")]
    [InlineData("""{"facts":[{"kind":"magic"}]}""", "invalid-fact", "facts[0]")]
    [InlineData("""{"facts":[]}""", "invalid-fact", "facts")]
    [InlineData("""{"facts":[null]}""", "invalid-fact", "facts")]
    [InlineData("""{}""", "invalid-fact", "facts")]
    [InlineData("""{"facts":"all"}""", "invalid-fact", "facts")]
    [InlineData("""{"facts":[{"kind":"supply","volts":-240}]}""", "invalid-fact", "facts[0].volts")]
    [InlineData("""{"facts":[{"kind":"joint","leads":["1","1"]}]}""", "invalid-fact", "facts[0].leads")]
    [InlineData("""{"facts":[{"kind":"plate","field":"volts","value":[1e999]}]}""", "invalid-fact", "facts[0].value")]
    [InlineData("""{"facts":[{""", "invalid-fact", "body")]
    [InlineData("", "invalid-fact", "body")]
    public async Task A_fact_that_cannot_be_is_refused_by_its_member_and_nothing_is_stored(string body, string type, string field)
    {
        var id = await Open();
        await service.Post($"/api/sessions/{id}/facts", SixLeads);
        var (_, before) = await service.Get($"/api/sessions/{id}/events");
        var (status, problem) = await service.PostText($"/api/sessions/{id}/facts", body);
        Assert.Equal(400, status);
        Assert.Equal(type, problem.GetProperty("type").GetString());
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out var advice), problem.ToString());
        Assert.EndsWith(".", advice[0].GetString(), StringComparison.Ordinal);
        var (_, after) = await service.Get($"/api/sessions/{id}/events");
        Assert.Equal(before.ToString(), after.ToString());
    }

    [Fact]
    public async Task A_megabyte_of_text_is_too_large()
    {
        var id = await Open();
        var (status, problem) = await service.PostText($"/api/sessions/{id}/messages", $$"""{"text":"{{new string('x', 1 << 20)}}"}""");
        Assert.Equal((413, "too-large"), (status, problem.GetProperty("type").GetString()));
    }

    [Fact]
    public async Task Text_over_the_limit_is_refused_with_the_limit_in_the_advice()
    {
        var id = await Open();
        var (status, problem) = await service.PostText($"/api/sessions/{id}/messages", $$"""{"text":"{{new string('x', 2001)}}"}""");
        Assert.Equal(413, status);
        Assert.Contains("2000", problem.GetProperty("errors").GetProperty("text")[0].GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("messages", """{"text":"hello"}""")]
    [InlineData("facts", """{"facts":[{"kind":"lead","tag":"1"}]}""")]
    [InlineData("answers", """{"questionId":"x","confirmed":true}""")]
    [InlineData("probe", """{"from":"1","to":"2"}""")]
    [InlineData("review", """{"verdict":"ok"}""")]
    public async Task A_session_that_does_not_exist_is_unknown(string part, string body)
    {
        foreach (var id in (string[])["nothing", "1m87yazhsrcwgdwq", "a%2Fb"])
        {
            var (status, problem) = await service.PostText($"/api/sessions/{id}/{part}", body);
            Assert.Equal((404, "unknown-session"), (status, problem.GetProperty("type").GetString()));
        }
    }

    [Fact]
    public async Task A_fact_that_does_not_exist_cannot_be_taken_back()
    {
        var id = await Open();
        using var response = await service.Client.DeleteAsync($"/api/sessions/{id}/facts/f99", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
    }

    [Theory]
    [InlineData("""{"region":"na"}""", "role")]
    [InlineData("""{"role":"technician"}""", "region")]
    [InlineData("""{"role":"wizard","region":"na"}""", "role")]
    [InlineData("""{"role":2,"region":"na"}""", "role")]
    [InlineData("""{"role":"technician","region":"na","practice":{"layout":"imaginary","seed":1}}""", "practice.layout")]
    [InlineData("""{"role":"technician","region":"na","motor":{"volts":-230}}""", "motor.volts")]
    [InlineData("""{"role":"technician","region":"na","instruments":["multimeter","<script>"]}""", "instruments[1]")]
    [InlineData("""{"role":"technician","region":"na","instruments":["crystal-ball"]}""", "instruments[0]")]
    public async Task An_opening_that_cannot_be_is_refused_by_its_member(string body, string field)
    {
        var (status, problem) = await service.PostText("/api/sessions", body);
        Assert.Equal(400, status);
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _), problem.ToString());
    }

    [Fact]
    public async Task A_body_that_is_not_json_is_an_unsupported_media_type()
    {
        using var content = new StringContent("role=technician", Encoding.UTF8, "application/x-www-form-urlencoded");
        using var response = await service.Client.PostAsync("/api/sessions", content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task Unknown_addresses_and_methods_get_problem_documents()
    {
        var (status, problem) = await service.Get("/api/nothing/here");
        Assert.Equal((404, "unknown-address"), (status, problem.GetProperty("type").GetString()));
        using var put = await service.Client.PutAsync("/api/sessions", null, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, put.StatusCode);
        Assert.Equal("application/problem+json", put.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task The_contract_is_served()
    {
        var (status, contract) = await service.Get("/openapi/v1.json");
        Assert.Equal(200, status);
        Assert.True(contract.GetProperty("paths").TryGetProperty("/api/sessions/{id}/answers", out _));
    }

    /// <summary>A client can be written from the document alone: what a question holds, how it is answered, what identification takes and asks next.</summary>
    [Theory]
    [InlineData("/api/sessions/{id}/answers", "Question")]
    [InlineData("/api/sessions/{id}/answers", "QuestionAnswer")]
    [InlineData("/api/sessions/{id}/answers", "AnsweredReading")]
    [InlineData("/api/calc/identify", "IdentifyBody")]
    [InlineData("/api/calc/identify", "TestSetup")]
    public async Task The_contract_names_every_member_in_words(string path, string schema)
    {
        var (_, contract) = await service.Get("/openapi/v1.json");
        var words = contract.GetProperty("paths").GetProperty(path).GetProperty("post").GetProperty("description").GetString()!.Split(' ', ',', '.', ':', ';', '{', '}', '(', ')', '\'');
        var members = contract.GetProperty("components").GetProperty("schemas").GetProperty(schema).GetProperty("properties").EnumerateObject().Select(member => member.Name).ToList();
        Assert.NotEmpty(members);
        Assert.Empty(members.Except(words, StringComparer.Ordinal));
    }

    [Fact]
    public async Task No_name_of_the_code_stands_in_the_contract()
    {
        var contract = await service.Client.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken);
        Assert.DoesNotMatch(@"\bstring [A-Z]\w*\.[A-Z]", contract);
    }

    [Fact]
    public async Task A_report_is_a_page_a_table_and_data()
    {
        var id = await Open(who: "=1+1");
        var page = await service.Client.GetStringAsync($"/api/sessions/{id}/report", TestContext.Current.CancellationToken);
        Assert.StartsWith("<!DOCTYPE html>", page.TrimStart(), StringComparison.Ordinal);
        Assert.True(page.IndexOf("Status:", StringComparison.Ordinal) < page.IndexOf("What is known", StringComparison.Ordinal));
        var table = await service.Client.GetStringAsync($"/api/sessions/{id}/report?format=csv", TestContext.Current.CancellationToken);
        Assert.Contains("'=1+1", table, StringComparison.Ordinal);
        var (_, data) = await service.Get($"/api/sessions/{id}/report?format=json");
        Assert.Equal(id, data.GetProperty("session").GetProperty("id").GetString());
        var (status, _) = await service.Get($"/api/sessions/{id}/report?format=exe");
        Assert.Equal(400, status);
    }

    [Fact]
    public async Task A_deleted_session_is_gone_and_on_record_and_a_reason_is_needed()
    {
        var id = await Open();
        using (var refused = await service.Client.DeleteAsync($"/api/sessions/{id}", TestContext.Current.CancellationToken))
        {
            Assert.Equal(System.Net.HttpStatusCode.BadRequest, refused.StatusCode);
        }

        Assert.Equal(200, (await service.Get($"/api/sessions/{id}")).Status);
        using (var done = await service.Client.DeleteAsync($"/api/sessions/{id}?who=boss&why=asked%20for", TestContext.Current.CancellationToken))
        {
            Assert.True(done.IsSuccessStatusCode);
        }

        Assert.Equal(404, (await service.Get($"/api/sessions/{id}")).Status);
        Assert.Equal(404, (await service.PostText($"/api/sessions/{id}/messages", """{"text":"still there?"}""")).Status);
        var (_, deletions) = await service.Get("/api/deletions");
        var deletion = Assert.Single(deletions.EnumerateArray(), one => one.GetProperty("id").GetString() == id);
        Assert.Equal(("boss", "asked for"), (deletion.GetProperty("who").GetString(), deletion.GetProperty("why").GetString()));
    }

    private async Task<string> Open(string? who = null) =>
        (await service.Post("/api/sessions", new { role = "technician", region = "na", who })).GetProperty("id").GetString()!;

    private Task<JsonElement> Keyed(string id, string key, string body) => KeyedAt($"/api/sessions/{id}/messages", key, body);

    private async Task<JsonElement> KeyedAt(string path, string key, string body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = new StringContent(body, Encoding.UTF8, "application/json"),
        };
        request.Headers.Add("Idempotency-Key", key);
        using var response = await service.Client.SendAsync(request, TestContext.Current.CancellationToken);
        using var json = JsonDocument.Parse(await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.True(response.IsSuccessStatusCode, json.RootElement.ToString());
        return json.RootElement.Clone();
    }
}
