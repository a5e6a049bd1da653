using System.Numerics;
using System.Text;

namespace WireCoach.Rules.Windings;

/// <summary>What an explanation comes down to at the bench: which leads are which winding.</summary>
internal static class RoleKeys
{
    /// <summary>The windings of an explanation in leads, in a fixed order; layouts that name the same windings are not told apart here.</summary>
    public static string Of(Leaf leaf)
    {
        var windings = leaf.Pattern.Windings;
        var leadOf = LeadOf(leaf);
        var named = new (PatternWinding Winding, int Leads, int At)[windings.Count];
        for (var at = 0; at < named.Length; at++)
        {
            named[at] = (windings[at], Leads(windings[at].Terminals, leadOf), at);
        }

        Array.Sort(named, ByLeads);
        var groups = new List<string>(named.Length);
        var key = new StringBuilder(96);
        foreach (var (winding, leads, _) in named)
        {
            if (!groups.Contains(winding.Group))
            {
                groups.Add(winding.Group);
            }

            key.Append(winding.Role).Append(winding.Junction ? '*' : ':').Append(groups.IndexOf(winding.Group)).Append('(');
            for (var left = leads; left != 0; left &= left - 1)
            {
                key.Append(left == leads ? string.Empty : ",").Append(BitOperations.TrailingZeroCount(left));
            }

            if (winding.Taps.Count > 0)
            {
                // Which tap is which speed counts, and from which end they follow.
                key.Append('/').Append(leadOf[winding.Terminals[0]]).Append('/').AppendJoin(',', winding.Taps.Select(tap => leadOf[tap]));
            }

            key.Append(')');
        }

        return key.ToString();
    }

    private static int Leads(IReadOnlyList<int> terminals, int[] leadOf)
    {
        var bits = 0;
        for (var at = 0; at < terminals.Count; at++)
        {
            bits |= 1 << leadOf[terminals[at]];
        }

        return bits;
    }

    /// <summary>By the first lead, then by the last, then by role.</summary>
    private static int ByLeads((PatternWinding Winding, int Leads, int At) one, (PatternWinding Winding, int Leads, int At) other)
    {
        var first = BitOperations.TrailingZeroCount(one.Leads).CompareTo(BitOperations.TrailingZeroCount(other.Leads));
        var last = first != 0 ? first : BitOperations.Log2((uint)one.Leads).CompareTo(BitOperations.Log2((uint)other.Leads));
        var role = last != 0 ? last : string.CompareOrdinal(one.Winding.Role, other.Winding.Role);
        return role != 0 ? role : one.At.CompareTo(other.At);
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
