using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Service.Hosting;
using WireCoach.Service.Phrasing;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class TypistTest
{
    private static readonly TradeKnowledge Trade = KnowledgeFolder.Load(KnowledgeFolder.Beside);
    private static readonly Statement Common = Statement.Of("diagnosis.for-common");
    private static readonly Statement Caution = Statement.Of("coach.turn-round", ("swap", "T1 and T4"));

    [Fact]
    public async Task A_faithful_rewording_stands_beside_the_exact_words_and_only_it_was_sent()
    {
        await using var server = new ScriptedModel(ScriptedModel.Says("It's a frequent reason with such motors."));
        var (answer, figures) = await Reword(server, 2);
        var item = Assert.Single(answer.Items);
        Assert.Equal(("It is a common cause with such motors.", "It's a frequent reason with such motors."), (item.Exact, item.Text));
        Assert.Equal(1, server.Requests); // the second time it is remembered
        Assert.Equal(1, figures.Reworded);
    }

    [Fact]
    public async Task An_unfaithful_rewording_is_counted_by_its_reason_and_not_shown()
    {
        await using var server = new ScriptedModel(ScriptedModel.Says("It is not a common cause with such motors."));
        var (answer, figures) = await Reword(server, 1);
        Assert.Empty(answer.Items);
        Assert.Equal(1, figures.Refused["negation"]);
    }

    [Fact]
    public async Task A_server_that_fails_is_left_alone_after_the_third_time_with_one_quiet_notice()
    {
        await using var server = new ScriptedModel(ScriptedModel.Answers(500, "application/json", "{}"));
        var (answer, figures) = await Reword(server, 8);
        Assert.Equal("resting", answer.State);
        Assert.NotNull(answer.Notice);
        Assert.Equal(3, server.Requests);
        Assert.Equal("status-500: 3", string.Join(", ", figures.Failed.Select(failed => $"{failed.Key}: {failed.Value}")));
    }

    private static async Task<(Rewordings Answer, PhrasingFigures Figures)> Reword(ScriptedModel server, int times)
    {
        var settings = new PhrasingSettings(new Uri($"http://{server.Address}"), "m", null, TimeSpan.FromSeconds(60));
        var folder = Directory.CreateTempSubdirectory("wirecoach-");
        var tally = new Tally(new DataFolder(folder.FullName), TimeProvider.System, NullLogger<Tally>.Instance, settings);
        using var typist = new Typist(Trade, new Guard(Trade.Phrasing), tally, new Watches(), TimeProvider.System, NullLogger<Typist>.Instance, settings);
        var answer = default(Rewordings);
        for (var again = 0; again < times; again++)
        {
            answer = await typist.Of(Session(), CancellationToken.None);
        }

        folder.Delete(recursive: true);
        return (answer!, tally.Figures());
    }

    private static SessionView Session()
    {
        var empty = CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), []);
        var assessment = new Coach(Trade).Assess(empty) with { Say = [Common, Caution] };
        return new SessionView
        {
            Id = "s", Role = Role.Technician, Region = Region.Iec, Status = "open", CreatedAt = default, ChangedAt = default, Sequence = 1, Facts = [], Turns = [],
            Assessment = assessment,
            Last = new Reply
            {
                Understood = [], NotUnderstood = [], Sequence = 1, Assessment = assessment,
                Say = [.. assessment.Say.Select(said => new Said(said.Id, Trade.Sentences.Render(said), false, []))],
            },
        };
    }
}
