using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Puts pairs of the plate into one order: "400 V star, 230 V delta" and "400/230 V 3.4/5.9 A" are 230/400 V, 5.9/3.4 A.</summary>
internal static class PlatePairs
{
    private static readonly string[] Paired = ["volts", "amps"];

    public static List<Fact> Of(IReadOnlyList<Fact> facts, Scene scene) =>
    [
        .. OfOne([.. facts.Where(fact => fact is not Fact.Plate { Of: not null })], scene),
        .. OfOne([.. facts.Where(fact => fact is Fact.Plate { Of: not null })], scene),
    ];

    private static List<Fact> OfOne(List<Fact> facts, Scene scene)
    {
        var joined = Joined(facts, scene);
        var volts = joined.OfType<Fact.Plate>().FirstOrDefault(plate => plate.Field == "volts");
        if (volts is not { Value.Numbers: [var first, var second] } || first <= second)
        {
            return joined;
        }

        return joined.ConvertAll(fact => fact switch
        {
            Fact.Plate { Field: "volts" } plate when ReferenceEquals(plate, volts) => plate with { Value = PlateValue.Of([second, first]) },
            Fact.Plate { Field: "amps", Value.Numbers: [var one, var two] } plate when one < two => plate with { Value = PlateValue.Of([two, one]) },
            _ => fact,
        });
    }

    /// <summary>Two volts or amps that were told one by one, as one pair; only where it is said what parts them.</summary>
    private static List<Fact> Joined(List<Fact> facts, Scene scene)
    {
        var pairs = facts.OfType<Fact.Plate>().Where(plate => Paired.Contains(plate.Field, StringComparer.Ordinal) && plate.Value.Numbers.Count == 1)
            .GroupBy(plate => plate.Field, StringComparer.Ordinal).Where(same => same.Count() == 2 && same.First().Value.Number != same.Last().Value.Number)
            .ToDictionary(same => same.Key, same => same.ToList(), StringComparer.Ordinal);
        return pairs.ContainsKey("volts") && (pairs.ContainsKey("amps") || scene.Hits.Exists(hit => hit.Concept is "star-delta" or "low-high"))
            ? [.. facts.Select(fact => Joined(fact, pairs)).OfType<Fact>()]
            : [.. facts];
    }

    private static Fact? Joined(Fact fact, Dictionary<string, List<Fact.Plate>> pairs) =>
        fact is not Fact.Plate plate || !pairs.TryGetValue(plate.Field, out var pair) || plate.Value.Numbers.Count != 1 ? fact
        : ReferenceEquals(plate, pair[0]) ? plate with { Value = PlateValue.Of([pair[0].Value.Numbers[0], pair[1].Value.Numbers[0]]) }
        : null;
}
