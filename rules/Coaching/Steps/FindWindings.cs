using System.Collections.Immutable;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Which lead belongs to which winding: the probes, the frame, then the reading that tells most, until it is settled.</summary>
internal static class FindWindings
{
    /// <summary>The card of a reading watched while the shaft is turned.</summary>
    public const string TurnShaft = "turn-shaft";

    private const string CapacitorUse = "capacitor-use";

    private const int MostNamed = 3;

    private const string BothWays = "both-ways";

    private const string BrushesSeen = "brushes";

    private const string SeveralSpeeds = "several-speeds";

    /// <summary>The question where the capacitor's wires end.</summary>
    public const string CapacitorWires = "capacitor-wires";

    private const string ShaftDrag = "shaft-drag";

    /// <summary>Which of two groups of leads comes from slip rings.</summary>
    internal const string RingLeads = "ring-leads";

    private const string StartBranch = "start-branch";

    private const string FrameLead = "frame-lead";

    private const string InstrumentQuestion = "windings-instrument";

    /// <summary>The card of a reading that is doubted and taken once more.</summary>
    public const string Again = "reading-again";

    public static Question? ProbeZero(Workup work) =>
        work.File.BenchTests.Exists(test => test.Test == Fact.BenchTest.ProbeZero) || work.Skipped(Fact.BenchTest.ProbeZero) ? null : work.Ask.Of(Fact.BenchTest.ProbeZero);

    /// <summary>One touch for all leads to the frame; where that shows a path, each lead in turn.</summary>
    public static Question? Frame(Workup work)
    {
        var toFrame = work.File.Readings.FindAll(reading => reading.To == Fact.Reading.Frame || reading.From == Fact.Reading.Frame);
        var all = $"frame.{work.Tags[0]}.{Fact.Reading.Frame}";
        if (toFrame.Count == 0)
        {
            return work.Skipped(all) ? null : Together(work, work.Tags);
        }

        if (toFrame.TrueForAll(reading => reading.Open) || work.Identification is { Status: IdentificationStatus.Faulty })
        {
            return null;
        }

        var next = work.Tags.FirstOrDefault(tag =>
            !toFrame.Exists(reading => reading.Together.Count == 0 && (reading.From == tag || reading.To == tag)) && !work.Skipped($"{FrameLead}.{tag}.{Fact.Reading.Frame}"));
        return next is null ? null : work.Ask.Reading(FrameLead, next, Fact.Reading.Frame);
    }

    private static Question Together(Workup work, IReadOnlyList<string> leads) => work.Ask.Reading("frame", leads[0], Fact.Reading.Frame, ("leads", string.Join(" + ", leads))) with
    {
        Setup = new TestSetup([], [leads], [leads[0], Fact.Reading.Frame], null),
    };

    public static Question? NextReading(Workup work)
    {
        if (work.Identification is not { } found)
        {
            return null;
        }

        if (found.Contradictions is [var contradiction, ..])
        {
            return contradiction.Readings.Select(doubted => OnceMore(work, doubted)).FirstOrDefault(again => !work.Skipped(again.Id)) is { } doubt
                ? doubt with { Why = contradiction.Why }
                : null;
        }

        if (OnceOnly(work, found) is { } once)
        {
            return OnceMore(work, once.From, once.To) with { Why = Statement.Of("coach.before-a-fault") };
        }

        if (StartBranchSilent(work, found) is { } silent)
        {
            return work.Ask.Of(StartBranch, ("leads", string.Join(", ", silent)));
        }

        return found is { Status: IdentificationStatus.NeedsReading, Next: { Kind: "resistance" } next }
            ? Reading(work, next.From, next.To) with { Why = next.Why }
            : Beside(work, found) ?? (found.Next is { Setup: not null } test ? Between(work, test) : null);
    }

    /// <summary>Where neither ohms nor looks decide: what one winding shows of another, by what there is to test it with.</summary>
    private static Question Between(Workup work, NextReading test) =>
        FindEnds.InstrumentsUnsaid(work) ? work.Ask.Of(InstrumentQuestion) : FindEnds.Test(work, AxisWords.Of(test, work.Knowledge));

