using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Practice;

/// <summary>A simulated motor with hidden leads. It answers meter, bench tests and power as an honest motor would; the same seed is always the same motor.</summary>
/// <remarks>It shares no code with what it tests: neither with identification, nor with ends, nor with the planner.</remarks>
public sealed class PracticeMotor
{
    private const string Cheap = "cheap";

    private readonly Wound _wound;
    private readonly BenchMeter _meter;
    private readonly BenchTests _tests;
    private readonly BenchLooks _looks;
    private readonly PowerUp _power;

    private PracticeMotor(TradeKnowledge knowledge, Wound wound, double error)
    {
        _wound = wound;
        _meter = new(knowledge, wound, error);
        _looks = new(wound);
        var coupled = new CoupledModel(knowledge, wound);
        _tests = new(knowledge, wound, coupled);
        _power = new(knowledge, wound, coupled);
        Truth = new()
        {
            Layout = wound.Form.Id,
            Form = wound.Form.Form,
            Leads = wound.TagOf,
            Fault = wound.Fault?.Id,
            FaultAt = wound.Fault?.At,
            Ohms = wound.Coils.ToDictionary(coil => coil.Coil.Id, coil => _meter.CoilOhms(coil), StringComparer.Ordinal),
            OnOwnPoles = wound.OnOwnPoles,
            Coupling = coupled.AtRest,
            Megohms = wound.Megohms,
        };
    }

    /// <summary>How good an ohmmeter can be, the best first.</summary>
    public static IReadOnlyList<string> Meters { get; } = ["good", "fair", Cheap];

    /// <summary>The machine of the dairy that it drives.</summary>
    public string Machine => _wound.Machine.Name;

    /// <summary>Its leads by tag, in the order of the tags.</summary>
    public IReadOnlyList<string> Tags => [.. _wound.TagOf.Values.Order(TagOrder.Instance)];

    /// <summary>What it hides, for scoring afterwards.</summary>
    public PracticeTruth Truth { get; }

    /// <summary>A motor.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="layout">A layout id; <see langword="null"/> for any.</param>
    /// <param name="fault">A cause id of the contract; <see langword="null"/> for a sound motor.</param>
    /// <param name="seed">The same seed gives the same motor.</param>
    /// <param name="meter">How good the ohmmeter is: <c>good</c>, <c>fair</c> or <c>cheap</c>; <see langword="null"/> for a cheap one.</param>
    /// <returns>The motor, or <c>invalid-fact</c> where the layout or the meter is unknown or the layout cannot have the fault.</returns>
    public static Answer<PracticeMotor> Make(TradeKnowledge knowledge, string? layout, string? fault, long seed, string? meter = null)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        if (!Meters.Contains(meter ?? Cheap, StringComparer.Ordinal))
        {
            return new Problem("invalid-fact", "meter", Statement.Of("practice.no-such-meter", ("meters", string.Join(", ", Meters))));
        }

