using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>Concludes symptoms, goals, questions and the like from concepts that stand together in one sentence.</summary>
internal sealed class Conclusions
{
    private const string Anywhere = "*:";
    private const int Belongs = 14;
    private const int Overrules = 14;
    private const int LongestPhrase = 40;
    private readonly Dictionary<string, List<Line>> _lines = new(StringComparer.Ordinal);

    public Conclusions(IEnumerable<WordRule> rules)
    {
        foreach (var rule in rules)
        {
            foreach (var written in rule.Denied)
            {
                Add(Parse(rule.Id, written, false));
            }

            foreach (var written in rule.Said)
            {
                var line = Parse(rule.Id, written, true);
                Add(line);
                if (line.Atoms is [{ Denied: false, Absent: false, Either: false }])
                {
                    Add(new Line(rule.Id, false, line.Anywhere, [line.Atoms[0] with { Denied = true }]));
                }
            }
        }
    }

    /// <summary>What follows from the words, the first of each kind and place only; a denial stands where nothing affirms it, but what is to be confirmed is confirmed only where nothing denies it.</summary>
    public List<Conclusion> Of(Scene scene)
    {
        var found = new List<Conclusion>();
        var free = scene.Hits.FindAll(hit => Array.Exists(hit.Places, place => !scene.Tokens[place].Used));
        foreach (var sentence in free.GroupBy(hit => scene.Tokens[hit.First].Sentence))
        {
            Collect(scene, [.. sentence], false, found);
        }

        Collect(scene, free, true, found);
        found.RemoveAll(one => one.Aside && found.Exists(other => !other.Aside && other.Rule == one.Rule));
        return [.. found.GroupBy(one => one.Rule, StringComparer.Ordinal).Select(same => Once([.. same])).OrderBy(one => one.First).ThenBy(one => one.Rule, StringComparer.Ordinal)];
    }

    /// <summary>Of several that conclude one thing the first that counts, with the words of those that only say it again.</summary>
    private static Conclusion Once(List<Conclusion> same)
    {
        var first = same.Find(one => one.Said == (one.Kind != "confirm")) ?? same[0];
        return first with { Again = [.. same.Where(one => one != first && one.Said == first.Said && one.Aside == first.Aside).SelectMany(one => one.Hits)] };
    }

    private void Collect(Scene scene, List<Hit> hits, bool anywhere, List<Conclusion> found)
    {
        var byConcept = new HitsByConcept(hits);
        var reported = hits.Exists(Aside) ? new HitsByConcept(hits.FindAll(hit => !Aside(hit))) : byConcept;
        foreach (var concept in byConcept.Concepts)
        {
            if (!_lines.TryGetValue(concept, out var lines))
            {
                continue;
            }

            foreach (var line in lines)
            {
                if (line.Anywhere != anywhere)
                {
                    continue;
                }

                if (Match(line, line.IsReport ? reported : byConcept) is { } places)
                {
                    found.Add(new Conclusion(line.Rule, line.Said, places));
                }
                else if (line.IsReport && line.Said && reported != byConcept && Match(line, byConcept) is { } beside)
                {
                    found.Add(new Conclusion(line.Rule, true, beside) { Aside = true });
                }
            }
        }

        bool Aside(Hit hit) => scene.Tokens[hit.First].Aside;
    }

    private static List<Hit>? Match(Line line, HitsByConcept hits) =>
        hits[line.Atoms[0].Concept].Where(line.Atoms[0].Fits).Select(hit => Around(line, hit, hits)).FirstOrDefault(places => places is not null);

    /// <summary>What belongs to the line near one of its words; in a run-on sentence words far apart have nothing to do with each other.</summary>
    private static List<Hit>? Around(Line line, Hit anchor, HitsByConcept hits)
    {
        List<Hit> places = [anchor];
        foreach (var atom in line.Atoms.Skip(1))
        {
            var reach = line.Anywhere ? int.MaxValue : atom.Absent ? Overrules : Belongs;
            var nearest = Within(hits[atom.Concept], places, line.Anywhere ? int.MaxValue : reach).Where(atom.Fits).MinBy(hit => places.Min(place => Distance(place, hit)));
            var found = nearest is not null && places.Min(place => Distance(place, nearest)) <= reach;
            if (atom.Absent == found)
            {
                return null;
            }

            if (found)
            {
                places.Add(nearest!);
            }
        }

        return places;
    }