    /// <summary>Tests between windings that may be asked for. While nobody has said what there is, both may be, and it is asked first.</summary>
    private static IReadOnlyList<string> TestsAllowed(Workup work)
    {
        (string Instrument, string Test)[] known = [("low-voltage-ac", AxisEvidence.ByVolts), ("battery", AxisEvidence.ByFlick)];
        var barred = FindEnds.Barred(work);
        return work.File.Role is Role.Homeowner or Role.Manager || (FindEnds.InstrumentsUnsaid(work) && work.Skipped(InstrumentQuestion)) ? []
            : [.. known.Where(one => (FindEnds.InstrumentsUnsaid(work) || work.File.Instruments.GetValueOrDefault(one.Instrument)) && !barred.Contains(one.Test, StringComparer.Ordinal)).Select(one => one.Test)];
    }

    /// <summary>A reading that was taken already is asked for as one that is taken again, or it looks as if nobody had listened.</summary>
    private static Question Reading(Workup work, string from, string to) =>
        Last(work, from, to) is null ? work.Ask.Reading("reading", from, to) : OnceMore(work, from, to);

    /// <summary>Where the ohms leave several kinds of motor: what a look or a turn of the shaft tells of those that are left.</summary>
    private static Question? Beside(Workup work, Identification found)
    {
        var left = found.Undecided.Select(id => work.Knowledge.Layouts[id]).ToList();
        return (Differ(layout => layout.Capacitor is "start" or "run" ? layout.Capacitor : null) ? PrintOnCapacitor(work) : null)
            ?? (Differ(Looks.TurnsBothWays) ? Look(work, BothWays) : null)
            ?? (Differ(Looks.HasCapacitorOutside) && work.HasCapacitor == true ? Look(work, CapacitorWires) : null)
            ?? (Differ(layout => (bool?)Looks.HasSpeeds(layout)) ? Look(work, SeveralSpeeds) : null)
            ?? (left.Exists(Looks.HasBrushes) && !left.TrueForAll(Looks.HasBrushes) ? Look(work, BrushesSeen) : null)
            ?? (left.Exists(Looks.HasSlipRings) && Said(work, BrushesSeen, "yes") == true ? Rings(work, found) : null)
            ?? (left.Exists(Looks.HasArmature) && Said(work, BrushesSeen, "yes") != false ? Armature(work) : null)
            ?? (Differ(Looks.HasMagnets) ? Drag(work) : null);

        bool Differ<T>(Func<Layout, T?> made) => left.Select(made).Where(one => one is not null).Distinct().Skip(1).Any();
    }

    private static Question? Look(Workup work, string question) =>
        work.Chosen(question) ? null : work.Ask.Of(question);

    /// <summary>Of the pair that was found to be the armature: whether magnets hold it back when its ends meet.</summary>
    private static Question? Drag(Workup work) => work.File.Readings.FindLast(reading => reading.ChangesWithShaft) is not { } armature
        || work.Chosen(ShaftDrag) ? null : work.Ask.Of(ShaftDrag, ("from", armature.From), ("to", armature.To));

    /// <summary>Of two groups of three that read alike, which comes from the slip rings.</summary>
    private static Question? Rings(Workup work, Identification found)
    {
        if (found.Windings.Where(winding => winding is { Junction: true, Leads.Count: 3 }).Select(winding => winding.Leads).ToList() is not [var first, var second])
        {
            return null;
        }

        var asked = work.Ask.Reading(RingLeads, first[0], second[0], ("first", string.Join(", ", first)), ("second", string.Join(", ", second)));
        return work.Chosen(asked.Id) ? null : asked;
    }

    /// <summary>One lead of each group that was said to come from slip rings.</summary>
    private static IEnumerable<string> FromRings(Workup work) => work.File.Choices.Where(choice => choice.Key.StartsWith($"{RingLeads}.", StringComparison.Ordinal))
        .Select(choice => choice.Key.Split('.')[choice.Value == "first" ? 1 : 2]).Order(StringComparer.Ordinal);

    private static Question? PrintOnCapacitor(Workup work) =>
        work.HasCapacitor != true || CapacitorUseOf(work) is not null || work.Skipped(CapacitorUse) ? null : work.Ask.Of(CapacitorUse);

