using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>Turns layouts into what an ohmmeter sees of them, once for all.</summary>
internal sealed class PatternCompiler(IdentificationFigures figures, double mostOhms)
{
    private const int MostSymmetric = 6;
    private const double LeastOhms = 0.02;

    /// <summary>The pattern of a layout in one state.</summary>
    public Pattern Compile(Layout layout, Condition condition, double logPrior, Pattern? soundTwin = null)
    {
        var network = new PatternNetwork(layout, condition);
        var count = layout.Leads.Count;
        var links = new Link[count][];
        for (var row = 0; row < count; row++)
        {
            links[row] = [.. Enumerable.Range(0, count).Select(column => network.LinkOf(row, column))];
        }

        var formulas = new FormulaBook(layout, figures, network, condition, LeastOhms, mostOhms);
        var formula = new int[count][];
        for (var row = 0; row < count; row++)
        {
            formula[row] = [.. Enumerable.Range(0, count).Select(column => row == column || links[row][column] != Link.Ohms ? -1 : formulas.Of(row, column))];
        }

        var windings = PatternWindings.Of(layout);
        string[] roles = [.. Enumerable.Range(0, count).Select(terminal => string.Join('+', windings.Where(winding => winding.Terminals.Contains(terminal)).Select(winding => winding.Role).Order(StringComparer.Ordinal)))];
        var blocks = Blocks(network, Same(links, formula, roles), out var blockOf);
        var rows = formulas.Rows();
        int[] only = [.. rows.Select(row => row.Count(factor => factor > 0) == 1 ? Array.FindIndex(row, factor => factor > 0) : -1)];
        return new Pattern
        {
            Layout = layout,
            Condition = condition,
            LogPrior = logPrior,
            Count = count,
            SoundTwin = soundTwin,
            CapacitorWithinReach = WithinReach(layout),
            Markings = [.. layout.Leads.Select(lead => lead.Marking)],
            BlockOf = blockOf,
            Blocks = blocks,
            Links = links,
            Formula = formula,
            FormulaNames = formulas.Names(),
            Formulas = rows,
            OnlyUnknown = only,
            LnFactor = [.. rows.Select((row, index) => only[index] < 0 ? 0 : Math.Log(row[only[index]]))],
            Unknowns = formulas.Unknowns(),
            Ratios = formulas.Ratios(),
            Windings = windings,
        };
    }

    private static bool WithinReach(Layout layout)
    {
        var blocked = new PatternNetwork(layout, new(ConditionKind.Sound, Blocked: true));
        var leads = Enumerable.Range(0, layout.Leads.Count).ToList();
        return leads.Exists(first => leads.Exists(second => blocked.LinkOf(first, second) == Link.Kick));
    }

    /// <summary>Whether two patterns of as many leads can be laid on each other so that every reading is the same.</summary>
    public static bool Alike(Pattern one, Pattern other)
    {
        var left = other.Blocks.ToList();
        return one.Blocks.All(block =>
        {
            var at = left.FindIndex(candidate => Lies(block, candidate));
            if (at >= 0)
            {
                left.RemoveAt(at);
            }

            return at >= 0;
        });

        bool Lies(Block block, Block candidate) => block.Terminals.Length == candidate.Terminals.Length
            && Maps(block.Terminals, candidate.Terminals, (a, b, c, d) => one.Links[a][b] == other.Links[c][d] && Name(one, a, b) == Name(other, c, d)).Count > 0;
    }

    /// <summary>Whether two patterns name the same leads as the same windings, and read the same between each two of them.</summary>
    public static bool ReadAsOne(Pattern one, Pattern other) => one.Markings.AsSpan().SequenceEqual(other.Markings)
        && Named(one).SequenceEqual(Named(other), StringComparer.Ordinal)
        && Enumerable.Range(0, one.Count).All(first => Enumerable.Range(0, first).All(second => one.Links[first][second] == other.Links[first][second] && Name(one, first, second) == Name(other, first, second)));

    private static IEnumerable<string> Named(Pattern pattern) => pattern.Windings.Select(winding => $"{winding.Role} {winding.Junction} {string.Join(' ', winding.Terminals)}");

    private static string Name(Pattern pattern, int first, int second) =>
        pattern.Formula[first][second] < 0 ? string.Empty : pattern.FormulaNames[pattern.Formula[first][second]];

    private static Block[] Blocks(PatternNetwork network, Func<int, int, int, int, bool> same, out int[] blockOf)
    {
        var count = network.Terminals.Length;
        var groups = Enumerable.Range(0, count).GroupBy(terminal => network.Reach[network.Terminals[terminal]]).Select(group => group.ToArray()).ToList();
        blockOf = new int[count];
        var blocks = new Block[groups.Count];
        for (var index = 0; index < groups.Count; index++)
        {
            foreach (var terminal in groups[index])
            {
                blockOf[terminal] = index;
            }

            var like = Array.FindIndex(blocks, 0, index, other => Map(other.Terminals, groups[index], same) is not null);
            if (like >= 0)
            {
                // Terminals in the order of the like block, so that one set of symmetries serves both.
                groups[index] = Map(blocks[like].Terminals, groups[index], same)!;
            }

            blocks[index] = like >= 0
                ? new Block(index, blocks[like].Class, groups[index], blocks[like].Symmetries)
                : new Block(index, index, groups[index], [.. Maps(groups[index], groups[index], same)]);
        }

        return blocks;
    }

    private static int[]? Map(int[] from, int[] to, Func<int, int, int, int, bool> same) =>
        from.Length == to.Length && Maps(from, to, same) is [var map, ..] ? Array.ConvertAll(map, place => to[place]) : null;

    /// <summary>Terminals of windings of different roles are never alike, though a break may make them read alike: which is which is what is asked.</summary>
    private static Func<int, int, int, int, bool> Same(Link[][] links, int[][] formula, string[] roles) =>
        (a, b, c, d) => links[a][b] == links[c][d] && formula[a][b] == formula[c][d] && roles[a] == roles[c] && roles[b] == roles[d];

    /// <summary>All ways to lay one group of terminals on another so that every reading stays the same, as places in the second.</summary>
    private static List<int[]> Maps(int[] from, int[] to, Func<int, int, int, int, bool> same)
    {
        if (from.Length > MostSymmetric)
        {
            return ReferenceEquals(from, to) ? [[.. Enumerable.Range(0, from.Length)]] : [];
        }

        var found = new List<int[]>();
        Extend(new int[from.Length], 0);
        return found;

        void Extend(int[] map, int at)
        {
            if (at == from.Length)
            {
                found.Add([.. map]);
                return;
            }

            for (var place = 0; place < to.Length; place++)
            {
                if (Fits(map, at, place))
                {
                    map[at] = place;
                    Extend(map, at + 1);
                }
            }
        }

        bool Fits(int[] map, int at, int place)
        {
            if (!same(from[at], from[at], to[place], to[place]))
            {
                return false;
            }

            for (var earlier = 0; earlier < at; earlier++)
            {
                if (map[earlier] == place || !same(from[earlier], from[at], to[map[earlier]], to[place]))
                {
                    return false;
                }
            }

            return true;
        }
    }
}
