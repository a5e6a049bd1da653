using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>All words, ready for looking up. Built once, never changed.</summary>
internal sealed class Lexicon
{
    private const int ReachOfNot = 7;
    private const int ReachOfFailing = 3;
    private const string Not = "not";
    private const string ShortNot = "not-short";
    private const string Turn = "turn-of-speech";
    private const string ProtectionSize = "protection-size";
    private readonly Dictionary<string, List<Phrase>> _phrases = new(StringComparer.Ordinal);
    private readonly HashSet<string> _fillers;
    private readonly HashSet<string> _denials;
    private readonly HashSet<string> _senses;
    private readonly HashSet<string> _pronouns;
    private readonly Spelling _spelling;

    public Lexicon(Vocabulary words)
    {
        var concepts = words.Concepts.Values.Concat(words.Supplies.Values.Select(supply => new WordConcept { Id = "supply." + supply.Id, Words = supply.Words }))
            .Concat(words.Glossary.Values.Select(term => new WordConcept { Id = "term." + term.Id, Words = [term.Term, .. term.Synonyms], Swallows = Swallowing.None }))
            .ToList();
        foreach (var phrase in concepts.SelectMany(concept => concept.Words.Select(word => new Phrase(concept.Id, concept.Swallows, word.ToLowerInvariant().Replace('-', ' ')))))
        {
            foreach (var first in phrase.Firsts)
            {
                (_phrases.TryGetValue(first, out var listed) ? listed : _phrases[first] = []).Add(phrase);
            }
        }

        _fillers = Of(words, "filler");
        _denials = Of(words, Not);
        _senses = Of(words, "sense");
        _pronouns = Of(words, "pronoun");
        _spelling = new Spelling(
            concepts.Where(concept => concept.Id is not ("ordinary" or "filler") && !concept.Id.StartsWith("term.", StringComparison.Ordinal))
                .SelectMany(concept => concept.Words).SelectMany(Split),
            Of(words, "ordinary").Concat(_fillers).Concat(words.Units.Values.SelectMany(unit => unit.Written).SelectMany(Split)).Concat(words.Glossary.Values.SelectMany(term => term.Synonyms.Append(term.Term)).SelectMany(Split)));
    }

    /// <summary>Sets the stems, finds the concepts, works out how far each "not" reaches and which words are no report.</summary>
    public List<Hit> Read(List<Token> tokens)
    {
        foreach (var token in tokens)
        {
            token.Stem = token.Kind == TokenKind.Word ? _spelling.StemOf(token.Text) : token.Text;
        }

        var found = Found(tokens);
        Deny(tokens, found);
        Asides.Mark(tokens, found);
        return found.ConvertAll(hit => tokens[hit.First].Denied ? hit with { Denied = true, Start = tokens[hit.First].DeniedFrom } : hit);
    }

    private static HashSet<string> Of(Vocabulary words, string concept) =>
        words.Concepts.TryGetValue(concept, out var listed) ? [.. listed.Words.Select(Phrase.Letters)] : [];

    private static IEnumerable<string> Split(string written) =>
        written.ToLowerInvariant().Split([' ', '|', '*', '-', '/'], StringSplitOptions.RemoveEmptyEntries).Select(word => Phrase.Letters(word.TrimStart('=')));

    /// <summary>All phrases, without those that lie inside a longer one.</summary>
    private List<Hit> Found(List<Token> tokens)
    {
        var hits = new List<Hit>();
        var (cover, machines) = (new int[tokens.Count], new int[tokens.Count]);
        for (var at = 0; at < tokens.Count; at++)
        {
            Collect(tokens, at, tokens[at].Stem, hits, cover, machines);
            if (tokens[at].Kind is TokenKind.Word or TokenKind.Tag)
            {
                Collect(tokens, at, "=" + tokens[at].Text, hits, cover, machines);
            }
        }

        return [.. hits.DistinctBy(found => (found.Concept, found.First, found.Last, found.Places.Length)).Where(found => found.Concept is Turn or ProtectionSize || !Covers(IsMachine(found.Concept) ? machines : cover, found))];
    }

    private static bool Covers(int[] cover, Hit found) => Array.TrueForAll(found.Places, place => cover[place] > found.Places.Length);

    /// <summary>What the motor drives is still named in "uncoupled from the pump"; only the name of a longer machine takes the place of a shorter one.</summary>
    private static bool IsMachine(string concept) => concept.StartsWith("application.", StringComparison.Ordinal);

    private void Collect(List<Token> tokens, int at, string key, List<Hit> hits, int[] cover, int[] machines)
    {
        if (!_phrases.TryGetValue(key, out var phrases))
        {
            return;
        }

        foreach (var phrase in phrases)
        {
            if (phrase.At(tokens, at, _fillers, _denials) is not { } places)
            {
                continue;
            }

            hits.Add(new Hit(phrase.Concept, places, false));
            var swallowed = phrase.Swallows switch { Swallowing.All => places.Length, Swallowing.First => 1, _ => 0 };
            for (var place = 0; places.Length > 1 && place < swallowed; place++)
            {
                cover[places[place]] = Math.Max(cover[places[place]], places.Length);
                machines[places[place]] = IsMachine(phrase.Concept) ? Math.Max(machines[places[place]], places.Length) : machines[places[place]];
            }
        }
    }

    private void Deny(List<Token> tokens, List<Hit> found)
    {
        var starts = new string?[tokens.Count];
        var inside = new bool[tokens.Count];
        var firsts = new int[tokens.Count];
        foreach (var hit in found)
        {
            if (hit.Concept is Not or ShortNot)
            {
                (starts[hit.Last], firsts[hit.Last]) = (hit.Concept, hit.First);
                foreach (var place in hit.Places)
                {
                    inside[place] = true;
                }
            }
            else if (hit.Concept == Turn)
            {
                starts[hit.First] ??= Turn;
            }
        }

        var (until, clause, from) = (-1, -1, -1);
        for (var at = 0; at < tokens.Count; at++)
        {
            var token = tokens[at];
            if (token.Clause != clause || starts[at] == Turn || Breaks(tokens, at, inside))
            {
                (until, clause) = (-1, token.Clause);
            }

            token.DeniedFrom = at <= until && !inside[at] ? from : -1;
            if (starts[at] is Not or ShortNot)
            {
                (until, from) = (Math.Max(until, at + (starts[at] == Not ? ReachOfNot : ReachOfFailing)), firsts[at]);
            }
        }
    }

    /// <summary>A new subject ends what a "not" reaches: "won't turn, it hums" and "not running fast its running slow", but not "can't get it to turn" or "don't hear it hum".</summary>
    private bool Breaks(List<Token> tokens, int at, bool[] inside) =>
        (_pronouns.Contains(tokens[at].Text) || (tokens[at].Text == "its" && at + 1 < tokens.Count && tokens[at + 1].Text.EndsWith("ing", StringComparison.Ordinal))) && at > 0 && !inside[at - 1] && !_senses.Contains(tokens[at - 1].Text)
        && !(at + 1 < tokens.Count && tokens[at + 1].Text is "to" or "by" or "with" or "at" or "up" or "or" or "over");
}
