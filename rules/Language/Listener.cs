using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Language;

/// <summary>Turns what a person types into facts. Pure: the same words always give the same facts.</summary>
public sealed class Listener
{
    /// <summary>The longest message that is read, in characters; a longer one is refused whole and never cut silently.</summary>
    public const int LongestText = 20_000;

    private static readonly string[] SmallTalk = ["filler", "small-talk", "pronoun"];
    private readonly Vocabulary _words;
    private readonly Lexicon _lexicon;
    private readonly UnitBook _units;
    private readonly Conclusions _conclusions;
    private readonly HashSet<string> _smallTalk;
    private readonly ShortForms _forms;
    private readonly Likeness _likeness;
    private readonly double _usualPercent;
    private readonly TradeRule _unequal;

    /// <summary>A listener for these words.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    public Listener(TradeKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        _words = knowledge.Words;
        _lexicon = new Lexicon(_words);
        _units = new UnitBook(_words.Units.Values);
        _conclusions = new Conclusions(_words.Rules.Values);
        _forms = new ShortForms(knowledge);
        _likeness = new Likeness(_words, knowledge.Rules["likeness"], knowledge.GateConditions.Values.Where(condition => condition.Stops).SelectMany(condition => condition.When).Select(when => when.Symptom).OfType<string>());
        _usualPercent = knowledge.Rules["first-run-amps"]["loaded-percent"];
        _unequal = knowledge.Rules["current-unbalance"];
        _smallTalk = [.. SmallTalk.Where(_words.Concepts.ContainsKey).SelectMany(id => _words.Concepts[id].Words).Select(Phrase.Letters)];
    }

    /// <summary>Reads a message; a message above <see cref="LongestText"/> is a problem <c>too-large</c>.</summary>
    /// <param name="text">The message.</param>
    /// <param name="leads">The leads' tags as far as they are known.</param>
    /// <param name="asked">The question that stands open.</param>
    /// <param name="region">The region, which settles "a normal wall outlet".</param>
    public Answer<Understood> Hear(string text, IReadOnlyList<string>? leads = null, OpenQuestion? asked = null, Region? region = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > LongestText
            ? new Problem("too-large", "text", Statement.Of("problem.text-too-long", ("length", $"{text.Length}"), ("longest", $"{LongestText}")))
            : Understand(text, leads, asked, region);
    }

    /// <summary>Reads a message.</summary>
    /// <param name="text">The message, at most <see cref="LongestText"/> characters.</param>
    /// <param name="leads">The leads' tags as far as they are known.</param>
    /// <param name="asked">The question that stands open; it decides how a bare "1.7" or "yes" is read.</param>
    /// <param name="region">The region, which settles "a normal wall outlet".</param>
    /// <exception cref="ArgumentOutOfRangeException">The message is too long; ask <see cref="Hear"/>.</exception>
    public Understood Understand(string text, IReadOnlyList<string>? leads = null, OpenQuestion? asked = null, Region? region = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(text.Length, LongestText, nameof(text));
        return Read(Scene(text, leads ?? [], asked, region));
    }

    /// <summary>What is weighed of a message: its words, and what its phrases tell.</summary>
    internal (CountedWords Counted, IReadOnlyList<string> Phrases) Weighing(string text, IReadOnlyList<string> leads, OpenQuestion? asked, Region? region)
    {
        var scene = Scene(text, leads, asked, region);
        return (CountedWords.Of(scene, [.. Enumerable.Range(0, scene.Tokens.Count)]), Likeness.Phrases(Open(scene).Concluded));
    }

    private Scene Scene(string text, IReadOnlyList<string> leads, OpenQuestion? asked, Region? region)
    {
        var tokens = Tokenizer.Cut(text);
        return new Scene(text, tokens, _lexicon.Read(tokens), _words.Supplies, new Hearing(leads, asked, region));
    }

    /// <summary>What claims its words before anything is concluded, and what is concluded from the others.</summary>
    private (LeadReader Leads, ReadingGrammar Readings, OtherPairs Others, List<Conclusion> Concluded) Open(Scene scene)
    {
        MachineNumbers.Claim(scene, _units);
        MeterRange.Claim(scene, _units);
        var leads = new LeadReader(scene);
        var readings = new ReadingGrammar(scene, leads, _units);
        readings.Read();
        var others = new OtherPairs(scene, readings, leads);
        others.Claim();
        new JointGrammar(scene, leads).Read();
        new ConnectionWish(scene).Read();
        _forms.Claim(scene);
        return (leads, readings, others, _conclusions.Of(scene));
    }

    private Understood Read(Scene scene)
    {
        var (leads, readings, others, concluded) = Open(scene);
        var weighed = new Weighed(_likeness, scene, concluded);
        var heard = new Findings(scene, _words, weighed.Concluded);
        heard.File();
        if (scene.Asked?.About == "lead")
        {
            new LeadNames(scene, leads, _units).Read();
        }

        var quantities = new QuantityReader(scene, _units).All();
        ThreeLines.Read(scene, quantities);
        var answered = scene.Asked is { Kind: QuestionKind.Reading or QuestionKind.Quantity } ? Answer(scene, readings, quantities) : null;
        new Figures(scene, [.. quantities.Where(quantity => !scene.Tokens[quantity.First].Used)]).Read();
        if (scene.Asked?.About != "lead")
        {
            new LeadNames(scene, leads, _units).Read();
        }

        others.File();
        answered ??= Answer(scene, readings, quantities);
        PlateOwner.Tell(scene);
        SpareCapacitor.Tell(scene);
        var nothing = scene.Facts.All(fact => fact.Fact is Fact.Application || (fact.Fact is Fact.Choice choice && choice.Question.StartsWith(Fact.Choice.Doubted, StringComparison.Ordinal))) && heard.Understood is { Questions.Count: 0, Dangers.Count: 0, Undo: false, Skip: false };
        var likely = weighed.Add(nothing);
        var facts = RunFacts.Joined(PlatePairs.Of([.. scene.Facts.Select(fact => fact.Fact)], scene));
        if (facts.Exists(fact => fact is Fact.Capacitor { Microfarads: not null } or Fact.Capacitor { MeasuredMicrofarads: not null }))
        {
            facts.RemoveAll(fact => fact is Fact.Capacitor { Present: true, Microfarads: null, MeasuredMicrofarads: null, Volts: null, AcrossVolts: null }); // its marks say already that there is one
        }

        List<Fact.Symptom> reckoned = [.. new[] { RunFacts.AgainstPlate(facts, _usualPercent) ?? RunFacts.OfPlate(scene, quantities, _usualPercent), RunFacts.Unequal(scene, facts, _unequal) }.OfType<Fact.Symptom>()];
        facts.AddRange(reckoned);
        return heard.Understood with
        {
            Facts = facts,
            Symptoms = [.. heard.Understood.Symptoms, .. likely, .. reckoned.Select(one => new HeardSymptom(one.Id, one.Present, one.Span!))],
            Goal = facts.OfType<Fact.Goal>().LastOrDefault()?.Id,
            Answer = answered?.Answer,
            AnswerFacts = answered is null ? [] : [.. facts.Where(answered.Value.Facts.Contains)],
            Corrections = heard.Corrects ? [.. facts.Where(fact => fact is Fact.Reading or Fact.Plate or Fact.Supply or Fact.Capacitor or Fact.Insulation or Fact.Running or Fact.Joint)] : [],
            OtherPairs = others.Of(facts),
            SpeaksOfPlate = scene.Hits.Exists(hit => hit.Concept is "plate-cue" or "marked"),
            IsCourtesy = IsCourtesy(scene),
            NotUnderstood = [.. scene.Unsettled, .. answered?.Answer.Text is null ? new Leftovers(scene, _smallTalk).Find() : []],
        };
    }

    private bool IsCourtesy(Scene scene)
    {
        var polite = scene.Places("courtesy", "greeting");
        return polite.Count > 0 && !scene.Hits.Exists(hit => hit.Concept is "answer-no" or "answer-cannot" or "answer-unknown") && scene.Tokens.Select((token, at) => token.Kind == TokenKind.Mark || polite.Contains(at) || (token.Kind == TokenKind.Word && _smallTalk.Contains(token.Text))).All(said => said);
    }

    private (HeardAnswer Answer, IReadOnlyList<Fact> Facts)? Answer(Scene scene, ReadingGrammar readings, List<Quantity> quantities) =>
        new AnswerGrammar(scene, readings, quantities, _forms, _smallTalk).Read();
}
