using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>Files what was concluded: symptoms, goals, questions, dangers, confirmations, instruments, the application, plate words.</summary>
internal sealed class Findings(Scene scene, Vocabulary words, List<Conclusion> concluded)
{
    private const string Records = "records";
    private readonly List<HeardSymptom> _symptoms = [];
    private readonly List<HeardQuestion> _questions = [];
    private readonly List<HeardDanger> _dangers = [];
    private readonly List<string> _roles = [];
    private bool _undo;
    private bool _skip;

    public bool Corrects { get; private set; }

    public Understood Understood => new()
    {
        Symptoms = _symptoms, Questions = _questions, Dangers = _dangers, RoleHints = _roles, Undo = _undo, Skip = _skip,
    };

    public void File()
    {
        foreach (var conclusion in concluded)
        {
            One(conclusion);
            foreach (var place in conclusion.Hits.Concat(conclusion.Again).Concat(Wished(conclusion)).SelectMany(hit => hit.Places).Where(place => scene.Tokens[place].Kind == TokenKind.Word && scene.Like(place, "number.") is null))
            {
                scene.Use(place, place);
            }
        }

        Corrects |= scene.IsWord(0, "no", "nope", "wrong") && scene.IsWord(1, ",", "-", "sorry", "wait", "that", "it", "the", ".", "not");
        if (scene.Tokens.Count(token => token.Kind == TokenKind.Word) <= 2 && scene.Hits.Find(hit => hit.Concept == "why") is { } why)
        {
            scene.Use(why);
            _questions.Add(new HeardQuestion("why", null, scene.Span(why.First, why.Last)));
        }

        Instruments();
        Application();
        PlateWords();
        Terms();
    }

    /// <summary>"Which wire goes where, help me hook it up": other words for what is wanted.</summary>
    private IEnumerable<Hit> Wished(Conclusion said) =>
        said.Kind == "goal" ? scene.Hits.Where(hit => said.Hits.Exists(one => one.Concept == hit.Concept && one.Denied == hit.Denied)) : [];

    private void One(Conclusion said)
    {
        var (first, last) = (said.First, said.Last);
        var span = scene.Span(first, last);
        switch (said.Kind)
        {
            case "symptom" when said.Aside && Warns(said):
                break;
            case "symptom" when said.Aside:
                scene.Unsettled.Add(new Leftover(span, ["aside/" + said.Id]));
                break;
            case "symptom" when said is { Doubtful: true, Said: true }:
                scene.Unsettled.Add(new Leftover(span, ["doubt/" + said.Id]));
                scene.Note(first, last, new Fact.Choice { Question = Fact.Choice.Doubted + said.Id, Option = "yes" });
                break;
            case "symptom" when said.Doubtful:
                scene.Unsettled.Add(new Leftover(span));
                break;
            case "symptom":
                _symptoms.Add(new HeardSymptom(said.Id, said.Said, span));
                scene.Note(first, last, new Fact.Symptom { Id = said.Id, Present = said.Said });
                break;
            case "confirm":
                scene.Note(first, last, new Fact.Confirm { Id = said.Id, Confirmed = said.Said });
                break;
            case "goal" when said.Said:
                scene.Note(first, last, new Fact.Goal { Id = said.Id });
                break;
            case "question" when said.Said:
                _questions.Add(new HeardQuestion(said.Id, said.Id == Records ? Unheard(said) : null, span));
                break;
            case "how" when said.Said:
                _questions.Add(new HeardQuestion("how-test", said.Id, span));
                break;
            case "danger" when said.Said:
                _dangers.Add(new HeardDanger(said.Id, span));
                break;
            case "role" when said.Said:
                _roles.Add(said.Id);
                break;
            case "test" when said.Said:
                scene.Note(first, last, new Fact.BenchTest { Test = Before(said.Id), Outcome = Behind(said.Id) });
                break;
            case "choice" when said.Said:
                scene.Note(first, last, new Fact.Choice { Question = Before(said.Id), Option = Behind(said.Id) });
                break;
            case "history" when said.Said:
                scene.Note(first, last, new Fact.Choice { Question = "history." + said.Id, Option = "yes" });
                break;
            case "unsettled" when said.Said && !said.Aside && !words.Rules[said.Rule].Reads.Any(read => concluded.Exists(one => one.Rule == read && one.Said)):
                scene.Note(first, last, new Fact.Choice { Question = Fact.Choice.Unsettled + said.Id, Option = "yes" });
                scene.Unsettled.Add(new Leftover(span, [.. words.Rules[said.Rule].Reads]));
                break;
            case "unknown" when said.Said:
                scene.Note(first, last, new Fact.Unknown { Question = said.Id });
                break;
            case "capacitor":
                var present = said.Id == "present" && said.Said;
                scene.Note(first, last, new Fact.Capacitor { Present = present, Use = present ? "unknown" : Missing(first, last) });
                break;
            case "intent":
                _undo |= said.Id == "undo";
                _skip |= said.Id == "skip";
                Corrects |= said.Id == "correct";
                break;
            default:
                break;
        }
    }

