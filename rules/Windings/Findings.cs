using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Puts explanations into windings and faults by the person's own tags.</summary>
internal sealed class Findings(Bench bench, IReadOnlyList<Measured> readings, Explanations all, string[] roles)
{
    /// <summary>The windings of one explanation.</summary>
    public IReadOnlyList<Winding> Of(Leaf leaf) => [.. Named(leaf)
        .OrderBy(winding => Place(winding.Leads[0])).ThenBy(winding => Place(winding.Leads[^1])).ThenBy(winding => winding.Role, StringComparer.Ordinal)];

    /// <summary>The windings on whose leads all explanations agree; where they do not agree on the role it is <c>other</c>.</summary>
    public IReadOnlyList<Winding> Common()
    {
        _ = roles;
        var shares = new Dictionary<string, (double Share, Winding Winding, Dictionary<string, double> Roles)>(StringComparer.Ordinal);
        for (var index = 0; index < all.Leaves.Count; index++)
        {
            if (all.Probabilities[index] < 1e-4)
            {
                continue;
            }

            foreach (var winding in Named(all.Leaves[index]))
            {
                var key = (winding.Junction ? "*" : string.Empty) + string.Join(' ', winding.Leads.Order(StringComparer.Ordinal));
                var known = shares.GetValueOrDefault(key, (0, winding, new Dictionary<string, double>(StringComparer.Ordinal)));
                known.Roles[winding.Role] = known.Roles.GetValueOrDefault(winding.Role) + all.Probabilities[index];
                shares[key] = (known.Share + all.Probabilities[index], known.Winding, known.Roles);
            }
        }

        return [.. shares.Values.Where(one => one.Share >= 0.99)
            .Select(one => one.Roles.MaxBy(role => role.Value) is { Value: >= 0.99 } sure ? one.Winding with { Role = sure.Key } : one.Winding with { Role = "other", Markings = [] })
            .OrderBy(winding => Place(winding.Leads[0])).ThenBy(winding => Place(winding.Leads[^1]))];
    }

    /// <summary>The faults that the likeliest troubled explanations name.</summary>
    public static IEnumerable<WindingFault> Faults(Bench bench, Explanations all)
    {
        var troubles = new Dictionary<string, (double Share, Leaf Leaf)>(StringComparer.Ordinal);
        for (var index = 0; index < all.Leaves.Count; index++)
        {
            var leaf = all.Leaves[index];
            var id = Id(leaf);
            if (id is not null)
            {
                var key = $"{id} {RoleKeys.Trouble(leaf)}";
                var known = troubles.GetValueOrDefault(key, (0, leaf));
                troubles[key] = (known.Share + all.Probabilities[index], known.Leaf);
            }
        }

        var most = troubles.Values.Select(one => one.Share).DefaultIfEmpty(0).Max();
        var named = troubles.Where(one => one.Value.Share > 0.2 * most)
            .OrderByDescending(one => Math.Round(one.Value.Share, 9)).ThenBy(one => one.Key, StringComparer.Ordinal).Select(one => one.Value.Leaf).ToList();
        var places = named.Where(leaf => leaf.Pattern.Condition.Kind == ConditionKind.OpenCoil).Select(RoleKeys.Trouble).Distinct(StringComparer.Ordinal).Count();
        return named.Select(leaf => Fault(bench, leaf, places > 1));
    }

    private static WindingFault Fault(Bench bench, Leaf leaf, bool onePlaceOfSeveral)
    {
        var tags = RoleKeys.TroubledLeads(leaf).Select(lead => bench.Leads[lead]).ToList();
        var leads = string.Join("–", tags);
        var why = leaf.Pattern.Condition.Kind switch
        {
            ConditionKind.ShortedCoil => Statement.Of("windings.shorted-turns", ("leads", leads)),
            ConditionKind.SwitchOpen => Statement.Of("windings.switch-open", ("leads", leads)),
            ConditionKind.ProtectorOpen => Statement.Of("windings.protector-open"),
            _ => Statement.Of(onePlaceOfSeveral ? "windings.open-here-or-there" : "windings.open", ("leads", leads)),
        };
        return new(Id(leaf)!, tags, why);
    }

    private static string? Id(Leaf leaf)
    {
        var role = leaf.Pattern.Condition.Coil?.Role;
        return leaf.Pattern.HidesTrouble ? null : leaf.Pattern.Condition.Kind switch
        {
            ConditionKind.SwitchOpen => "start-switch-stuck-open",
            ConditionKind.ProtectorOpen => "protector-open",
            ConditionKind.OpenCoil => role switch { "run" or "speed-tap" => "open-run-winding", "start" => "open-start-winding", "phase" or "rotor" => "open-phase-winding", "armature" => "bad-commutator", _ => "field-open" },
            ConditionKind.ShortedCoil => role switch { "start" => "shorted-start-turns", "phase" or "rotor" => "shorted-phase-turns", _ => "shorted-run-turns" },
            _ => null,
        };
    }

    private IEnumerable<Winding> Named(Leaf leaf)
    {
        var leadOf = RoleKeys.LeadOf(leaf);
        foreach (var winding in leaf.Pattern.Windings)
        {
            var terminals = winding.Terminals.OrderBy(terminal => winding.Taps.Count > 0 ? 0 : leadOf[terminal]).ToList();
            yield return new Winding
            {
                Role = winding.Role,
                Leads = [.. terminals.Select(terminal => bench.Leads[leadOf[terminal]])],
                Markings = [.. terminals.Select(terminal => leaf.Pattern.Markings[terminal].TrimStart('~'))],
                Ohms = Ohms(leaf, terminals),
                Taps = winding.Taps.Count == 0 ? null : [.. winding.Taps.Select(tap => bench.Leads[leadOf[tap]])],
                Junction = winding.Junction,
            };
        }
    }

    /// <summary>The mean of what was read between the leads, else what the fit says.</summary>
    private double? Ohms(Leaf leaf, List<int> terminals)
    {
        var leadOf = RoleKeys.LeadOf(leaf);
        var leads = terminals.Select(terminal => leadOf[terminal]).ToHashSet();
        var read = readings.Where(reading => reading.Showed == Showed.Ohms && leads.Contains(reading.First) && leads.Contains(reading.Second)).ToList();
        if (read.Count > 0)
        {
            return Math.Round(read.Average(reading => reading.Ohms), 4);
        }

        var formula = leaf.Pattern.Formula[terminals[0]][terminals[^1]];
        return formula < 0 || readings.Count == 0 ? null
            : Math.Round(leaf.Ohms(formula), 4);
    }

    private int Place(string tag) => Enumerable.Range(0, bench.Leads.Count).First(lead => bench.Leads[lead] == tag);
}
