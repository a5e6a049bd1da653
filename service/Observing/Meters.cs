using System.Diagnostics.Metrics;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Observing;

/// <summary>What can be counted and timed in the service. Ids and numbers only: never a person's words, names or readings.</summary>
internal sealed class Meters
{
    public const string Name = "WireCoach";

    private readonly Counter<long> _refused;
    private readonly Counter<long> _stopped;
    private readonly Counter<long> _rewordings;
    private readonly Counter<long> _signIns;
    private readonly Histogram<double> _turns;
    private readonly Histogram<double> _commits;

    public Meters(IMeterFactory factory)
    {
        Own = factory.Create(Name);
        _turns = Own.CreateHistogram<double>("wirecoach.turn.duration", "s", "A turn from its arrival to its being on disk, by kind.");
        _commits = Own.CreateHistogram<double>("wirecoach.commit.duration", "s", "Storing what a turn brought, by whether it was stored.");
        _refused = Own.CreateCounter<long>("wirecoach.turn.refused", "{turn}", "Turns that stored nothing, by kind and problem.");
        _stopped = Own.CreateCounter<long>("wirecoach.gate.stopped", "{turn}", "Turns with which the safety gate stopped a job or referred it out.");
        _rewordings = Own.CreateCounter<long>("wirecoach.phrasing.rewordings", "{sentence}", "Sentences that a model was asked to reword, by the guard's verdict.");
        _signIns = Own.CreateCounter<long>("wirecoach.sign_ins", "{attempt}", "Sign-ins, by role and outcome.");
    }

    /// <summary>The meter, for figures that are looked at when asked for.</summary>
    public Meter Own { get; }

    public void Turn(string kind, Turned turned, bool wasStopped, TimeSpan took)
    {
        _turns.Record(took.TotalSeconds, new KeyValuePair<string, object?>("kind", kind));
        if (turned.After.Assessment.Gate is { } gate && (gate.Stop || gate.ReferOut) && !wasStopped)
        {
            _stopped.Add(1, new KeyValuePair<string, object?>("referred", gate.ReferOut));
        }
    }

    public void Refused(string kind, Problem problem) => _refused.Add(1, new("kind", kind), new("problem", problem.Id));

    public void Commit(bool stored, TimeSpan took) => _commits.Record(took.TotalSeconds, new KeyValuePair<string, object?>("stored", stored));

    /// <param name="verdict"><c>faithful</c>, or why the engine's own words stand.</param>
    public void Reworded(string verdict) => _rewordings.Add(1, new KeyValuePair<string, object?>("verdict", verdict));

    public void SignIn(string role, string outcome) => _signIns.Add(1, new("role", role), new("outcome", outcome));
}