    /// <summary>Whether the same words are taken for a danger: what stops the job is not passed over as an aside in one breath.</summary>
    private bool Warns(Conclusion aside) =>
        concluded.Exists(other => other is { Kind: "danger", Said: true } && other.Hits.Concat(other.Again).SelectMany(hit => hit.Places).Intersect(aside.Hits.SelectMany(hit => hit.Places)).Any());

    /// <summary>The words among and behind those of a question that no concept knows: "paper shredder" in "the paper shredder we did last week".</summary>
    private string? Unheard(Conclusion said)
    {
        var places = said.Hits.SelectMany(hit => hit.Places).ToHashSet();
        var known = scene.Hits.Where(hit => !hit.Concept.StartsWith("term.", StringComparison.Ordinal)).SelectMany(hit => hit.Places).ToHashSet();
        var unheard = Enumerable.Range(said.First, scene.Tokens.Count - said.First)
            .Where(at => scene.Tokens[at].Kind == TokenKind.Word && scene.Tokens[at].Clause == scene.Tokens[said.First].Clause && !places.Contains(at) && !known.Contains(at))
            .Select(at => scene.Span(at, at)).ToList();
        return unheard.Count == 0 ? null : string.Join(' ', unheard);
    }

    /// <summary>The kind of capacitor that is said to be missing: "no start cap" says nothing of one to run.</summary>
    private string Missing(int first, int last) =>
        scene.Hits.Where(hit => hit.Concept is "start-use" or "run-use" && hit.Places.Length > 1 && hit.First >= first && hit.Last <= last).Select(hit => hit.Concept).Distinct(StringComparer.Ordinal).ToList() is [var only]
            ? only[..^"-use".Length] : "unknown";

    private static string Before(string id) => id[..id.IndexOf('/', StringComparison.Ordinal)];

    private static string Behind(string id) => id[(id.IndexOf('/', StringComparison.Ordinal) + 1)..];

    private void Instruments()
    {
        foreach (var hit in scene.Hits.Where(hit => hit.Concept.StartsWith("instrument.", StringComparison.Ordinal)).DistinctBy(hit => hit.Concept))
        {
            scene.Use(hit);
            var id = hit.Concept["instrument.".Length..];
            var volts = id == Figures.Transformer ? hit.Places.Select(place => scene.Tokens[place]).FirstOrDefault(token => token.Kind == TokenKind.Number)?.Value : null;
            scene.Note(hit.First, hit.Last, new Fact.Instrument { Id = id, Present = !hit.Denied, Volts = volts });
        }
    }

    private void Application()
    {
        foreach (var hit in scene.Hits.Where(hit => hit.Concept.StartsWith("application.", StringComparison.Ordinal)).DistinctBy(hit => hit.Concept))
        {
            scene.Use(hit);
            scene.Note(hit.First, hit.Last, new Fact.Application { Text = scene.Span(hit.First, hit.Last), ApplicationId = hit.Concept["application.".Length..] });
        }
    }

