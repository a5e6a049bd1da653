using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Statements;

/// <summary>What is said as it is told apart.</summary>
public sealed class StatementTest
{
    [Fact]
    public void Statements_that_differ_in_a_part_are_written_differently()
    {
        Statement Unproved(string what) => Statement.Of("coach.unproved").With("what", Statement.Word(what, [$"term.asked.{what}"]));
        Assert.Equal(Unproved("insulation").ToString(), Unproved("insulation").ToString());
        Assert.NotEqual(Unproved("insulation").ToString(), Unproved("earth-continuity").ToString());
        Assert.Equal("coach.plan", Statement.Of("coach.plan").ToString());
        Assert.Equal("coach.plan (leads: 1, ends: coach.alike; coach.start)", Statement.Of("coach.plan", ("leads", "1")).With("ends", Statement.Named("coach.alike"), Statement.Named("coach.start")).ToString());
    }
}
