using System.Collections.Immutable;

namespace WireCoach.Rules.Cases;

/// <summary>What was known of a case when it was opened.</summary>
/// <param name="Role">Who sits at the other end.</param>
/// <param name="Region">Which codes, units and supplies apply.</param>
/// <param name="Practice">Whether the motor is simulated.</param>
public sealed record CaseOpening(Role Role, Region Region, bool Practice = false);

/// <summary>Everything known of a case: one fold over its facts, in their order.</summary>
/// <remarks>Immutable and pure: the same facts always give the same case, so a session replays to the same answers.</remarks>
public sealed record CaseFile
{
    private CaseFile(CaseOpening opening) => Opening = opening;

    /// <summary>What was known when it was opened.</summary>
    public CaseOpening Opening { get; }

    /// <summary>Who sits at the other end.</summary>
    public Role Role => Opening.Role;

    /// <summary>Which codes, units and supplies apply.</summary>
    public Region Region => Opening.Region;

    /// <summary>The facts that count, in their order: neither replaced nor retracted.</summary>
    public ImmutableList<Fact> Facts { get; private init; } = [];

    /// <summary>The leads in the order in which they were named.</summary>
    public ImmutableList<Fact.Lead> Leads { get; private init; } = [];

    /// <summary>The meter readings in their order; one of "all leads" that was taken before they had names is of all that have one now.</summary>
    public ImmutableList<Fact.Reading> Readings => Leads.IsEmpty || !TakenReadings.Exists(OfAll)
        ? TakenReadings
        : TakenReadings.ConvertAll(reading => OfAll(reading) ? reading with { From = Leads[0].Tag, Together = [.. Leads.Skip(1).Select(lead => lead.Tag)] } : reading);

    private ImmutableList<Fact.Reading> TakenReadings { get; init; } = [];

    /// <summary>The plate as far as it was read.</summary>
    public PlateFields Plate { get; private init; } = PlateFields.Empty;

    /// <summary>The plate of the motor that this one replaces, as far as it was read.</summary>
    public PlateFields OldPlate { get; private init; } = PlateFields.Empty;

    /// <summary>The supply as far as it was said.</summary>
    public Fact.Supply? Supply { get; private init; }

    /// <summary>Capacitors found, or <see cref="Fact.Capacitor.Present"/> false where there is none.</summary>
    public ImmutableList<Fact.Capacitor> Capacitors { get; private init; } = [];

    /// <summary>Whether it was said that there is no capacitor of either kind.</summary>
    public bool HasNoCapacitor => !Capacitors.Exists(capacitor => capacitor.Present) && LacksCapacitor("start") && LacksCapacitor("run");

    /// <summary>A capacitor at hand that may take the place of one on the motor.</summary>
    public Fact.Capacitor? SpareCapacitor { get; private init; }

    /// <summary>Results of bench tests in their order.</summary>
    public ImmutableList<Fact.BenchTest> BenchTests { get; private init; } = [];

    /// <summary>Insulation readings in their order.</summary>
    public ImmutableList<Fact.Insulation> Insulations { get; private init; } = [];

    /// <summary>What was read while it ran, in order.</summary>
    public ImmutableList<Fact.Running> Runs { get; private init; } = [];

    /// <summary>Joints that the person described.</summary>
    public ImmutableList<Fact.Joint> Joints { get; private init; } = [];

    /// <summary>Symptoms by id: seen or denied.</summary>
    public ImmutableDictionary<string, bool> Symptoms { get; private init; } = ImmutableDictionary<string, bool>.Empty;

    /// <summary>The latest confirmation by id, and where in <see cref="Facts"/> order it came.</summary>
    public ImmutableDictionary<string, Confirmation> Confirmations { get; private init; } = ImmutableDictionary<string, Confirmation>.Empty;

