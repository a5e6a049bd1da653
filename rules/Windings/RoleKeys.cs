using System.Text;

namespace WireCoach.Rules.Windings;

/// <summary>What an explanation comes down to at the bench: which leads are which winding.</summary>
internal static class RoleKeys
{
    /// <summary>The windings of an explanation in leads, in a fixed order; layouts that name the same windings are not told apart here.</summary>
    public static string Of(Leaf leaf)
    {
        var leadOf = LeadOf(leaf);
        var named = leaf.Pattern.Windings
            .Select(winding => (Winding: winding, Leads: winding.Terminals.Select(terminal => leadOf[terminal]).Order().ToArray()))
            .OrderBy(one => one.Leads[0]).ThenBy(one => one.Leads[^1]).ThenBy(one => one.Winding.Role, StringComparer.Ordinal);
        var groups = new List<string>();
        var key = new StringBuilder();
        foreach (var (winding, leads) in named)
        {
            if (!groups.Contains(winding.Group))
            {
                groups.Add(winding.Group);
            }

            key.Append(winding.Role).Append(winding.Junction ? '*' : ':').Append(groups.IndexOf(winding.Group)).Append('(').AppendJoin(',', leads);
            if (winding.Taps.Count > 0)
            {
                // Which tap is which speed counts, and from which end they follow.
                key.Append('/').Append(leadOf[winding.Terminals[0]]).Append('/').AppendJoin(',', winding.Taps.Select(tap => leadOf[tap]));
            }

            key.Append(')');
        }

        return key.ToString();
    }

    /// <summary>What is the matter, in leads.</summary>
    public static string Trouble(Leaf leaf)
    {
        var condition = leaf.Pattern.Condition;
        if (condition.IsWhole)
        {
            return string.Empty;
        }

        return $"{condition.Kind}({string.Join(',', TroubledLeads(leaf))})";
    }

    /// <summary>The leads of the winding in which something is the matter.</summary>
    public static IReadOnlyList<int> TroubledLeads(Leaf leaf)
    {
        var leadOf = LeadOf(leaf);
        var condition = leaf.Pattern.Condition;
        var winding = condition.Coil is { } coil ? leaf.Pattern.Windings.FirstOrDefault(one => one.Coils.Contains(coil.Id))
            : condition.Kind == ConditionKind.SwitchOpen ? leaf.Pattern.Windings.FirstOrDefault(one => one.Role == "start")
            : condition.Kind == ConditionKind.ProtectorOpen ? leaf.Pattern.Windings.FirstOrDefault(one => one.Role == "protector")
            : null;
        if (winding is null)
        {
            return [];
        }

        return [.. Arms(leaf, winding).Select(terminal => leadOf[terminal]).Order()];
    }

    /// <summary>Of a group that meets in a point only the lead of the coil in question; of a ring of three the two leads it lies between.</summary>
    private static IEnumerable<int> Arms(Leaf leaf, PatternWinding winding)
    {
        if (!winding.Junction || leaf.Pattern.Condition.Coil is not { } coil)
        {
            return winding.Terminals;
        }

        var leads = leaf.Pattern.Layout.Leads;
        var own = winding.Terminals.Where(terminal => (leads[terminal].Node ?? leads[terminal].Marking) is var node && (node == coil.From || node == coil.To)).ToList();
        return own.Count > 0 ? own : winding.Terminals;
    }

    public static int[] LeadOf(Leaf leaf)
    {
        var leadOf = new int[leaf.Pattern.Count];
        for (var lead = 0; lead < leaf.TerminalOf.Length; lead++)
        {
            if (leaf.TerminalOf[lead] >= 0)
            {
                leadOf[leaf.TerminalOf[lead]] = lead;
            }
        }

        return leadOf;
    }
}
