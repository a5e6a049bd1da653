using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Knowledge;

/// <summary>Reads the knowledge folder into the records that rules declares.</summary>
public static class KnowledgeFolder
{
    /// <summary>Where a build puts the knowledge: beside the program.</summary>
    public static string Beside => Path.Combine(AppContext.BaseDirectory, "knowledge");

    /// <summary>Reads and checks everything.</summary>
    /// <param name="folder">The knowledge folder.</param>
    /// <exception cref="KnowledgeException">A file is missing or wrong; the message names file and line.</exception>
    public static TradeKnowledge Load(string folder)
    {
        var sections = new Sections(folder);
        var questions = sections.Lists<QuestionCard>("questions", card => card.Id);
        var calculators = sections.Files<CalculatorForm>("calculators", form => form.Id);
        var supplies = sections.Lists<SupplyOffer>("supplies", supply => supply.Id);
        var trouble = new TroubleSections(sections);
        var knowledge = new TradeKnowledge
        {
            Sentences = new SentenceBook(
            [
                .. sections.Lists<Sentence>("sentences", sentence => sentence.Id).Values,
                .. questions.Values.SelectMany(card => card.Sentences()),
                .. calculators.Values.SelectMany(form => form.Sentences()),
                .. supplies.Values.Select(supply => supply.Sentence()),
                .. trouble.Sentences(),
            ]),
            Questions = questions,
            Calculators = calculators,
            Supplies = supplies,
            Layouts = sections.Files<Layout>("layouts", layout => layout.Id),
            Identification = sections.File<IdentificationFigures>("identification/figures.yaml"),
            Accessories = sections.Lists<Accessory>("accessories", accessory => accessory.Id),
            PracticeMachines = sections.Lists<PracticeMachine>("practice", machine => machine.Id),
            Rules = new(
                sections.Lists<TradeRule>("limits", rule => rule.Id).Values, rule => rule.Id, rule => rule.Of, rule => (rule.Since, rule.Until)),
            Tables = new(
                sections.Files<TradeTable>("tables", table => table.Id, TableShape.Wrong).Values, table => table.Id, table => table.Of, table => (table.Since, table.Until)),
            GateTasks = trouble.Tasks,
            GateConditions = trouble.Conditions,
            Confirmations = trouble.Confirmations,
            Cautions = trouble.Cautions,
            Families = trouble.Families,
            Symptoms = trouble.Symptoms,
            Tests = trouble.Tests,
            Connections = sections.File<ConnectionFigures>("connections/figures.yaml"),
            Causes = trouble.Causes,
            CausePairs = trouble.Pairs,
            Words = VocabularyFolder.Load(sections),
            Phrasing = PhrasingFile.Load(sections),
        };
        LayoutCheck.Whole(sections, knowledge);
        trouble.Check(knowledge);
        return knowledge;
    }
}