    /// <summary>The option taken, by question id.</summary>
    public ImmutableDictionary<string, string> Choices { get; private init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Questions answered with "I can't tell".</summary>
    public ImmutableHashSet<string> Unknowns { get; private init; } = [];

    /// <summary>Instruments by id: within reach or not.</summary>
    public ImmutableDictionary<string, bool> Instruments { get; private init; } = ImmutableDictionary<string, bool>.Empty;

    /// <summary>Volts of the test transformer, where they were said; the latest that a test was done with, else.</summary>
    public double? TestVolts { get; private init; }

    /// <summary>What the person wants: the goals in their order, the last one leads.</summary>
    public ImmutableList<string> Goals { get; private init; } = [];

    /// <summary>What the motor drives.</summary>
    public Fact.Application? Application { get; private init; }

    /// <summary>Where in the order of facts power was last on; −1 for never.</summary>
    public int PoweredAt { get; private init; } = -1;

    /// <summary>The case of these facts.</summary>
    /// <param name="opening">What was known when it was opened.</param>
    /// <param name="facts">The facts in their order, without the retracted ones.</param>
    public static CaseFile From(CaseOpening opening, IEnumerable<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var all = facts.ToList();
        var replaced = all.Select(fact => fact.Replaces).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return all.Where(fact => fact.FactId.Length == 0 || !replaced.Contains(fact.FactId))
            .Aggregate(new CaseFile(opening), (file, fact) => file.With(fact));
    }

    /// <summary>Ohms from the frame to earth, however they were told; without end for a path that is open, <see langword="null"/> for any other fact.</summary>
    /// <param name="fact">The fact.</param>
    public static double? EarthOhms(Fact fact) => fact switch
    {
        Fact.BenchTest { Test: Fact.BenchTest.EarthContinuity } test => test.Outcome == Fact.BenchTest.NoPath ? double.PositiveInfinity : test.Value,
        Fact.Reading reading when reading.IsOfPair(Fact.Reading.Frame, Fact.Reading.Earth) => reading.Short ? 0 : reading.Ohms ?? double.PositiveInfinity,
        _ => null,
    };

    /// <summary>Whether a capacitor of a kind was named on this motor.</summary>
    /// <param name="use"><c>start</c> or <c>run</c>.</param>
    public bool HasCapacitor(string use) => Capacitors.Exists(capacitor => capacitor.Present && (capacitor.Use == use || capacitor.Use == "both"));

    /// <summary>Whether it was said that there is no capacitor of a kind; one that was found afterwards is there.</summary>
    /// <param name="use"><c>start</c> or <c>run</c>.</param>
    public bool LacksCapacitor(string use) => !HasCapacitor(use)
        && Capacitors.Exists(capacitor => !capacitor.Present && (capacitor.Use == use || (capacitor.Use == "unknown" && !Capacitors.Exists(other => other.Present))));

    /// <summary>The case with one more fact.</summary>
    /// <param name="fact">The fact.</param>
    /// <exception cref="ArgumentException">The kind of fact is not known: a silently ignored fact is a wrong answer.</exception>
    public CaseFile With(Fact fact)
    {
        var file = this with { Facts = Facts.Add(fact) };
        return fact switch
        {
            Fact.Reading reading => file with { TakenReadings = TakenReadings.Add(reading) },
            Fact.Plate { Of: not null } old => file with { OldPlate = OldPlate.With(old.Field, old.Value) },
            Fact.Plate plate => file with { Plate = Plate.With(plate.Field, plate.Value), Unknowns = Unknowns.Remove(plate.Field) },
            Fact.Supply supply => file with { Supply = Merge(Supply, supply) },
            Fact.Symptom symptom => file with { Symptoms = Symptoms.SetItem(symptom.Id, symptom.Present) },
            Fact.Lead lead => file with { Leads = Merge(Leads, lead) },
            Fact.Capacitor { Spare: true } spare => file with { SpareCapacitor = spare },
            Fact.Capacitor capacitor => file with { Capacitors = Capacitors.Add(capacitor) },
            Fact.BenchTest test => file with { BenchTests = BenchTests.Add(test) },
            Fact.Insulation insulation => file with { Insulations = Insulations.Add(insulation) },
            Fact.Running running => file with { Runs = Runs.Add(running), PoweredAt = Facts.Count },
            Fact.Joint joint => file with { Joints = Joints.Add(joint) },
            Fact.Goal goal => file with { Goals = Goals.Add(goal.Id) },
            Fact.Confirm confirm => file with { Confirmations = Confirmations.SetItem(confirm.Id, new(confirm.Confirmed, Facts.Count)) },
            Fact.Instrument instrument => file with { Instruments = Instruments.SetItem(instrument.Id, instrument.Present), TestVolts = instrument.Volts ?? TestVolts },
            Fact.Application application => file with { Application = Merge(Application, application) },
            Fact.Choice choice => file with { Choices = Choices.SetItem(choice.Question, choice.Option), Unknowns = Unknowns.Remove(choice.Question) },
            Fact.Unknown unknown => file with { Unknowns = Unknowns.Add(unknown.Question) },
            _ => throw new ArgumentException($"A fact of kind {fact.GetType().Name} is not known to the case.", nameof(fact)),
        };
    }

    /// <summary>Whether something was confirmed, and not denied later.</summary>
    /// <param name="id">What was asked to be confirmed.</param>
    public bool Confirmed(string id) => Confirmations.TryGetValue(id, out var confirmation) && confirmation.Confirmed;

    /// <summary>Whether something was confirmed since power was last on.</summary>
    /// <param name="id">What was asked to be confirmed.</param>
    public bool ConfirmedSincePower(string id) =>
        Confirmations.TryGetValue(id, out var confirmation) && confirmation.Confirmed && confirmation.Position > PoweredAt;

    /// <summary>Whether a cause was made good and nothing changed.</summary>
    /// <param name="cause">A cause id.</param>
    public bool MadeGoodInVain(string cause) => Choices.GetValueOrDefault($"{Fact.Choice.AfterRepair}.{cause}") == Fact.Choice.Same;

    /// <summary>The tag as the person wrote it, for any writing of it; <see langword="null"/> for a lead that was never named.</summary>
    /// <param name="tag">A tag in any case.</param>
    public string? Tag(string tag) =>
        Leads.Find(lead => string.Equals(lead.Tag, tag, StringComparison.OrdinalIgnoreCase))?.Tag;

    /// <summary>The leads that readings name, as often as they do.</summary>
    public IEnumerable<string> ReadLeads => Readings.SelectMany(reading => (string[])[reading.From, reading.To, .. reading.Together])
        .Where(tag => tag is not (Fact.Reading.Frame or Fact.Reading.Earth or Fact.Reading.All));

    /// <summary>The leads by the names under which they were spoken of: named, joined, or read between.</summary>
    public IEnumerable<string> SpokenLeads =>
        Leads.Select(lead => lead.Tag).Concat(Joints.SelectMany(joint => joint.Leads)).Concat(ReadLeads).Distinct(StringComparer.OrdinalIgnoreCase);

    private static bool OfAll(Fact.Reading reading) => reading is { From: Fact.Reading.All, Together.Count: 0 };

    /// <summary>"The pump" of somebody who has spoken of the brine pump is no other machine.</summary>
    private static Fact.Application Merge(Fact.Application? known, Fact.Application said) =>
        known is not null && known.Text.EndsWith($" {said.Text}", StringComparison.OrdinalIgnoreCase)
            ? known with { ApplicationId = known.ApplicationId ?? said.ApplicationId }
            : said;

    private static Fact.Supply Merge(Fact.Supply? known, Fact.Supply said) => known is null ? said : said with
    {
        Volts = said.Volts ?? known.Volts,
        Phases = said.Phases ?? known.Phases,
        Hertz = said.Hertz ?? known.Hertz,
        System = said.System ?? known.System,
    };

    private static ImmutableList<Fact.Lead> Merge(ImmutableList<Fact.Lead> leads, Fact.Lead said)
    {
        var at = leads.FindIndex(lead => string.Equals(lead.Tag, said.Tag, StringComparison.Ordinal));
        return at < 0
            ? leads.Add(said)
            : leads.SetItem(at, said with { Colour = said.Colour ?? leads[at].Colour, Marking = said.Marking ?? leads[at].Marking });
    }
}

/// <summary>A confirmation and where in the order of facts it came.</summary>
/// <param name="Confirmed">Whether it was confirmed; <see langword="false"/> is "I can't".</param>
/// <param name="Position">Its place in the order of facts.</param>
public readonly record struct Confirmation(bool Confirmed, int Position);
