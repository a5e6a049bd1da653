using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching.Steps;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>A case with what the rooms below say of it, each worked out once and only when a step looks at it.</summary>
internal sealed class Workup
{
    private const int MarksThatTell = 6;

    private readonly Lazy<string?> _goal;
    private readonly Lazy<Gate> _gate;
    private readonly Lazy<Identification?> _identification;
    private readonly Lazy<Answer<EndsFinding>?> _ends;
    private readonly Lazy<Answer<Plan>?> _plan;
    private readonly Lazy<FaultReport> _faults;
    private readonly Lazy<FoundMade?> _found;

    public Workup(CaseFile file, Rooms rooms)
    {
        (File, Rooms) = (file, rooms);
        Runs = RunEpisodes.Of(file);
        _goal = new(() => IsBesideEarth && JointChecks.EarthIsDealtWith(this) ? Goals.BesideEarth(File) : Goals.Of(File));
        _gate = new(() => rooms.Gate.Judge(file));
        _identification = new(() => FindWindings.Identify(this));
        _ends = new(() => FindEnds.Find(this));
        _plan = new(() => ChooseConnection.Plan(this));
        _faults = new(() => FindFault.Examine(this));
        _found = new(() => CheckFound.Check(this));
    }

    public CaseFile File { get; }

    public Rooms Rooms { get; }

    public Asking Ask => Rooms.Asking;

    public TradeKnowledge Knowledge => Rooms.Knowledge;

    /// <summary>What the person wants; from what they brought where they did not say it.</summary>
    public string? Goal => _goal.Value;

    /// <summary>Whether the earth was spoken of in the middle of another job, which goes on by itself once that is dealt with.</summary>
    public bool IsBesideEarth => Goals.Of(File) == Goals.CheckEarth && Goals.BesideEarth(File) is not null;

    public IReadOnlyList<string> Tags => [.. File.Leads.Select(lead => lead.Tag)];

    /// <summary>1 or 3, from the plate or else from the kind that was named or what was found; <see langword="null"/> when nobody said.</summary>
    public int? Phases => File.Plate.Phases
        ?? (File.Choices.TryGetValue("family", out var named) && Knowledge.Families.TryGetValue(named, out var family) ? family.Phases : (int?)null)
        ?? PrintedPhases
        ?? (HasCapacitor == true ? 1 : null);

    /// <summary>What printed marks tell: the phases that all layouts with just these marks have in common.</summary>
    private int? PrintedPhases => File.Leads.Count >= MarksThatTell
        && FoundLayouts.Printed(this).Select(fit => fit.Layout.Family == "three-phase" ? 3 : 1).Distinct().ToList() is [var single] ? single : null;

    /// <summary>The plate, with the phases where they are known from elsewhere.</summary>
    public PlateFields Plate => File.Plate.Phases is null && Phases is { } phases ? File.Plate.With("phases", PlateValue.Of([phases])) : File.Plate;

    /// <summary>Whether there is a capacitor; <see langword="null"/> when nobody looked.</summary>
    public bool? HasCapacitor => File.HasNoCapacitor ? false : File.Capacitors.FindLast(capacitor => capacitor.Present || capacitor.Use == "unknown")?.Present;

    /// <summary>Starts since the last time that the motor was made safe, the latest last.</summary>
    public IReadOnlyList<RunEpisode> Runs { get; }

    public Gate Gate => _gate.Value;

    /// <summary>What the readings say of the leads; <see langword="null"/> before there are leads.</summary>
    public Identification? Identification => _identification.Value;

    /// <summary>Which ends belong together; <see langword="null"/> before the windings are known.</summary>
    public EndsFinding? Ends => _ends.Value?.Value;

    /// <summary>Why the ends cannot be told from what was measured, where a result cannot be.</summary>
    public IReadOnlyList<Problem> EndsProblems => _ends.Value?.Problems ?? [];

    /// <summary>The plan, or what it lacks; <see langword="null"/> before the ends are known.</summary>
    public Answer<Plan>? Plan => _plan.Value;

    /// <summary>What the joints as found amount to in each motor that it may be; <see langword="null"/> while too little is known.</summary>
    public FoundMade? Made => _found.Value;

    /// <summary>What the joints as found amount to; <see langword="null"/> while too little is known.</summary>
    public CheckResult? FoundConnection => Made?.Agreed;

    /// <summary>What may be wrong with it.</summary>
    public FaultReport Faults => _faults.Value;

    /// <summary>Whether a fault is looked for: it was asked for, or a first start went wrong.</summary>
    public bool LooksForFault => !Repaired && Fails;

    /// <summary>Whether the person said that it runs again, and has told of no fault since.</summary>
    public bool Repaired => File.Facts.FindLastIndex(fact => fact is Fact.Choice { Question: "outcome", Option: "repaired" }) is var said and >= 0
        && !File.Facts.Skip(said + 1).Any(fact => fact is Fact.Symptom { Present: true }) && Fails;

    private bool Fails => Goal is Goals.Diagnose or Goals.WorthRepairing || FirstStart.Fault(this) is not null;

    /// <summary>Whether a question was answered with "I can't tell".</summary>
    public bool Skipped(string question) => File.Unknowns.Contains(question);

    /// <summary>Whether a choice was made, or answered with "I can't tell".</summary>
    public bool Chosen(string question) => File.Choices.ContainsKey(question) || Skipped(question);

    /// <summary>Whether something was confirmed or denied.</summary>
    public bool Settled(string confirmation) => File.Confirmations.ContainsKey(confirmation);
}
