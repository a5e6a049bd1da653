using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Which end of each winding is which, by the safest test that the person's instruments allow. Ohms never settle it.</summary>
internal static class FindEnds
{
    private const string InstrumentQuestion = "ends-instrument";

    /// <summary>Whoever read the ohms has a meter.</summary>
    private const string Meter = "multimeter";

    /// <summary>What stands in the way where no instrument would help.</summary>
    private static readonly HashSet<string> BeyondInstruments = new(StringComparer.Ordinal) { "ends.ring-by-trial", "ends.not-for-homeowner", "ends.not-at-the-bench" };

    private static readonly string[] Instruments = ["low-voltage-ac", "battery"];

    /// <summary>Whether nobody has said yet what there is to test with.</summary>
    public static bool InstrumentsUnsaid(Workup work) => !Instruments.Any(work.File.Instruments.ContainsKey);

    /// <summary>Tests that the person said they cannot do, by id.</summary>
    public static IReadOnlyList<string> Barred(Workup work) =>
        [.. work.File.Unknowns.Where(question => question.StartsWith("ends.", StringComparison.Ordinal)).Select(question => question.Split('.')[1]).Order(StringComparer.Ordinal)];

    public static Answer<EndsFinding>? Find(Workup work)
    {
        if (work.Identification is not { Status: IdentificationStatus.Identified, Layouts: [var likeliest, ..] } found)
        {
            return null;
        }

        var beside = found.Windings.Where(winding => winding.Role is "protector" or "other").SelectMany(winding => winding.Leads).ToHashSet(StringComparer.Ordinal);
        var tests = work.File.BenchTests.Where(test => test.Drive.Count == 2 && test.Test != Fact.BenchTest.JointResistance && !test.Drive.Concat(test.Read).Any(beside.Contains));
        return work.Rooms.Ends.Find(new EndsInput
        {
            Layout = likeliest.Id,
            Windings = [.. found.Windings.Select(winding => new EndsWinding(winding.Role, winding.Leads) { Junction = winding.Junction, Taps = winding.Taps ?? [], Markings = winding.Markings })],
            Instruments = [.. work.File.Instruments.Where(instrument => instrument.Value).Select(instrument => instrument.Key).Append(Meter).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            LowVolts = work.File.Plate.Volts.Count > 1 ? work.File.Plate.Volts.Min() : null,
            TestVolts = work.File.TestVolts,
            Role = work.File.Role,
            Results = [.. tests.Select(EndsResult.Of)],
            Printed = work.File.Leads.Where(lead => lead.Marking is not null).ToDictionary(lead => lead.Tag, lead => lead.Marking!, StringComparer.Ordinal),
            Barred = Barred(work),
        });
    }

    public static Question? Next(Workup work)
    {
        if (work.Ends is not { Status: EndsStatus.NeedsTest or EndsStatus.CannotTell or EndsStatus.Contradiction } ends)
        {
            return null;
        }

        if (ends.Status == EndsStatus.Contradiction)
        {
            return ends.Next is { } again ? OnceMore(work, again) : null;
        }

        if (AsksInstrument(work, ends))
        {
            return work.Ask.Of(InstrumentQuestion);
        }

        if (ends.Next is not { } next)
        {
            return null;
        }

        return work.Knowledge.GateTasks[next.Task].Group == "powered" ? Trial(work, next) : Test(work, next);
    }

    /// <summary>Whether which end is which takes what is not at this bench.</summary>
    public static bool HandsOn(Workup work) => work.Ends is { Status: EndsStatus.CannotTell, Next: null } ends && IsBeyond(ends);

    private static bool IsBeyond(EndsFinding ends) => ends.Notes.Any(note => BeyondInstruments.Contains(note.Id));

    private static bool AsksInstrument(Workup work, EndsFinding ends) =>
        InstrumentsUnsaid(work) && !work.Skipped(InstrumentQuestion) && !IsBeyond(ends);

    /// <summary>A trial with power is a start like any other: insulation, earth, shaft and protection come first, and nothing of it without the first two.</summary>
    private static Question? Trial(Workup work, NextTest next) => BeforePower.Again(work) ?? BeforePower.Insulation(work) ?? BeforePower.Earth(work)
        ?? (BeforePower.Unproved(work).Any() ? null : BeforePower.CapacitorBack(work) ?? BeforePower.Shaft(work) ?? BeforePower.Protection(work) ?? Test(work, next));

    /// <summary>A test that was done and is wanted once more: a question of its own, so that the same answer to it is new evidence.</summary>
    private static Question OnceMore(Workup work, NextTest next)
    {
        var asked = Test(work, next);
        return asked with { Id = $"{asked.Id}.{work.File.BenchTests.FindLast(test => test.Test == next.Test)!.FactId}" };
    }

    /// <summary>A test as a question of its own for each set-up.</summary>
    public static Question Test(Workup work, NextTest next)
    {
        var seen = next.Outcomes.Count > 0;
        var asked = work.Ask.Of(seen ? "ends-outcome" : "ends-volts", ("first", next.Setup.Read is [var first, ..] ? first : next.Setup.Drive[0]), ("second", next.Setup.Read is [.., var second] ? second : next.Setup.Drive[^1]));
        return asked with
        {
            Id = $"ends.{next.Test}.{string.Join('.', [.. next.Setup.Drive, .. next.Setup.Read])}",
            About = next.Test,
            Task = next.Task,
            Why = next.Why,
            How = next.How,
            Expect = next.Expect,
            Setup = next.Setup,
            Unit = next.Unit ?? (seen ? null : asked.Unit),
            Options = [.. asked.Options.Where(option => next.Outcomes.Contains(option.Id, StringComparer.Ordinal))],
        };
    }

    public static IEnumerable<Statement> Say(Workup work)
    {
        foreach (var problem in work.EndsProblems)
        {
            yield return problem.Advice;
        }

        if (work.Ends is not { } ends)
        {
            yield break;
        }

        foreach (var pair in ends.Alike)
        {
            yield return Statement.Of("coach.alike", ("first", pair[0]), ("second", pair[1]));
        }

        // before anybody was asked it is not known what is not at hand
        foreach (var note in ends.Notes.Where(note => note.Id != "ends.needs-instrument" || !AsksInstrument(work, ends)))
        {
            yield return note;
        }

        if (ends is { Status: EndsStatus.Contradiction, Next: null })
        {
            yield return Statement.Of("coach.take-back");
        }
    }
}
