using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Reference;

public sealed class LayoutTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    /// <summary>The layout ids of the contract.</summary>
    private static readonly string[] Contract =
    [
        "split-phase-2", "split-phase-4", "split-phase-3", "dual-voltage-4", "capacitor-start-4", "capacitor-start-dual-6",
        "capacitor-start-dual-8", "psc-2", "psc-3", "psc-4", "psc-reversible-3", "psc-tapped", "two-value-capacitor", "shaded-pole-2",
        "series-commutator", "dc-permanent-magnet", "dc-shunt", "dc-compound", "sealed-compressor-3", "three-phase-3", "three-phase-4",
        "three-phase-6", "part-winding-6", "three-phase-9-star", "three-phase-9-delta", "three-phase-12", "two-speed-6",
        "two-speed-two-winding-6", "wound-rotor-6",
    ];

    public static TheoryData<string> Ids() => [.. Knowledge.Layouts.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_layout_of_the_contract_is_known_and_no_other() =>
        Assert.Equal(Contract.Order(StringComparer.Ordinal), Knowledge.Layouts.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("psc-4", "T1", "u1", "M1")]
    [InlineData("psc-4", "T8", "Z1", "a1")]
    [InlineData("three-phase-6", "T1", "U1", null)]
    public void A_lead_bears_its_marking_in_either_standard_and_as_it_is_met_beside_them(string layout, string marking, string iec, string? also)
    {
        var lead = Knowledge.Layouts[layout].LeadOf(marking)!;
        Assert.Same(lead, Knowledge.Layouts[layout].LeadOf(iec));
        Assert.True(also is null ? !lead.Bears("M1") : lead.Bears(also));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_row_never_lays_a_coil_short_nor_two_lines_together(string id)
    {
        foreach (var form in Knowledge.Layouts[id].Forms())
        {
            foreach (var row in form.Connections)
            {
                var joint = JointOf(row);
                Assert.All(form.Coils, coil => Assert.False(
                    joint.TryGetValue(coil.From, out var from) && joint.TryGetValue(coil.To, out var to) && from == to, $"{id} {form.Form} {row.Id}: {coil.Id} is laid short"));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_reverse_swap_turns_its_row_into_a_row_of_the_other_direction(string id)
    {
        foreach (var form in Knowledge.Layouts[id].Forms())
        {
            foreach (var row in form.Connections.Where(row => row.ReverseSwap.Count > 0 && row.ReverseLines.Count == 0))
            {
                var swap = row.ReverseSwap.SelectMany(pair => new[] { (pair[0], pair[1]), (pair[1], pair[0]) }).ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal);
                var turned = Shape(row, lead => swap.GetValueOrDefault(lead, lead));
                Assert.Contains(form.Connections, other => other.Id != row.Id && other.For == row.For
                    && Shape(other, lead => lead) == turned && (other.Rotation != row.Rotation || row.Rotation is null));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_motor_can_be_reversed_or_says_why_not(string id)
    {
        foreach (var form in Knowledge.Layouts[id].Forms())
        {
            Assert.All(form.Connections, row => Assert.Equal(form.NotReversible is null, row.ReverseSwap.Count + row.ReverseLines.Count > 0));
        }
    }

    [Theory]
    [InlineData("three-phase-9-delta", "low-delta", 0.3333)]
    [InlineData("three-phase-9-delta", "high-delta", 1.3333)]
    [InlineData("three-phase-9-star", "low-star", 1)]
    [InlineData("three-phase-9-star", "high-star", 4)]
    [InlineData("three-phase-6", "low-delta", 0.6667)]
    [InlineData("three-phase-6", "high-star", 2)]
    [InlineData("three-phase-12", "low-delta", 0.3333)]
    [InlineData("three-phase-12", "low-star", 1)]
    [InlineData("three-phase-12", "high-delta", 1.3333)]
    [InlineData("three-phase-12", "high-star", 4)]
    [InlineData("two-speed-6", "slow", 1.3333)]
    [InlineData("two-speed-6", "fast", 1)]
    [InlineData("capacitor-start-dual-6", "low-clockwise", 0.5)]
    [InlineData("capacitor-start-dual-6", "high-clockwise", 2)]
    [InlineData("capacitor-start-dual-8", "low-clockwise", 0.5)]
    [InlineData("capacitor-start-dual-8", "high-clockwise", 2)]
    public void Between_any_two_lines_a_row_reads_what_the_textbook_says_of_coils_of_one_ohm(string id, string row, double ohms)
    {
        var layout = Knowledge.Layouts[id];
        var connection = layout.Connections.Single(found => found.Id == row);
        var lines = connection.Lines.Keys.Order(StringComparer.Ordinal).ToList();
        for (var first = 0; first < lines.Count; first++)
        {
            for (var second = first + 1; second < lines.Count; second++)
            {
                Assert.Equal(ohms, ResistorNetwork.Ohms(layout, JointOf(connection), lines[first], lines[second]), 3);
            }
        }
    }

    [Fact]
    public void A_motor_with_a_capacitor_outside_has_a_capacitor() => Assert.All(
        Knowledge.Forms.Where(form => form.Connections.Any(row => row.OuterPart is { IsCapacitor: true })),
        form => Assert.True(form.HasCapacitor, form.Id));

    [Fact]
    public void Inside_three_leads_there_may_be_a_star_or_a_delta() =>
        Assert.Equal([null, "delta"], Knowledge.Layouts["three-phase-3"].Forms().Select(form => form.Form));

    private static Dictionary<string, string> JointOf(LayoutConnection row) => row.Lines
        .SelectMany(line => line.Value.Select(lead => (lead, line.Key)))
        .Concat(row.Joints.SelectMany((leads, at) => leads.Select(lead => (lead, $"joint {at}"))))
        .ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal);

    /// <summary>The row as text, whatever the order of its leads and, for two lines of a single-phase row, of its lines.</summary>
    private static string Shape(LayoutConnection row, Func<string, string> rename) =>
        string.Join(" | ", row.Lines.Select(line => (row.Lines.ContainsKey("+") ? line.Key : "line") + " " + Sorted(line.Value, rename))
            .Concat(row.Joints.Select(joint => "joint " + Sorted(joint, rename)))
            .Concat(row.OuterPart is { } part ? ["part " + Sorted([part.From, part.To], rename)] : Array.Empty<string>())
            .Order(StringComparer.Ordinal));

    private static string Sorted(IEnumerable<string> leads, Func<string, string> rename) =>
        string.Join('+', leads.Select(rename).Order(StringComparer.Ordinal));
}
