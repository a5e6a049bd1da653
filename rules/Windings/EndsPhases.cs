using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>The ways in which the coils of a three-phase motor can lie. The choices that only set the direction of rotation are made here.</summary>
internal static class EndsPhases
{
    private static readonly int[] Second = [120, 300];

    private static readonly int[] Third = [240, 60];

    private static readonly int[] InnerStar = [0, 120, 240];

    private static readonly int[][] Orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

    public static Answer<EndsScheme> Of(List<EndsWinding> windings, EndsInput input, TradeKnowledge knowledge)
    {
        var pairs = windings.Where(winding => winding.Leads.Count == 2).ToList();
        var triples = windings.Where(winding => winding.Leads.Count == 3).ToList();
        var id = (pairs.Count, triples.Count) switch
        {
            (3, 0) => "three-phase-6",
            (6, 0) => "three-phase-12",
            (3, 1) => "three-phase-9-star",
            (0, 3) => "three-phase-9-delta",
            (0, 2) => input.Layout,
            _ => null,
        };
        if (id is null || pairs.Count + triples.Count != windings.Count)
        {
            return EndsSchemes.Wrong("windings", Statement.Of("problem.ends-not-these-windings"));
        }

        if (input.Layout is not null && input.Layout != id)
        {
            return EndsSchemes.Wrong("windings", Statement.Of("problem.ends-other-layout", ("layout", input.Layout)));
        }

        var forms = EndsSchemes.Forms(input with { Layout = id }, knowledge).ToList();
        var form = forms.First(form => form.Form is null);
        return id switch
        {
            "three-phase-6" => Separate(pairs, form, SixWays()),
            "three-phase-12" => Separate(pairs, form, TwelveWays()),
            "three-phase-9-star" when triples[0].Point is { } point => WithPoint(NineStar(pairs, triples[0], form), point, forms),
            "three-phase-9-star" => NineStar(pairs, triples[0], form),
            "three-phase-9-delta" => NineDelta(triples, form, knowledge),
            "part-winding-6" => PartWinding(triples, form),
            _ => EndsSchemes.Wrong("windings", Statement.Of("problem.ends-not-these-windings")),
        };
    }

    /// <summary>The lead of a delta group at which its two coils meet; <see langword="null"/> where nobody read it.</summary>
    internal static string? Corner(EndsWinding triple, TradeKnowledge knowledge)
    {
        if (triple.Taps.Count == 1)
        {
            return triple.Taps[0];
        }

        var corners = EndsLayout.Vectors(knowledge.Layouts["three-phase-9-delta"]).Select(vector => vector.From).ToHashSet(StringComparer.Ordinal);
        var at = triple.Markings.Count == 3 ? triple.Markings.ToList().FindIndex(corners.Contains) : -1;
        return at < 0 ? null : triple.Leads[at];
    }

    private static EndsScheme Separate(List<EndsWinding> pairs, Layout form, IReadOnlyList<int[]> ways)
    {
        List<EndsCoil> coils = [.. pairs.Select(pair => new EndsCoil("phase", pair.Leads[0], pair.Leads[1]))];
        var ends = coils.ConvertAll(coil => (coil.From, coil.To));
        return Scheme(coils, ways, form, ends, ends);
    }

    private static IReadOnlyList<int[]> SixWays() => [.. from second in Second from third in Third select new[] { 0, second, third }];

    private static List<int[]> TwelveWays()
    {
        var ways = new List<int[]>();
        for (var partner = 1; partner < 6; partner++)
        {
            int[] rest = [.. Enumerable.Range(1, 5).Where(coil => coil != partner)];
            foreach (var mate in rest[1..])
            {
                int[] last = [.. rest[1..].Where(coil => coil != mate)];
                for (var bits = 0; bits < 32; bits++)
                {
                    var way = new int[6];
                    way[partner] = (bits & 1) * 180;
                    way[rest[0]] = Second[bits >> 1 & 1];
                    way[mate] = Second[bits >> 2 & 1];
                    way[last[0]] = Third[bits >> 3 & 1];
                    way[last[1]] = Third[bits >> 4 & 1];
                    ways.Add(way);
                }
            }
        }

        return ways;
    }

