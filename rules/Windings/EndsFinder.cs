using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Tells which ends of windings are alike, or which test would tell. Pure; ohms are never evidence here.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class EndsFinder(TradeKnowledge knowledge)
{
    private static readonly string[] Tests = ["series-voltage", "induced-voltage", "series-impedance", "battery-flick", "soft-first-run", "half-run"];

    /// <summary>The finding for what is known.</summary>
    /// <param name="input">Windings, instruments and results.</param>
    public Answer<EndsFinding> Find(EndsInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (Wrong(input) is { } wrong)
        {
            return wrong;
        }

        input = input with { Windings = EndsGroups.Of(input.Windings) };
        if (EndsWithout.Find(input, knowledge) is { } without)
        {
            return without;
        }

        var built = EndsSchemes.Of(input, knowledge);
        if (built.Value is not { } scheme)
        {
            return Answer<EndsFinding>.Refused(built.Problems);
        }

        var read = EndsReadings.Of(input, scheme, knowledge);
        return read.Value is { } readings ? Judge(input, scheme, readings) : Answer<EndsFinding>.Refused(read.Problems);
    }

    private EndsFinding Judge(EndsInput input, EndsScheme scheme, EndsReadings readings)
    {
        var evidence = new EndsEvidence(knowledge, scheme);
        var (couplings, trail) = readings.Weigh(evidence, scheme);
        int[] left = [.. Enumerable.Range(0, scheme.Ways.Count).Where(way => couplings[way] != 0)];
        if (left.Length == 0)
        {
            return Contradicted(input, scheme, evidence, readings) with { Layout = input.Layout, Trail = trail };
        }

        if (scheme.Phases && left.Length == 1 && evidence.Usual(couplings[left[0]]) < knowledge.Rules["ends-coupling"]["distrust-below"])
        {
            return new() { Status = EndsStatus.CannotTell, Layout = input.Layout, Notes = [Statement.Of("ends.phases-by-running")], Trail = trail };
        }

        var next = new EndsNext(knowledge, scheme, evidence, input, couplings, readings);
        var confirm = left.Length == 1 ? next.Crossed() ?? (input.Printed.Count == 0 ? next.Confirm(scheme.Ways[left[0]]) : null) : null;
        var finding = new EndsFinding
        {
            Status = left.Length == 1 && confirm is null ? EndsStatus.Settled : EndsStatus.NeedsTest,
            Layout = input.Layout ?? (left.Length == 1 ? scheme.Form?.Id : null),
            Alike = Alike(scheme, left),
            Trail = trail,
        };
        if (left.Length == 1 && confirm is null)
        {
            var printed = EndsReadings.Printed(scheme, input);
            var unproved = scheme.DirectionUnproved && printed is null;
            return finding with
            {
                Assignment = printed ?? scheme.Assign(scheme.Ways[left[0]]),
                DirectionUnproved = unproved,
                Notes = !unproved ? [] : scheme.Phases ? [Statement.Of("ends.order-chosen")] : [Statement.Of("ends.direction-by-trial")],
            };
        }

        return (confirm ?? next.Choose()) is { } test
            ? finding with { Next = test }
            : finding with { Status = EndsStatus.CannotTell, Notes = [next.WhyNot(readings.Any)] };
    }

    /// <summary>Where no way gives all that was read: the test to do again is the last without which the others go together.</summary>
    private EndsFinding Contradicted(EndsInput input, EndsScheme scheme, EndsEvidence evidence, EndsReadings readings)
    {
        foreach (var (doubted, setup) in readings.Once.Where(once => input.Role is Role.Technician or Role.Apprentice && !input.Barred.Contains(once.Result.Test, StringComparer.Ordinal)))
        {
            var others = EndsReadings.Of(input with { Results = [.. input.Results.Where(result => result != doubted)] }, scheme, knowledge);
            if (others.Value!.Weigh(evidence, scheme).Couplings is var left && left.Any(mask => mask != 0))
            {
                return new()
                {
                    Status = EndsStatus.Contradiction,
                    Next = new EndsWords(knowledge, scheme, evidence, left).Again(doubted.Test, setup),
                    Notes = [Statement.Of("ends.one-does-not-fit")],
                };
            }
        }

        return new()
        {
            Status = EndsStatus.Contradiction,
            Notes = scheme.Phases && scheme.Coils.Count > 3 ? [Statement.Of("ends.no-way-fits"), Statement.Of("ends.phases-by-running")] : [Statement.Of("ends.no-way-fits")],
        };
    }

    /// <summary>Pairs of starts, and pairs of finishes, that every way left agrees on.</summary>
    private static List<IReadOnlyList<string>> Alike(EndsScheme scheme, int[] left)
    {
        var pairs = new List<IReadOnlyList<string>>();
        foreach (var group in scheme.Related)
        {
            int[] coils = [.. group.Where(coil => scheme.Coils[coil].To[0] != '\0' && scheme.Coils.Count(one => one.From == scheme.Coils[coil].From) == 1)];
            foreach (var coil in coils.Skip(1))
            {
                bool[] same = [.. left.Select(way => EndsScheme.StartsFrom(coils[0], scheme.Ways[way]) == EndsScheme.StartsFrom(coil, scheme.Ways[way])).Distinct()];
                if (same.Length == 1)
                {
                    var (first, second) = (scheme.Coils[coils[0]], scheme.Coils[coil]);
                    pairs.Add([first.From, same[0] ? second.From : second.To]);
                    pairs.Add([first.To, same[0] ? second.To : second.From]);
                }
            }
        }

        return pairs;
    }

    private Problem? Wrong(EndsInput input)
    {
        var leads = input.Windings.SelectMany(winding => winding.Leads).ToHashSet(StringComparer.Ordinal);
        var tags = string.Join(", ", leads.Order(StringComparer.Ordinal));
        for (var at = 0; at < input.Windings.Count; at++)
        {
            var winding = input.Windings[at];
            if (winding.Leads.Count < 2 || winding.Leads.Distinct(StringComparer.Ordinal).Count() != winding.Leads.Count)
            {
                return EndsSchemes.Wrong($"windings[{at}].leads", Statement.Of("problem.ends-two-leads"));
            }
        }

        for (var at = 0; at < input.Results.Count; at++)
        {
            var result = input.Results[at];
            var field = $"results[{at}]";
            if (!Tests.Contains(result.Test, StringComparer.Ordinal))
            {
                return EndsSchemes.Wrong($"{field}.test", Statement.Of("problem.ends-unknown-test", ("test", result.Test), ("tests", string.Join(", ", Tests))));
            }

            if (result.Read.Concat(result.Drive).Concat(result.Tie.SelectMany(tie => tie)).FirstOrDefault(lead => !leads.Contains(lead)) is { } unknown)
            {
                return new Problem("unknown-lead", $"{field}.between", Statement.Of("problem.unknown-lead", ("lead", unknown), ("leads", tags)));
            }

            if (result.Value is < 0 or double.NaN or double.PositiveInfinity && result.Test != "battery-flick")
            {
                return EndsSchemes.Wrong($"{field}.value", Statement.Of("problem.ends-negative", ("value", result.Value.Value.ToString(CultureInfo.InvariantCulture))));
            }

            if (EndsLimits.Against(knowledge, result.Test, result.Value, result.AppliedVolts) is { } tooHigh && result.AppliedVolts is not <= 0)
            {
                return EndsSchemes.Wrong($"{field}.value", tooHigh);
            }

            if (result.AppliedVolts is <= 0)
            {
                return EndsSchemes.Wrong($"{field}.appliedVolts", Statement.Of("problem.not-positive", ("field", "appliedVolts"), ("value", result.AppliedVolts.Value.ToString(CultureInfo.InvariantCulture))));
            }
        }

        return input.Layout is null || knowledge.Layouts.ContainsKey(input.Layout) ? null
            : EndsSchemes.Wrong("layout", Statement.Of("problem.ends-unknown-layout", ("layout", input.Layout)));
    }
}