    /// <summary>"code L", "class F", "frame 56C", "continuous duty", "IP55", "TEFC".</summary>
    private void PlateWords()
    {
        foreach (var hit in scene.Hits)
        {
            var next = scene[hit.Last + 1];
            next = next is { Kind: TokenKind.Mark, Text: ":" or "." } ? scene[hit.Last + 2] : next;
            switch (hit.Concept)
            {
                case "plate-code" when next is { Kind: TokenKind.Word, Text.Length: 1 }:
                    Plate(hit, next, "codeLetter");
                    break;
                case "plate-class" when next is { Kind: TokenKind.Word, Text.Length: 1 } && next.Text[0] is 'a' or 'e' or 'b' or 'f' or 'h' or 'n':
                    Plate(hit, next, "insulationClass");
                    break;
                case "plate-frame" when next is { Used: false } && next.Kind is TokenKind.Number or TokenKind.Tag && !IsHeat(next, hit) && scene.At(scene.Tokens.IndexOf(next, hit.Last) + 1, "megohm-word") is null:
                    Plate(hit, scene[scene.Tokens.IndexOf(next, hit.Last) + 1] is { Glued: true, Kind: TokenKind.Word } letter ? letter : next, "frame", next);
                    break;
                case "plate-continuous" when !hit.Denied:
                    scene.Add(hit.First, hit.Last, new Fact.Plate { Field = "duty", Value = new PlateValue([], "continuous") });
                    break;
                case "plate-enclosure":
                    scene.Add(hit.First, hit.Last, new Fact.Plate { Field = "enclosure", Value = new PlateValue([], scene.Span(hit.First, hit.Last).ToUpperInvariant()) });
                    break;
                default:
                    break;
            }
        }

        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (scene.Tokens[at] is { Kind: TokenKind.Tag, Used: false } tag && tag.Text.StartsWith("ip", StringComparison.Ordinal))
            {
                scene.Add(at, at, new Fact.Plate { Field = "enclosure", Value = new PlateValue([], tag.Text.ToUpperInvariant()) });
            }
        }
    }

    /// <summary>"Frame 118 C" is how hot it is, not its size.</summary>
    private bool IsHeat(Token number, Hit hit) => scene.Tokens.IndexOf(number, hit.Last) is var at
        && scene.IsWord(at + 1, "c", "°", "°c", "degrees", "deg", "celsius", "f") && !(scene[at + 1]!.Glued && scene[at + 1]!.Text is "c");

    private void Plate(Hit hit, Token last, string field, Token? from = null)
    {
        var end = scene.Tokens.IndexOf(last, hit.Last);
        var text = scene.Span(from is null ? end : scene.Tokens.IndexOf(from, hit.Last), end).ToUpperInvariant();
        scene.Add(hit.First, end, new Fact.Plate { Field = field, Value = new PlateValue([], text) });
    }

    /// <summary>"What is a start winding?"</summary>
    private void Terms()
    {
        foreach (var ask in scene.Hits.Where(hit => hit.Concept == "what-is" && !scene.InSentence("size-wish", hit.First)))
        {
            var term = scene.Hits.Where(hit => hit.Concept.StartsWith("term.", StringComparison.Ordinal) && hit.First > ask.First && hit.First - ask.Last <= 3 && scene.Tokens[hit.First].Sentence == scene.Tokens[ask.First].Sentence)
                .OrderByDescending(hit => hit.Places.Length).ThenByDescending(IsAsWritten).ThenBy(hit => hit.First).FirstOrDefault();
            if (term is not null)
            {
                var last = Math.Max(ask.Last, term.Last);
                scene.Use(ask.First, last);
                _questions.Add(new HeardQuestion("what-is", term.Concept["term.".Length..], scene.Span(ask.First, last)));
            }
        }
    }

    private bool IsAsWritten(Hit hit) =>
        words.Glossary[hit.Concept["term.".Length..]] is var term && term.Synonyms.Append(term.Term).Any(name => string.Equals(name, scene.Span(hit.First, hit.Last), StringComparison.OrdinalIgnoreCase));
}