    private static EndsScheme NineStar(List<EndsWinding> pairs, EndsWinding inner, Layout form)
    {
        List<EndsCoil> coils =
        [
            .. inner.Leads.Select(lead => new EndsCoil("phase", lead, "\0star")),
            .. pairs.Select(pair => new EndsCoil("phase", pair.Leads[0], pair.Leads[1])),
        ];
        var ways = from order in Orders
                   from bits in Enumerable.Range(0, 8)
                   select InnerStar.Concat(order.Select((axis, at) => ((axis * 120) + ((bits >> at & 1) * 180)) % 360)).ToArray();
        return Scheme(coils, [.. ways], form, Across(inner.Leads), [.. pairs.Select(pair => (pair.Leads[0], pair.Leads[1]))]);
    }

    /// <summary>The same motor with the point of its second star brought out: that lead has its marking whatever the ends are.</summary>
    private static Answer<EndsScheme> WithPoint(EndsScheme scheme, string point, IReadOnlyList<Layout> forms)
    {
        var inside = scheme.Form!;
        if (forms.FirstOrDefault(form => form.Leads.Count == inside.Leads.Count + 1) is not { } outside)
        {
            return EndsSchemes.Wrong("windings", Statement.Of("problem.ends-not-these-windings"));
        }

        var added = outside.Leads.Single(lead => inside.LeadOf(lead.Marking) is null);
        return scheme with { Form = inside with { Leads = [.. inside.Leads, added] }, Fixed = new Dictionary<string, string>(StringComparer.Ordinal) { [added.Marking] = point } };
    }

    private static Answer<EndsScheme> NineDelta(List<EndsWinding> triples, Layout form, TradeKnowledge knowledge)
    {
        var coils = new List<EndsCoil>();
        foreach (var triple in triples)
        {
            if (Corner(triple, knowledge) is not { } corner)
            {
                return new Problem("not-ready", "windings", Statement.Of("problem.ends-corner", ("leads", string.Join(", ", triple.Leads))))
                {
                    Missing = [.. triple.Leads.Select((lead, at) => $"resistance {lead} to {triple.Leads[(at + 1) % 3]}")],
                };
            }

            coils.AddRange(triple.Leads.Where(lead => lead != corner).Select(lead => new EndsCoil("phase", corner, lead)));
        }

        var ways = from exchanged in Enumerable.Range(0, 2)
                   from bits in Enumerable.Range(0, 4)
                   let first = exchanged == 0 ? 120 : 240
                   let second = 360 - first
                   select new[]
                   {
                       0, 60,
                       first + ((bits & 1) * 60), first + ((1 - (bits & 1)) * 60),
                       second + ((bits >> 1) * 60), second + ((1 - (bits >> 1)) * 60),
                   };
        var ends = coils.ConvertAll(coil => (coil.From, coil.To));
        return Scheme(coils, [.. ways], form, ends[..2], ends[2..]);
    }

    private static EndsScheme PartWinding(List<EndsWinding> triples, Layout form)
    {
        List<EndsCoil> coils = [.. triples.SelectMany((triple, at) => triple.Leads.Select(lead => new EndsCoil("phase", lead, $"\0star {at}")))];
        return Scheme(
            coils, [.. Orders.Select(order => InnerStar.Concat(order.Select(axis => axis * 120)).ToArray())],
            form, Across(triples[0].Leads), Across(triples[1].Leads));
    }

    private static List<(string, string)> Across(IReadOnlyList<string> leads) => [(leads[0], leads[1]), (leads[1], leads[2]), (leads[2], leads[0])];

    private static EndsScheme Scheme(
        List<EndsCoil> coils, IReadOnlyList<int[]> ways, Layout form, IReadOnlyList<(string, string)> drives, IReadOnlyList<(string, string)> reads) => new()
        {
            Coils = coils,
            Ways = ways,
            Related = [[.. Enumerable.Range(0, coils.Count)]],
            Drives = drives,
            Reads = reads,
            Phases = true,
            Form = form,
            DirectionUnproved = true,
        };
}
