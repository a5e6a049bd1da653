using WireCoach.Knowledge;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests;

/// <summary>The real knowledge, read once for all tests: it never changes.</summary>
internal static class Trade
{
    public static TradeKnowledge Knowledge { get; } = KnowledgeFolder.Load(KnowledgeFolder.Beside);
}
