using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>The rooms that the coach calls, made once from knowledge.</summary>
internal sealed class Rooms(TradeKnowledge knowledge)
{
    public TradeKnowledge Knowledge { get; } = knowledge;

    public Asking Asking { get; } = new(knowledge);

    public SafetyGate Gate { get; } = new(knowledge);

    public Identifier Identifier { get; } = new(knowledge);

    public EndsFinder Ends { get; } = new(knowledge);

    public ConnectionChecker Checker { get; } = new(knowledge);

    public WindingNames Names { get; } = new(knowledge.Sentences);

    public Planner Planner { get; } = new(knowledge);

    public Faq Faq { get; } = new(knowledge);

    public Diagnostician Diagnostician { get; } = new(knowledge);
}
