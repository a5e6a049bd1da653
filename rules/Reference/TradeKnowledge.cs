using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>All that knowledge holds, as the rules use it. Loaded once, never changed.</summary>
public sealed record TradeKnowledge
{
    /// <summary>The sentences that people read.</summary>
    public required SentenceBook Sentences { get; init; }

    /// <summary>The winding layouts by id.</summary>
    public required IReadOnlyDictionary<string, Layout> Layouts { get; init; }

    /// <summary>The winding layouts in all their forms.</summary>
    public IEnumerable<Layout> Forms => Layouts.Values.SelectMany(layout => layout.Forms());

    /// <summary>The figures by which leads are told apart.</summary>
    public required IdentificationFigures Identification { get; init; }

    /// <summary>The questions by id.</summary>
    public required IReadOnlyDictionary<string, QuestionCard> Questions { get; init; }

    /// <summary>The calculators as people meet them, by id.</summary>
    public required IReadOnlyDictionary<string, CalculatorForm> Calculators { get; init; }

    /// <summary>Supplies that people commonly have, by id.</summary>
    public required IReadOnlyDictionary<string, SupplyOffer> Supplies { get; init; }

    /// <summary>The rules of the trade with their figures: limits, factors, formulas.</summary>
    public required TradeBook<TradeRule> Rules { get; init; }

    /// <summary>The tables of the trade.</summary>
    public required TradeBook<TradeTable> Tables { get; init; }

    /// <summary>Conductors that belong to no winding, by id.</summary>
    public required IReadOnlyDictionary<string, Accessory> Accessories { get; init; }

    /// <summary>The machines of the dairy that practice motors drive, by id.</summary>
    public required IReadOnlyDictionary<string, PracticeMachine> PracticeMachines { get; init; }

    /// <summary>Kinds of work and who may do them, by task id.</summary>
    public required IReadOnlyDictionary<string, GateTask> GateTasks { get; init; }

    /// <summary>Conditions that close work, by id, the weightiest first.</summary>
    public required IReadOnlyDictionary<string, GateCondition> GateConditions { get; init; }

    /// <summary>What is confirmed before work opens, by id, in the order in which it is asked.</summary>
    public required IReadOnlyDictionary<string, GateConfirmation> Confirmations { get; init; }

    /// <summary>The cautions by id.</summary>
    public required IReadOnlyDictionary<string, CautionNote> Cautions { get; init; }

    /// <summary>The kinds of motor as far as their faults go, by id.</summary>
    public required IReadOnlyDictionary<string, MotorFamily> Families { get; init; }

    /// <summary>The symptoms by id.</summary>
    public required IReadOnlyDictionary<string, SymptomNote> Symptoms { get; init; }

    /// <summary>The tests by id.</summary>
    public required IReadOnlyDictionary<string, TestGuide> Tests { get; init; }

    /// <summary>By what a supply suits a plate.</summary>
    public required ConnectionFigures Connections { get; init; }

    /// <summary>The causes of trouble by id.</summary>
    public required IReadOnlyDictionary<string, Cause> Causes { get; init; }

    /// <summary>Causes that are met together, by both ids.</summary>
    public required IReadOnlyDictionary<string, CausePair> CausePairs { get; init; }

    /// <summary>The words by which people are understood.</summary>
    public required Vocabulary Words { get; init; }

    /// <summary>The words by which a rewording is compared with its sentence.</summary>
    public required PhrasingWords Phrasing { get; init; }
}
