using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Simulation;

/// <summary>A motor whose ends are to be told apart: coils drawn from a layout, their leads hidden, coupled as in iron.</summary>
internal sealed class EndsBench
{
    private const int MostTests = 40;

    private readonly Layout _form;
    private readonly List<(string From, string To, int Degrees)> _hidden;
    private readonly CoupledCoils _coils;
    private readonly List<EndsWinding> _windings;

    /// <param name="knowledge">The layouts.</param>
    /// <param name="layout">A layout's id, or id and form joined by a plus.</param>
    /// <param name="seed">Hides the leads.</param>
    /// <param name="rotor">Ohms of the cage, which set the coupling at rest.</param>
    /// <param name="ohms">Ohms of a coil.</param>
    /// <param name="ownPoles">Whether each half lies on poles of its own.</param>
    /// <param name="stray">Coupling between halves on poles of their own.</param>
    public EndsBench(TradeKnowledge knowledge, string layout, int seed, double rotor, double ohms = 0.8, bool ownPoles = false, double stray = 0)
    {
        _form = FormOf(knowledge, layout);
        var random = new Random(seed);
        var tags = Enumerable.Range(1, _form.Leads.Count).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        random.Shuffle(tags);
        var tagOf = _form.Leads.Zip(tags).ToDictionary(pair => pair.First.Marking, pair => pair.Second, StringComparer.Ordinal);
        string Node(string node) => tagOf.GetValueOrDefault(node, node);
        var coils = Coils(_form).ToList();
        _hidden = coils.ConvertAll(coil => (Node(coil.From), Node(EndOf(_form, coil)), Axis(coil)));
        _coils = new(_hidden, rotor, ohms, ownPoles, stray, [.. coils.Select((coil, at) => char.IsDigit(coil.Id[^1]) ? coil.Id[^1] - '0' : at)]);
        _windings = Windings(coils, random);
    }

    /// <summary>What is known before any test.</summary>
    public EndsInput Input => new() { Layout = _form.Id, Windings = _windings };

    /// <summary>The coils that are tested.</summary>
    public CoupledCoils Motor => _coils;

    /// <summary>Follows the finder until it asks for no more tests.</summary>
    /// <param name="finder">The finder.</param>
    /// <param name="instruments">What is at hand.</param>
    /// <returns>What was found and how many tests it took.</returns>
    public (EndsFinding Found, int Tests) Follow(EndsFinder finder, params string[] instruments) =>
        Follow(finder, new EndsInput { Layout = _form.Id, Windings = _windings, Instruments = instruments }, _coils);

    /// <summary>Does every test that the finder asks for on some coils, to the end.</summary>
    /// <param name="finder">The finder.</param>
    /// <param name="input">What is known beforehand.</param>
    /// <param name="coils">The coils.</param>
    /// <returns>What was found and how many tests it took.</returns>
    public static (EndsFinding Found, int Tests) Follow(EndsFinder finder, EndsInput input, CoupledCoils coils) => Follow(_ => { }, finder, input, coils);

    /// <summary>The same, looked at.</summary>
    /// <param name="look">Sees each finding.</param>
    /// <param name="finder">The finder.</param>
    /// <param name="input">What is known beforehand.</param>
    /// <param name="coils">The coils.</param>
    /// <returns>What was found and how many tests it took.</returns>
    public static (EndsFinding Found, int Tests) Follow(Action<EndsFinding> look, EndsFinder finder, EndsInput input, CoupledCoils coils)
    {
        for (var test = 0; test < MostTests; test++)
        {
            var answer = finder.Find(input);
            var found = answer.Value ?? throw new InvalidOperationException(string.Join("; ", answer.Problems.Select(problem => $"{problem.Field} {problem.Advice}")));
            look(found);
            if (found.Next is not { } next)
            {
                return (found, test);
            }

            var result = new EndsResult { Test = next.Test, Drive = next.Setup.Drive, Tie = next.Setup.Tie, Read = next.Setup.Read, AppliedVolts = next.Setup.AppliedVolts };
            input = input with
            {
                Results = [.. input.Results, next.Test switch
                {
                    "battery-flick" => result with { Outcome = coils.Flick(next.Setup) },
                    "series-impedance" => result with { Value = coils.Impedance(next.Setup) },
                    _ => result with { Value = Math.Round(coils.Volts(next.Setup), 2) },
                }],
            };
        }

        throw new InvalidOperationException("The tests never end.");
    }

