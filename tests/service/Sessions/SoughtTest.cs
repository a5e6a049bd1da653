using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>What is looked for among the jobs where somebody asks after an earlier one.</summary>
public sealed class SoughtTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
    private static readonly Service.Sessions.Hearing Hearing = new(Knowledge, new Coach(Knowledge), new FactCheck(Knowledge));

    [Theory]
    [InlineData("the paper shredder we did last week", "shredder")]
    [InlineData("where is the paper shredder we fixed on monday", "shredder")]
    [InlineData("that doughnut fryer from monday", "doughnut fryer")]
    [InlineData("what did we find on the paper shredder", "shredder")]
    [InlineData("show me the jobs of the agitator", "agitator")]
    [InlineData("show me all jobs", "")]
    public void A_job_is_looked_for_by_the_name_of_its_machine_known_or_not(string words, string sought) => Assert.Equal(sought, Sought(words));

    [Theory]
    [InlineData("the paper shredder hums and does not start")]
    [InlineData("we had the motor rewound last week and now it hums")]
    [InlineData("six wires, which goes where?")]
    [InlineData("the motor from the old lathe trips the breaker")]
    public void A_matter_of_today_looks_for_no_earlier_job(string words) => Assert.Null(Sought(words));

    private static string? Sought(string words) => Hearing.Sought(new NewSession { Role = Role.Technician, Region = Region.NorthAmerica, Text = words });
}
