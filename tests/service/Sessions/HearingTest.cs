using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Plain words in a session, over HTTP.</summary>
public sealed class HearingTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Readings_in_plain_words_become_facts_with_their_words()
    {
        var id = await Open();
        await Say(id, "tagged them 1 2 3 4 5 6");
        var reply = await Say(id, "1-4 is 3.2 ohm, 2-5 nothing");
        var readings = reply.GetProperty("understood").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "reading").ToList();
        Assert.Equal(3.2, readings[0].GetProperty("ohms").GetDouble());
        Assert.True(readings[1].GetProperty("open").GetBoolean());
        Assert.All(readings, reading => Assert.Equal("typed", reading.GetProperty("how").GetString()));
        Assert.Equal("1-4 is 3.2 ohm", readings[0].GetProperty("span").GetString());
    }

    [Fact]
    public async Task Everything_else_open_leaves_the_readings_that_there_are()
    {
        var id = await Open();
        await Say(id, "tagged them 1 2 3 4");
        await Say(id, "1-4 is 3.2 ohm");
        await Say(id, "2-3 is 4.1 ohm, everything else open");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var readings = session.GetProperty("facts").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "reading").ToList();
        Assert.Equal(6, readings.Count);
        Assert.Equal([3.2, 4.1], readings.Where(reading => !reading.GetProperty("open").GetBoolean()).Select(reading => reading.GetProperty("ohms").GetDouble()).Order());
    }

    [Fact]
    public async Task A_correction_takes_the_place_of_the_reading_and_the_log_keeps_both()
    {
        var id = await Open();
        await Say(id, "red to blue is 1.5 ohm");
        await Say(id, "no, red to blue was 5.1");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var reading = Assert.Single(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "reading");
        Assert.Equal(5.1, reading.GetProperty("ohms").GetDouble());
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        Assert.Contains("1.5", events.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Thanks_is_not_told_that_it_was_not_understood()
    {
        var id = await Open();
        var before = (await Say(id, "it just hums")).GetProperty("ask").GetProperty("id").GetString();
        var thanked = await Say(id, "thanks, got it");
        Assert.Empty(thanked.GetProperty("notUnderstood").EnumerateArray());
        Assert.Equal(before, thanked.GetProperty("ask").GetProperty("id").GetString());
        Assert.NotEmpty((await Say(id, "thanks, squirrels")).GetProperty("notUnderstood").EnumerateArray());
    }

    [Fact]
    public async Task Undo_takes_back_what_was_said_last()
    {
        var id = await Open();
        await Say(id, "it just hums");
        await Say(id, "1-4 is 3.2 ohm");
        await Say(id, "undo");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var kinds = session.GetProperty("facts").EnumerateArray().Select(fact => fact.GetProperty("kind").GetString()).ToList();
        Assert.DoesNotContain("reading", kinds);
        Assert.Contains("symptom", kinds);
    }

    [Theory]
    [InlineData("how do I test a capacitor", null)]
    [InlineData("is it safe to touch the motor while it's running", "asked.touch-running")]
    [InlineData("is it safe to do alone", "asked.may-not")]
    [InlineData("am I allowed to do this", "asked.may-not")]
    public async Task A_question_alone_tells_nothing_of_the_motor_nor_of_what_is_wanted(string text, string? answered)
    {
        var session = await service.Post("/api/sessions", new { role = "homeowner", region = "na", text });
        Assert.Empty(session.GetProperty("facts").EnumerateArray());
        Assert.Equal("open", session.GetProperty("status").GetString());
        Assert.Equal("goal", session.GetProperty("assessment").GetProperty("next").GetProperty("id").GetString());
        Assert.Contains(session.GetProperty("last").GetProperty("say").EnumerateArray(), said => answered is null || said.GetProperty("id").GetString() == answered);
    }

    [Fact]
    public async Task What_was_done_to_a_motor_that_runs_hot_is_no_wish_to_do_it_again()
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", text = "I replaced the capacitor on the brine pump with a bigger one and now it runs hot" });
        Assert.Equal("diagnose", session.GetProperty("assessment").GetProperty("goal").GetString());
    }

    [Fact]
    public async Task A_figure_that_cannot_be_is_named_as_it_was_said()
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", text = "insulation test on the lathe motor: 4 megohm at 300 C, 230 V motor" });
        var said = Assert.Single(session.GetProperty("last").GetProperty("say").EnumerateArray(), one => one.GetProperty("id").GetString() == "hearing.out-of-range");
        Assert.Equal("300 cannot be right here: I can take -40 to 200 °C. Say it once more.", said.GetProperty("text").GetString());
    }

    [Fact]
    public async Task What_was_not_understood_is_said_back_and_kept()
    {
        var id = await Open();
        var reply = await Say(id, "flurble the grommet zix");
        Assert.NotEmpty(reply.GetProperty("notUnderstood").EnumerateArray());
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        Assert.Contains("flurble", events.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_only_supposed_is_taken_for_no_report_and_said_so()
    {
        var id = await Open();
        var reply = await Say(id, "could a dead capacitor make it hum and not start?");
        Assert.DoesNotContain(reply.GetProperty("understood").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom");
        var aside = Assert.Single(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.aside").GetProperty("text").GetString();
        Assert.Contains("hum and not start", aside, StringComparison.Ordinal);
        Assert.Contains("it hums and does not start", aside, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_taken_by_likeness_is_said_back_as_taken_and_can_be_set_right()
    {
        var id = await Open();
        var reply = await Say(id, "sounds like someone threw a handful of gravel in the bearings");
        Assert.Contains(reply.GetProperty("understood").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom" && fact.GetProperty("id").GetString() == "mechanical-noise");
        var taken = Assert.Single(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.likely").GetProperty("text").GetString();
        Assert.Contains("handful of gravel", taken, StringComparison.Ordinal);
        await Say(id, "the bearings are quiet");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.False(session.GetProperty("facts").EnumerateArray().Last(fact => fact.GetProperty("kind").GetString() == "symptom").GetProperty("present").GetBoolean());
    }

    [Fact]
    public async Task What_is_taken_as_denied_by_likeness_is_said_back_as_taken()
    {
        var id = await Open();
        var reply = await Say(id, "barely a whisper from the bearings");
        Assert.Contains(reply.GetProperty("understood").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom" && fact.GetProperty("id").GetString() == "mechanical-noise" && !fact.GetProperty("present").GetBoolean());
        var taken = Assert.Single(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.likely-not").GetProperty("text").GetString();
        Assert.Contains("barely a whisper", taken, StringComparison.Ordinal);
        Assert.Contains("it rumbles, scrapes or squeals", taken, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nothing_is_understood_that_tells_something_the_nearest_symptoms_are_named()
    {
        var id = await Open();
        var reply = await Say(id, "it has lost its spirit");
        Assert.DoesNotContain(reply.GetProperty("understood").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom");
        Assert.Single(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.maybe");
    }

    [Fact]
    public async Task A_lead_that_nobody_named_is_refused_with_the_leads_that_there_are()
    {
        var id = await Open();
        await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "lead", tag = "1" }, new { kind = "lead", tag = "2" } } });
        var (status, problem) = await service.PostText($"/api/sessions/{id}/messages", """{"text":"1-9 is 3.2 ohm"}""");
        Assert.Equal((400, "unknown-lead"), (status, problem.GetProperty("type").GetString()));
        Assert.Contains("1, 2", problem.GetProperty("errors").GetProperty("text")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leads_show_in_the_readings_where_their_number_was_said()
    {
        var id = await Open();
        await Say(id, "six wires no marks");
        await Say(id, "all to frame OL");
        await Say(id, "1-4 is 1.7, 2-6 1.7");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var leads = session.GetProperty("facts").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "lead").Select(fact => fact.GetProperty("tag").GetString());
        Assert.Equal(["1", "2", "3", "4", "5", "6"], leads);
    }

    [Fact]
    public async Task Words_about_another_matter_confirm_nothing()
    {
        var id = await Open("connect");
        var asked = (await Say(id, "shaft's free and the guard is on")).GetProperty("ask").GetProperty("id").GetString();
        Assert.Equal("isolated", asked);
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.DoesNotContain(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "confirm");
    }

    [Theory]
    [InlineData("off, locked and proved dead")]
    [InlineData("it's dead and locked out")]
    [InlineData("plug is out of the wall")]
    public async Task A_short_form_confirms_what_was_asked(string words)
    {
        var id = await Open("connect");
        var reply = await Say(id, words);
        var fact = Assert.Single(reply.GetProperty("understood").EnumerateArray());
        Assert.Equal(("confirm", "isolated"), (fact.GetProperty("kind").GetString(), fact.GetProperty("id").GetString()));
        Assert.Empty(reply.GetProperty("notUnderstood").EnumerateArray());
    }

    [Fact]
    public async Task A_measured_figure_does_not_change_the_plate()
    {
        var id = await Open("connect");
        await Say(id, "plate says 115/230 V 10.4/5.2 A");
        var (status, problem) = await service.PostText($"/api/sessions/{id}/messages", """{"text":"241 V 4.1 A"}""");
        Assert.Equal(400, status);
        Assert.Contains("115/230", problem.ToString(), StringComparison.Ordinal);
        await Say(id, "sorry, the plate says 110/220 V");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.Contains("110", session.GetProperty("facts").ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1180 rpm", "rpm", 1180)]
    [InlineData("6.1 A", "amps", 6.1)]
    public async Task A_figure_typed_while_it_runs_was_measured(string words, string member, double value)
    {
        var id = await Open();
        await Say(id, "plate says 3/4 hp 115/230 V 10.4/5.2 A 1140 rpm");
        await Say(id, "it runs now, 238 volts");
        var reply = await Say(id, words);
        var fact = Assert.Single(reply.GetProperty("understood").EnumerateArray());
        Assert.Equal("running", fact.GetProperty("kind").GetString());
        Assert.Equal(value, fact.GetProperty(member).GetDouble());
        var (_, session) = await service.Get($"/api/sessions/{id}");
        Assert.Single(session.GetProperty("facts").EnumerateArray(), one => one.GetProperty("kind").GetString() == "plate" && one.GetProperty("field").GetString() == "rpm");
    }

    [Fact]
    public async Task Leads_are_said_back_in_one_short_sentence()
    {
        var id = await Open();
        await Say(id, "six wires, no marks");
        var reply = await Say(id, "tagged them 1 2 3 4 5 6");
        var said = string.Join(' ', reply.GetProperty("say").EnumerateArray().Select(one => one.GetProperty("text").GetString()));
        Assert.Contains("6 leads: 1, 2, 3, 4, 5, 6", said, StringComparison.Ordinal);
        Assert.DoesNotContain("lead 1 ·", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_minus_before_a_plate_value_is_refused_and_not_dropped()
    {
        var id = await Open();
        var (status, problem) = await service.PostText($"/api/sessions/{id}/facts", """{"facts":[{"kind":"plate","field":"volts","value":"-115","unit":"volt"}]}""");
        Assert.Equal(400, status);
        Assert.Contains("value", problem.GetProperty("errors").ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Undo_says_what_it_took_back()
    {
        var id = await Open();
        await Say(id, "red to blue is 1.5 ohm");
        var reply = await Say(id, "undo");
        Assert.Contains(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.taken-back" && said.GetProperty("text").GetString()!.Contains("1.5", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_question_beside_the_job_does_not_change_the_job()
    {
        var id = await Open();
        var before = await Say(id, "my grinder just hums");
        var after = await Say(id, "can i reverse it");
        Assert.Equal(before.GetProperty("ask").GetProperty("id").GetString(), after.GetProperty("ask").GetProperty("id").GetString());
        Assert.Equal("diagnose", after.GetProperty("assessment").GetProperty("goal").GetString());
    }

    [Fact]
    public async Task What_kind_of_answer_is_wanted_is_said_where_nothing_was_understood()
    {
        var id = await Open("connect");
        Assert.Contains((await Say(id, "banana")).GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "reply.wants-done");
    }

    [Fact]
    public async Task A_word_of_the_trade_is_explained()
    {
        var id = await Open();
        var reply = await Say(id, "what is a start winding?");
        Assert.Contains(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "asked.term");
    }

    [Fact]
    public async Task A_session_opens_with_the_first_words_understood()
    {
        var session = await service.Post("/api/sessions", new { role = "homeowner", region = "na", text = "my grinder just hums, 115 volts" });
        Assert.Contains(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom");
    }

    [Fact]
    public async Task Whoever_is_sent_on_is_told_to_whom_and_never_that_nothing_is_asked()
    {
        var session = await service.Post("/api/sessions", new { role = "homeowner", region = "na" });
        var id = session.GetProperty("id").GetString()!;
        await Say(id, "I smell smoke from the pump");
        await Say(id, "I can't unplug it");
        Assert.Contains("asked.hand-over", Said(await Say(id, "what do I do now?")));
        Assert.Contains("asked.hand-over", Said(await Say(id, "who do I call")));
        Assert.Contains("asked.cost", Said(await Say(id, "how much will it cost")));
    }

    /// <summary>After a shock nobody at home or in the office is told how to do anything at the machine, whatever they ask.</summary>
    [Theory]
    [InlineData("homeowner")]
    [InlineData("manager")]
    public async Task Whoever_is_kept_off_a_machine_is_told_how_to_do_nothing_at_it(string role)
    {
        var id = (await service.Post("/api/sessions", new { role, region = "na", text = "I felt a tingle from the mixer and it hums and does not start" })).GetProperty("id").GetString()!;
        await service.Post($"/api/sessions/{id}/answers", new { questionId = "isolated", confirmed = true });
        Assert.Contains("asked.hand-over", Said(await Say(id, "what do I do now?")));
        foreach (var asked in new[] { "how do I look at the capacitor?", "how do I test the capacitor?", "how do I turn the shaft by hand?", "how do I do that?", "why do you ask?" })
        {
            var said = Said(await Say(id, asked));
            Assert.DoesNotContain(said, sentence => sentence.Contains(".how-", StringComparison.Ordinal) && sentence != "asked.how-not-for-you");
            Assert.DoesNotContain("asked.nothing-open", said);
        }
    }

    [Fact]
    public async Task Who_asks_whether_to_reset_it_is_answered_and_not_accused()
    {
        var id = await Open();
        var said = Said(await Say(id, "the pump tripped, can I just reset it and try again?"));
        Assert.Contains("asked.reset-again", said);
        Assert.DoesNotContain("safety.protection-bypassed", said);
        Assert.DoesNotContain(said, sentence => sentence.Contains("bypassed", StringComparison.Ordinal) && sentence != "protection-not-bypassed");
    }

    private static List<string> Said(JsonElement reply) => [.. reply.GetProperty("say").EnumerateArray().Select(sentence => sentence.GetProperty("id").GetString()!)];

    private async Task<string> Open(string? goal = null)
    {
        var id = (await service.Post("/api/sessions", new { role = "technician", region = "na" })).GetProperty("id").GetString()!;
        if (goal is not null)
        {
            await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "goal", id = goal } } });
        }

        return id;
    }

    private Task<JsonElement> Say(string id, string text) => service.Post($"/api/sessions/{id}/messages", new { text });
}
