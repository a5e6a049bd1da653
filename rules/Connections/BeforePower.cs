using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>What a meter shows on the joints of a plan before power: cold, capacitors in place, everything outside left off.</summary>
internal sealed class BeforePower(Layout layout, Wiring wiring, IReadOnlyDictionary<string, double> ohms)
{
    private static readonly Source Laws = new() { Title = "circuit laws", Place = "series and parallel resistances over the joints of this plan", Basis = SourceBasis.Computed };

    private const double Nothing = 1e-9;

    /// <summary>Between the line joints, from the first of them to each inner joint, and to the frame.</summary>
    public IReadOnlyList<ExpectedOhms> Readings()
    {
        var lines = wiring.Joints.Where(joint => joint.Conductor is not (null or "N")).ToList();
        var pairs = lines.SelectMany((one, index) => lines.Skip(index + 1).Select(other => (From: one.Name, To: other.Name)))
            .Concat(wiring.Joints.Where(joint => joint.Conductor is null or "N").Select(joint => (From: lines[0].Name, To: joint.Name)));
        return
        [
            .. pairs.Select(pair => Reading(pair.From, pair.To)),
            new([lines[0].Name, Fact.Reading.Frame], null, Statement.Of("connections.expect-frame")),
        ];
    }

    private ExpectedOhms Reading(string from, string to)
    {
        string[] between = [from, to];
        if (Between(from, to, 1) is not { } any)
        {
            return new(between, null, Statement.Of(Kicks ? "connections.expect-kick" : "connections.expect-open"));
        }

        if (any < Nothing)
        {
            return new(between, null, Statement.Of("connections.expect-nothing"));
        }

        if (Known(from, to) is { } known)
        {
            var quoted = Quoted.Of(known, "ohm", "connections.expected-ohms", Laws, new TrailStep(
                $"{from} to {to}", "measured windings in series and parallel", string.Join(", ", Used()), Units.Text(known, "ohm")));
            return new(between, quoted, Note(from, to, known));
        }

        return new(between, null, OneGroup(from, to)
            ? Same(any, 1) ? Statement.Of("connections.expect-one") : Statement.Of("connections.expect-multiple").With("factor", Quoted.Of(any, "ratio", "connections.expected-ohms", Laws))
            : Statement.Of("connections.expect-unmeasured"));
    }

    private bool Kicks => layout.HasCapacitor;

    private Statement Note(string from, string to, double ohmsThere)
    {
        var bridged = Bridged(from, to);
        return bridged is { } lower && lower < ohmsThere * 0.999
            ? Statement.Of("connections.expect-capacitor-blocks").With("bridged", Quoted.Of(lower, "ohm", "connections.expected-ohms", Laws))
            : Statement.Of("connections.expect-measured");
    }

    /// <summary>The reading where a capacitor is bridged or shorted.</summary>
    private double? Bridged(string from, string to) => layout.Coils.All(coil => ohms.ContainsKey(coil.Id))
        ? wiring.Meter(coil => ohms[coil.Id], bridged: true).Between(from, to)
        : null;

    /// <summary>The reading from measured coils, if no coil without a measurement has a part in it.</summary>
    private double? Known(string from, string to)
    {
        var (open, one) = (Between(from, to, null), Between(from, to, 1));
        return open is { } reading && one is { } other && Same(reading, other) ? reading : null;
    }

    private double? Between(string from, string to, double? unmeasured) =>
        wiring.Meter(coil => ohms.TryGetValue(coil.Id, out var known) ? known : unmeasured).Between(from, to);

    /// <summary>Whether the reading depends on alike coils only, none of them measured, so that it is a plain multiple of one.</summary>
    private bool OneGroup(string from, string to) => ohms.Count == 0 && layout.Coils.Select(coil => coil.Group).Distinct(StringComparer.Ordinal)
        .Any(group => wiring.Meter(coil => coil.Group == group ? 1 : null).Between(from, to) is { } alone
            && Same(alone, Between(from, to, 1)!.Value));

    /// <summary>Alike but for binary fractions.</summary>
    private static bool Same(double one, double other) => Math.Abs((one / other) - 1) < Nothing;

    private IEnumerable<string> Used() => ohms.Select(coil => $"{coil.Key} {Units.Text(coil.Value, "ohm")}");
}
