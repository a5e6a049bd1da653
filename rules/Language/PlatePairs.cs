using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>"400 V star, 230 V delta" and "115 V 10.4 A, 230 V 5.2 A" tell one pair of volts and one of amps, in the order said.</summary>
internal static class PlatePairs
{
    private static readonly string[] Paired = ["volts", "amps"];

    public static List<Fact> Of(IReadOnlyList<Fact> facts, Scene scene)
    {
        var pairs = facts.OfType<Fact.Plate>().Where(plate => Paired.Contains(plate.Field, StringComparer.Ordinal) && plate.Value.Numbers.Count == 1)
            .GroupBy(plate => plate.Field, StringComparer.Ordinal).Where(same => same.Count() == 2 && same.First().Value.Number != same.Last().Value.Number)
            .ToDictionary(same => same.Key, same => same.ToList(), StringComparer.Ordinal);
        var told = pairs.ContainsKey("volts") && (pairs.ContainsKey("amps") || scene.Hits.Exists(hit => hit.Concept is "star-delta" or "low-high"));
        return told
            ? [.. facts.Select(fact => Joined(fact, pairs)).OfType<Fact>()]
            : [.. facts];
    }

    private static Fact? Joined(Fact fact, Dictionary<string, List<Fact.Plate>> pairs)
    {
        if (fact is not Fact.Plate plate || !pairs.TryGetValue(plate.Field, out var pair) || plate.Value.Numbers.Count != 1)
        {
            return fact;
        }

        return ReferenceEquals(plate, pair[0])
            ? plate with { Value = PlateValue.Of([pair[0].Value.Numbers[0], pair[1].Value.Numbers[0]]) }
            : null;
    }
}
