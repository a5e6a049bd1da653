using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Tells leads apart by readings in any order. Pure, and the same for every layout in knowledge.</summary>
/// <remarks>
/// Holds all ways to lay the leads on the terminals of all layouts that fit the readings, weighs them by the meter's error, by how windings
/// of a layout stand to each other and by how common things are, and asks for the reading that is expected to tell most. It says "identified"
/// only when every winding rests on a measurement and no single slip of the hand could have turned one winding into another. An instance
/// keeps the compiled layouts and may be shared.
/// </remarks>
public sealed class Identifier
{
    private readonly TradeKnowledge _knowledge;
    private const int UsuallyRemembered = 512;

    private readonly Lazy<IReadOnlyList<Layout>> _forms;
    private readonly PatternBook _patterns;
    private readonly RecentIdentifications _recent;

    /// <summary>An identifier for the layouts of the given knowledge.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="remembered">How many findings are kept, so that the same readings are not searched again.</param>
    public Identifier(TradeKnowledge knowledge, int remembered = UsuallyRemembered)
    {
        _recent = new(remembered);
        _knowledge = knowledge;
        _patterns = new(knowledge);
        _forms = new(() => [.. knowledge.Forms]);
    }

    /// <summary>What the readings say.</summary>
    /// <param name="input">The leads and all that is known of them.</param>
    public Answer<Identification> Identify(IdentificationInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = InputCheck.Of(input);
        if (problems.Count > 0)
        {
            return Answer<Identification>.Refused(problems);
        }

        return Answer<Identification>.Given(_recent.Of(input, () => Find(input)));
    }

    /// <summary>Whether tags are markings that stand on motors, so that they count as printed. A single letter counts only where all leads of a layout are named.</summary>
    /// <param name="tags">The tags of all leads.</param>
    public bool AreMarkings(IReadOnlyList<string> tags)
    {
        ArgumentNullException.ThrowIfNull(tags);
        return tags.Count > 1 && tags.Any(IsWindings) && tags.All(tag => IsWindings(tag) || _patterns.Beside.Contains(tag))
            && (tags.All(tag => tag.Length > 1) || _forms.Value.Any(form => form.IsMarkedBy(tags)));
    }

    private bool IsWindings(string tag) => _forms.Value.Any(form => form.LeadOf(tag) is not null);

    private Identification Find(IdentificationInput given)
    {
        // Who has followed leads from the brushes has seen the brushes.
        var input = given is { RingLeads.Count: > 0, Looks: { Brushes: null } looks } ? given with { Looks = looks with { Brushes = true } } : given;
        var meter = new MeterModel(_knowledge.Identification, input.Meter);
        var between = new List<Measured>();
        for (var index = 0; index < input.Readings.Count; index++)
        {
            var reading = input.Readings[index];
            var (from, to) = (InputCheck.Lead(input.Leads, reading.From), InputCheck.Lead(input.Leads, reading.To));
            if (from >= 0 && to >= 0 && reading.Together.Count == 0)
            {
                between.Add(meter.Measure(index, from, to, reading));
            }
        }

        var bench = new Bench(input, _knowledge.Identification, _patterns, [.. MeterModel.Sums(between), .. GroupReadings.Opens(input, meter)], AxisEvidence.Of(input, _knowledge), input.TestVolts ?? _knowledge.Rules["ends-applied-volts"]["volts"]);
        return new Verdict(bench, FrameReadings.Of(input, meter)).Give();
    }
}