    /// <summary>An armature shows itself only while the shaft is turned: winding by winding, until one jumps.</summary>
    private static Question? Armature(Workup work) => work.File.Readings.Exists(reading => reading.ChangesWithShaft) ? null
        : ToTurn(work).FirstOrDefault(question => !work.Chosen(question.Id));

    private static IEnumerable<Question> ToTurn(Workup work) => work.File.Readings
        .Where(reading => reading is { Ohms: not null, Together.Count: 0 } && reading.To != Fact.Reading.Frame && reading.From != Fact.Reading.Frame)
        .Select(reading => work.Ask.Reading(TurnShaft, reading.From, reading.To));

    private static bool? Said(Workup work, string question, string yes) => work.File.Choices.TryGetValue(question, out var said) ? said == yes : null;

    /// <summary>No reading that was watched while the shaft was turned changed, and none is left to watch.</summary>
    private static bool? Brushes(Workup work) => work.File.Choices.Any(choice => choice.Key.StartsWith($"{TurnShaft}.", StringComparison.Ordinal)) && ToTurn(work).All(question => work.File.Choices.GetValueOrDefault(question.Id) == "steady") ? false : null;

    private static string? CapacitorUseOf(Workup work) =>
        work.File.Capacitors.FindAll(capacitor => capacitor.Present).Select(capacitor => capacitor.Use).LastOrDefault(use => use is "start" or "run")
        ?? work.File.Choices.GetValueOrDefault(CapacitorUse);

    /// <summary>What the readings say, once there are leads to speak of.</summary>
    public static Identification? Identify(Workup work)
    {
        if (work.Tags.Count < 2)
        {
            return null;
        }

        var answer = work.Rooms.Identifier.Identify(new IdentificationInput
        {
            Leads = work.Tags,
            Markings = work.File.Leads.Where(lead => lead.Marking is not null).ToDictionary(lead => lead.Tag, lead => lead.Marking!, StringComparer.Ordinal),
            Plate = work.Plate,
            HasCapacitor = work.HasCapacitor,
            CapacitorUse = work.File.Capacitors.Exists(capacitor => capacitor.Use == "both") ? null : CapacitorUseOf(work),
            CapacitorBridged = Bridged(work),
            Looks = new() { BothWays = Said(work, BothWays, "both"), CapacitorOutside = Said(work, CapacitorWires, "outside"), Drags = Said(work, ShaftDrag, "drags"), Speeds = Said(work, SeveralSpeeds, "several"), Brushes = Said(work, BrushesSeen, "yes") ?? Brushes(work) },
            RingLeads = [.. FromRings(work)],
            Meter = MeterInput.Probed(null, work.File.BenchTests),
            Readings = Readings(work),
            Tests = work.File.BenchTests.FindAll(test => test.Drive.Count == 2),
            TestsAllowed = TestsAllowed(work),
            TestVolts = work.File.TestVolts,
            Unreadable = [.. Unreadable(work)],
        });
        return answer.Value;
    }

    /// <summary>Whether nothing that is left to read or to look at tells more: the maker's diagram or a motor shop has to.</summary>
    public static bool HandsOn(Workup work) => work.Identification is { Status: IdentificationStatus.CannotTell, TouchesSoFar: > 0 } && NextReading(work) is null;

    public static IEnumerable<Statement> Say(Workup work)
    {
        if (work.Identification is not { } found || found.TouchesSoFar == 0)
        {
            yield break;
        }

        foreach (var contradiction in found.Contradictions)
        {
            yield return contradiction.Why;
        }

        foreach (var fault in found.Faults)
        {
            yield return fault.Why;
        }

        foreach (var note in found.Notes)
        {
            yield return note;
        }

        if (found.Status == IdentificationStatus.Identified)
        {
            foreach (var winding in found.Windings)
            {
                yield return Winding(winding);
            }
        }

        if (HandsOn(work))
        {
            var left = found.Undecided.Take(MostNamed).Select(id => work.Knowledge.Layouts[id]).ToList();
            yield return left.Count > 1 ? Statement.Of("windings.shop-tells-which", ("kinds", string.Join("; ", left.Select(layout => layout.Name)))) : Statement.Of("windings.shop-tells");
            if (left.Count > 1 && left.Exists(layout => layout.Forms().All(form => form.Leads.Count < work.Tags.Count)))
            {
                yield return Statement.Of("windings.kind-with-fewer-leads", ("count", Quantities.Units.Number(work.Tags.Count)));
            }
        }
    }