        var wound = Winder.Wind(knowledge, layout, fault, seed);
        return wound.Value is { } value ? new PracticeMotor(knowledge, value, knowledge.Rules["practice-meter"][$"error-{meter ?? Cheap}"]) : Answer<PracticeMotor>.Refused(wound.Problems);
    }

    /// <summary>The faults that a layout can have on the practice bench, as cause ids of the contract.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="layout">A layout id.</param>
    public static IReadOnlyList<string> FaultsOf(TradeKnowledge knowledge, string layout)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        return [.. knowledge.Causes.Keys.Where(cause => knowledge.Layouts[layout].Forms().Any(form => Winder.Places(form, cause).Count > 0)).Order(StringComparer.Ordinal)];
    }

    /// <summary>What a person sees before measuring: the leads, the plate, the capacitor if there is one, the machine.</summary>
    public IReadOnlyList<Fact> Opening() =>
    [
        .. Tags.Select(tag => new Fact.Lead { Tag = tag, Marking = Printed(tag), How = FactEntry.Probe }),
        .. Plate(),
        .. Capacitors(),
        .. _looks.Seen(),
        new Fact.Application { Text = Machine, How = FactEntry.Probe },
    ];

    /// <summary>The meter between two leads, or a lead and <c>frame</c> or <c>earth</c>.</summary>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag, <c>frame</c> or <c>earth</c>.</param>
    /// <param name="together">Further tags held together with <paramref name="from"/>.</param>
    /// <param name="capacitorsBridged">Whether the capacitors are taken off and their places bridged.</param>
    /// <param name="pressOverload">Whether a tripped protector has cooled or been reset.</param>
    /// <param name="take">How often these points were read before; each take has the meter's error anew.</param>
    /// <returns>The reading as the meter shows it, probes included; or <c>unknown-lead</c>.</returns>
    public Answer<Fact.Reading> Touch(
        string from, string to, IReadOnlyList<string>? together = null, bool capacitorsBridged = false, bool pressOverload = false, int take = 0) =>
        Wrong(from, to, together ?? []) is { } wrong ? wrong : _meter.Touch(from, to, together ?? [], capacitorsBridged, pressOverload, take);

    /// <summary>The meter between two leads, or a lead and <c>frame</c>, while leads are joined.</summary>
    /// <param name="joints">The tags that are joined, group by group.</param>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag, or <c>frame</c>.</param>
    /// <param name="capacitorsBridged">Whether the capacitors are taken off and their places bridged.</param>
    /// <param name="take">How often these points were read before.</param>
    /// <returns>The reading as the meter shows it, probes included; or <c>unknown-lead</c>.</returns>
    public Answer<Fact.Reading> Joined(IReadOnlyList<IReadOnlyList<string>> joints, string from, string to, bool capacitorsBridged = false, int take = 0)
    {
        ArgumentNullException.ThrowIfNull(joints);
        return Wrong(from, to, joints.SelectMany(joint => joint)) is { } wrong ? wrong : _meter.Joined(joints, from, to, capacitorsBridged, reset: false, take);
    }

    /// <summary>Ohms from the frame to the earth conductor, what the probes add taken off.</summary>
    public Fact.BenchTest Earth() => new()
    {
        Test = Fact.BenchTest.EarthContinuity,
        Value = Math.Max(0, Math.Round(_meter.Touch(Fact.Reading.Frame, Fact.Reading.Earth, [], bridged: false, reset: false, take: 0).Ohms!.Value - _meter.ProbeOhms(), 3)),
        Unit = "ohm",
        How = FactEntry.Probe,
    };

    /// <summary>Whether two readings of the same points can differ by the meter's error alone.</summary>
    /// <param name="one">A reading.</param>
    /// <param name="other">The same points read again.</param>
    public bool Agree(Fact.Reading one, Fact.Reading other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return _meter.Agree(one, other);
    }

    /// <summary>What the meter does between two leads while the shaft is turned by hand: <c>jumps</c> or <c>steady</c>.</summary>
    /// <param name="from">A tag.</param>
    /// <param name="to">Another tag.</param>
    public string Turned(string from, string to) => _looks.Turned(from, to);

    /// <summary>Whether the shaft is harder to turn while the ends of the armature meet: <c>drags</c> or <c>same</c>.</summary>
    public string Dragged() => _looks.Dragged();

    /// <summary>Which of two leads comes from the brushes on slip rings: <c>first</c> or <c>second</c>.</summary>
    /// <param name="first">A tag.</param>
    public string FromRings(string first) => _looks.FromRings(first);

    /// <summary>The probes touched together, before anything is measured.</summary>
    public Fact.BenchTest Probes() => new() { Test = Fact.BenchTest.ProbeZero, Value = _meter.ProbeOhms(), Unit = "ohm", How = FactEntry.Probe };

    /// <summary>The answer to a bench test.</summary>
    /// <param name="test">A test id: <c>series-voltage</c>, <c>induced-voltage</c>, <c>series-impedance</c>, <c>battery-flick</c>, <c>half-run</c>, <c>soft-first-run</c>.</param>
    /// <param name="setup">The set-up; start capacitors are off and bridged, or the start winding is open.</param>
    /// <returns>The result; or <c>unknown-lead</c>, or <c>invalid-fact</c> where the set-up does not say what to feed or read.</returns>
    public Answer<Fact.BenchTest> Test(string test, TestSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        var unknown = setup.Drive.Concat(setup.Read).Concat(setup.Tie.SelectMany(tie => tie)).FirstOrDefault(lead => !IsLead(lead));
        return unknown is not null ? new Problem("unknown-lead", "setup", Statement.Of("problem.unknown-lead", ("lead", unknown), ("leads", string.Join(", ", Tags))))
            : test == "soft-first-run" ? setup.Drive.Count == 2 ? _power.Soft(setup) : new Problem("invalid-fact", "setup", Statement.Of("practice.setup"))
            : _tests.Answer(test, setup);
    }

    /// <summary>The insulation tester, all leads together to the frame, after one minute at 20 °C.</summary>
    /// <param name="testVolts">Test volts DC.</param>
    public Fact.Insulation Insulation(double testVolts = 500) =>
        new() { Megohms = _meter.Megohms(), TestVolts = testVolts, Celsius = 20, AtMinute = 1, How = FactEntry.Probe };

    /// <summary>Power on for a few seconds, the shaft bare.</summary>
    /// <param name="joints">The joints: leads and their line conductor, or none.</param>
    /// <param name="supply">The supply.</param>
    /// <returns>What it did: volts, amps, speed, direction from the shaft end, outcome.</returns>
    public Fact.Running Power(IReadOnlyList<Fact.Joint> joints, Fact.Supply supply)
    {
        ArgumentNullException.ThrowIfNull(joints);
        ArgumentNullException.ThrowIfNull(supply);
        return _power.Run(joints, supply);
    }

    private Problem? Wrong(string from, string to, IEnumerable<string> held)
    {
        var unknown = new[] { from, to }.Concat(held).FirstOrDefault(lead => !IsLead(lead) && lead is not (Fact.Reading.Frame or Fact.Reading.Earth));
        return unknown is not null ? new Problem("unknown-lead", "from", Statement.Of("problem.unknown-lead", ("lead", unknown), ("leads", string.Join(", ", Tags))))
            : from == to ? new Problem("invalid-fact", "to", Statement.Of("problem.same-lead", ("lead", from)))
            : null;
    }

    private bool IsLead(string tag) => _wound.TagOf.Values.Contains(tag, StringComparer.Ordinal);

    /// <summary>A motor that was wound or marked with one half turned round carries printed marks that are wrong for that half.</summary>
    private string? Printed(string tag)
    {
        if (_wound.Fault is not { Id: "run-half-reversed" } fault)
        {
            return null;
        }

        var coil = _wound.Form.Coils.Single(coil => coil.Id == fault.At);
        var marking = _wound.TagOf.Single(pair => pair.Value == tag).Key;
        return marking == coil.From ? coil.To : marking == coil.To ? coil.From : marking;
    }

    private IEnumerable<Fact> Plate()
    {
        var machine = _wound.Machine;
        Fact.Plate Field(string field, params IReadOnlyList<double> numbers) => new() { Field = field, Value = PlateValue.Of(numbers), How = FactEntry.Probe };
        yield return Field("horsepower", machine.Horsepower);
        yield return Field("volts", machine.Volts);
        yield return Field("amps", machine.Amps);
        yield return Field("rpm", machine.Rpm);
        if (machine.Hertz is { } hertz)
        {
            yield return Field("hertz", hertz);
        }

        yield return Field("phases", machine.Phases);
    }

    private IEnumerable<Fact> Capacitors()
    {
        if (_wound.Machine.Phases != 1)
        {
            yield break;
        }

        var kind = _wound.Form.Capacitor;
        if (kind is "start" or "both")
        {
            yield return new Fact.Capacitor { Microfarads = _wound.Machine.StartMicrofarads, Use = "start", How = FactEntry.Probe };
        }

        if (kind is "run" or "both")
        {
            yield return new Fact.Capacitor { Microfarads = _wound.Machine.RunMicrofarads, Use = "run", How = FactEntry.Probe };
        }

        if (kind == "none")
        {
            yield return new Fact.Capacitor { Present = false, How = FactEntry.Probe };
        }
    }
}

/// <summary>Tags that are numbers by their number, all others by their letters.</summary>
internal sealed class TagOrder : IComparer<string>
{
    public static TagOrder Instance { get; } = new();

    public int Compare(string? x, string? y) =>
        int.TryParse(x, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var one)
        && int.TryParse(y, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var other)
            ? one.CompareTo(other) : string.CompareOrdinal(x, y);
}