    /// <summary>Whether every coil of the layout is a coil of the motor, and all directions agree up to one turn or one mirror.</summary>
    /// <param name="assignment">The tag of each marking.</param>
    public bool Lies(IReadOnlyDictionary<string, string> assignment)
    {
        var differences = new List<(int Axis, int Degrees, string Role)>();
        foreach (var coil in Coils(_form))
        {
            var (from, to) = (assignment.GetValueOrDefault(coil.From, "\0"), assignment.GetValueOrDefault(EndOf(_form, coil), "\0"));
            var along = _hidden.Where(one => (one.From == from || from == "\0") && (one.To == to || (to == "\0" && !char.IsDigit(one.To[0])))).ToList();
            var against = _hidden.Where(one => one.To == from && one.From == to).ToList();
            if (along.Count + against.Count != 1)
            {
                return false;
            }

            differences.Add((Axis(coil), along.Count == 1 ? along[0].Degrees : against[0].Degrees + 180, coil.Role.EndsWith("-field", StringComparison.Ordinal) ? "field" : coil.Role));
        }

        return differences.GroupBy(difference => difference.Role).All(role => Agree(role, 1) || Agree(role, -1));

        static bool Agree(IEnumerable<(int Axis, int Degrees, string Role)> role, int mirror) =>
            role.Select(difference => (((difference.Degrees - (mirror * difference.Axis)) % 360) + 360) % 360).Distinct().Count() == 1;
    }

    private static Layout FormOf(TradeKnowledge knowledge, string layout) =>
        layout.Split('+') is [var id, var form] ? knowledge.Layouts[id].Forms().Single(one => one.Form == form) : knowledge.Layouts[layout];

    /// <summary>All coils but a start winding that is tied inside across another.</summary>
    private static IEnumerable<LayoutCoil> Coils(Layout form) => form.Coils.Where(coil => coil.Role != "start"
        || !form.Coils.Any(other => other.Role == "run" && (other.From == coil.From || other.To == coil.From)));

    private static int Axis(LayoutCoil coil) => coil.Role == "armature" ? 90 : (int)coil.Axis;

    private static string EndOf(Layout form, LayoutCoil coil)
    {
        var node = coil.To;
        while (form.Leads.All(lead => lead.Marking != node) && form.Parts.FirstOrDefault(part => part.From == node) is { } part)
        {
            node = part.To;
        }

        return node;
    }

    /// <summary>Groups of leads as identification gives them, in any order.</summary>
    private List<EndsWinding> Windings(List<LayoutCoil> coils, Random random)
    {
        var pointOut = _form.Coils.GroupBy(coil => coil.To).Any(group => group.Count() > 2 && _form.Leads.Any(lead => lead.Marking == group.Key));
        var groups = new List<(string Role, HashSet<string> Nodes)>();
        foreach (var (coil, at) in _hidden.Select((coil, at) => (coil, at)))
        {
            var touching = pointOut ? [] : groups.Where(group => group.Nodes.Contains(coil.From) || group.Nodes.Contains(coil.To)).ToList();
            groups.RemoveAll(touching.Contains);
            groups.Add((coils[at].Role, [.. touching.SelectMany(group => group.Nodes), coil.From, coil.To]));
        }

        var windings = groups.ConvertAll(group =>
        {
            var tags = group.Nodes.Where(node => char.IsDigit(node[0])).ToArray();
            random.Shuffle(tags);
            var corner = pointOut ? null : tags.FirstOrDefault(tag => _hidden.Count(coil => coil.From == tag || coil.To == tag) > 1);
            return new EndsWinding(group.Role, tags) { Junction = tags.Length > 2, Taps = tags.Length > 2 && corner is not null ? [corner] : [] };
        });
        return [.. windings.OrderBy(_ => random.Next())];
    }
}