    /// <summary>Those of a concept that start near enough to matter, so that a long run of words is not looked through for each of its words.</summary>
    private static IEnumerable<Hit> Within(IReadOnlyList<Hit> hits, List<Hit> places, int reach)
    {
        if (reach == int.MaxValue)
        {
            return hits;
        }

        var (from, to) = (places.Min(place => place.First) - reach - LongestPhrase, places.Max(place => place.Last) + reach);
        var (low, high) = (0, hits.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = hits[middle].First < from ? (middle + 1, high) : (low, middle);
        }

        return hits.Skip(low).TakeWhile(hit => hit.First <= to);
    }

    private static int Distance(Hit one, Hit other) => Math.Max(0, Math.Max(one.First, other.First) - Math.Min(one.Last, other.Last));

    private void Add(Line line)
    {
        var key = line.Atoms[0].Concept;
        (_lines.TryGetValue(key, out var lines) ? lines : _lines[key] = []).Add(line);
    }

    private static Line Parse(string rule, string written, bool said)
    {
        var anywhere = written.StartsWith(Anywhere, StringComparison.Ordinal);
        var atoms = (anywhere ? written[Anywhere.Length..] : written).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(atom =>
        {
            var absent = atom[0] == '!';
            var rest = absent ? atom[1..] : atom;
            return rest[0] switch
            {
                '-' => new Atom(rest[1..], true, false, absent),
                '~' => new Atom(rest[1..], false, true, absent),
                _ => new Atom(rest, false, false, absent),
            };
        }).OrderBy(atom => atom.Absent).ToList();
        return new Line(rule, said, anywhere, atoms);
    }

    /// <summary>The hits of one stretch of words, by concept and in the order of the text.</summary>
    private sealed class HitsByConcept
    {
        private readonly Dictionary<string, List<Hit>> _hits = new(StringComparer.Ordinal);

        public HitsByConcept(List<Hit> hits)
        {
            foreach (var hit in hits.OrderBy(hit => hit.First))
            {
                (_hits.TryGetValue(hit.Concept, out var same) ? same : _hits[hit.Concept] = []).Add(hit);
            }
        }

        public IEnumerable<string> Concepts => _hits.Keys;

        public IReadOnlyList<Hit> this[string concept] => _hits.TryGetValue(concept, out var hits) ? hits : [];
    }

    private sealed record Atom(string Concept, bool Denied, bool Either, bool Absent)
    {
        public bool Fits(Hit hit) => Either || hit.Denied == Denied;
    }

    private sealed record Line(string Rule, bool Said, bool Anywhere, List<Atom> Atoms)
    {
        /// <summary>It tells how the motor is.</summary>
        public bool IsReport { get; } = Rule.StartsWith("symptom/", StringComparison.Ordinal) || Rule.StartsWith("unsettled/", StringComparison.Ordinal);
    }
}

/// <summary>Something concluded.</summary>
/// <param name="Rule"><c>kind/id</c>.</param>
/// <param name="Said"><see langword="false"/> for a denial.</param>
/// <param name="Hits">The words that say it.</param>
internal sealed record Conclusion(string Rule, bool Said, List<Hit> Hits)
{
    /// <summary>Other words of the message that say the same.</summary>
    public IReadOnlyList<Hit> Again { get; init; } = [];

    /// <summary>The words do not speak of this motor as it is now.</summary>
    public bool Aside { get; init; }

    /// <summary>Hardly anybody tells it in the words that stand around it.</summary>
    public bool Doubtful { get; init; }

    public string Kind => Rule[..Rule.IndexOf('/', StringComparison.Ordinal)];

    public string Id => Rule[(Rule.IndexOf('/', StringComparison.Ordinal) + 1)..];

    public int First => Hits.Min(hit => hit.Start);

    public int Last => Hits.Max(hit => hit.Last);
}