    /// <summary>A reading that a fault rests on and that nothing bears out, taken once or against an earlier figure: a slip of the hand looks like a broken winding.</summary>
    private static Fact.Reading? OnceOnly(Workup work, Identification found) => found.Faults
        .SelectMany(fault => work.File.Readings.Where(reading =>
            reading.Open && fault.Leads.Contains(reading.From, StringComparer.Ordinal) && fault.Leads.Contains(reading.To, StringComparer.Ordinal)))
        .FirstOrDefault(reading => work.File.Readings.FindAll(other => other.IsOfPair(reading.From, reading.To)).Count == 1 && !work.Skipped(OnceMore(work, reading.From, reading.To).Id));

    private static Question OnceMore(Workup work, DoubtfulReading doubted) => doubted.Together.Count == 0
        ? OnceMore(work, doubted.From, doubted.To)
        : After(Together(work, [doubted.From, .. doubted.Together]), work.File.Readings.FindLast(reading => reading.Together.Count > 0 && reading.From == doubted.From));

    /// <summary>A reading that was taken and is wanted once more. It is a question of its own each time: the same answer to it is new evidence, and not the old answer sent twice.</summary>
    private static Question OnceMore(Workup work, string from, string to) => After(work.Ask.Reading(Again, from, to), Last(work, from, to));

    private static Question After(Question asked, Fact.Reading? last) => last is { FactId.Length: > 0 } ? asked with { Id = $"{asked.Id}.{last.FactId}" } : asked;

    private static Fact.Reading? Last(Workup work, string from, string to) => work.File.Readings.FindLast(reading => reading.IsOfPair(from, to));

    private static Statement Winding(Winding winding)
    {
        var leads = string.Join('–', winding.Leads);
        var name = Statement.Word(winding.Role.Replace('-', ' '), [$"term.winding.{winding.Role}"]);
        return winding.Ohms is { } ohms
            ? (winding.Junction ? Statement.Of("coach.winding-joined", ("leads", leads)) : Statement.Of("coach.winding", ("leads", leads))).With("winding", name).With("ohms", Quantities.Quoted.Of(
                ohms, "ohm", "winding-resistance", Quantities.Source.Computation("reading less what the probes add"),
                new Quantities.TrailStep("winding resistance", "R = reading − probes", $"leads {leads}", Quantities.Units.Text(ohms, "ohm"))))
            : Statement.Of("coach.winding-unread", ("leads", leads)).With("winding", name);
    }

    /// <summary>Leads of a start winding that reads open although nobody has yet looked at the switch and the capacitor before it.</summary>
    private static IReadOnlyList<string>? StartBranchSilent(Workup work, Identification found) =>
        !work.Chosen(StartBranch)
            ? found.Faults.FirstOrDefault(fault => fault.Id == "open-start-winding")?.Leads
            : null;

    private static bool? Bridged(Workup work) => work.File.Choices.ContainsKey(StartBranch) ? true : MakeSafe.IsOutOfTheWay(work);

    /// <summary>The readings, without those that were open only because the start branch stood open then.</summary>
    private static ImmutableList<Fact.Reading> Readings(Workup work)
    {
        var cleared = work.File.Facts.FindIndex(fact => fact is Fact.Choice { Question: StartBranch, Option: "capacitor-in-way" or "switch-closed" });
        return cleared < 0
            ? work.File.Readings
            : [.. work.File.Facts.Select((fact, at) => (fact, at)).Where(item => item.fact is Fact.Reading reading && (item.at > cleared || !reading.Open || reading.To == Fact.Reading.Frame)).Select(item => (Fact.Reading)item.fact)];
    }

    private static IEnumerable<(string From, string To)> Unreadable(Workup work) =>
        work.File.Unknowns.Where(question => question.StartsWith("reading.", StringComparison.Ordinal) || question.StartsWith($"{Again}.", StringComparison.Ordinal) || question.StartsWith($"{FrameLead}.", StringComparison.Ordinal))
            .Select(question => question.Split('.')).Where(parts => parts.Length >= 3).Select(parts => (parts[1], parts[2]))
            .Order();
}
