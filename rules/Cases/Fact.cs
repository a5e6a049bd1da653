using System.Text.Json.Serialization;

namespace WireCoach.Rules.Cases;

/// <summary>One thing that a person said, measured, chose or confirmed. Facts are never edited: a later one replaces, a retraction drops.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Reading), "reading")]
[JsonDerivedType(typeof(Plate), "plate")]
[JsonDerivedType(typeof(Supply), "supply")]
[JsonDerivedType(typeof(Symptom), "symptom")]
[JsonDerivedType(typeof(Lead), "lead")]
[JsonDerivedType(typeof(Capacitor), "capacitor")]
[JsonDerivedType(typeof(BenchTest), "bench-test")]
[JsonDerivedType(typeof(Insulation), "insulation")]
[JsonDerivedType(typeof(Running), "running")]
[JsonDerivedType(typeof(Joint), "joint")]
[JsonDerivedType(typeof(Goal), "goal")]
[JsonDerivedType(typeof(Confirm), "confirm")]
[JsonDerivedType(typeof(Instrument), "instrument")]
[JsonDerivedType(typeof(Application), "application")]
[JsonDerivedType(typeof(Choice), "choice")]
[JsonDerivedType(typeof(Unknown), "unknown")]
public abstract record Fact
{
    private Fact()
    {
    }

    /// <summary>The fact's own id within its session; empty until the session gives it one.</summary>
    public string FactId { get; init; } = string.Empty;

    /// <summary>What the contract calls <c>id</c>: the fact's own id, or for a symptom, goal, confirmation or instrument the id of that.</summary>
    public virtual string Id
    {
        get => FactId;
        init => _ = value; // a client may send it; the session gives ids
    }

    /// <summary>How it came in.</summary>
    public FactEntry How { get; init; }

    /// <summary>The words it was read from, where it was typed.</summary>
    public string? Span { get; init; }

    /// <summary>The id of the fact that it takes the place of.</summary>
    public string? Replaces { get; init; }

    /// <summary>When the session took it, UTC; <see langword="null"/> outside a session.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>A meter reading between two leads, or between a lead and the frame.</summary>
    public sealed record Reading : Fact
    {
        /// <summary>The name of the frame in <see cref="From"/> or <see cref="To"/>.</summary>
        public const string Frame = "frame";

        /// <summary>The name of the earth conductor in <see cref="From"/> or <see cref="To"/>.</summary>
        public const string Earth = "earth";

        /// <summary>The name that stands for all leads together where none is known by name.</summary>
        public const string All = "all";

        /// <summary>A lead's tag.</summary>
        public required string From { get; init; }

        /// <summary>Another lead's tag, <c>frame</c> or <c>earth</c>.</summary>
        public required string To { get; init; }

        /// <summary>The meter's figure in ohms as shown, before the probes are taken off; <see langword="null"/> when open or short.</summary>
        public double? Ohms { get; init; }

        /// <summary>The meter showed over-range.</summary>
        public bool Open { get; init; }

        /// <summary>The meter only beeped, or showed no more than its probes.</summary>
        public bool Short { get; init; }

        /// <summary>The meter moved and then went over-range, as through a capacitor.</summary>
        public bool Kick { get; init; }

        /// <summary>The figure changed while the shaft was turned.</summary>
        public bool ChangesWithShaft { get; init; }

        /// <summary>Winding temperature in °C at the reading.</summary>
        public double? Celsius { get; init; }

        /// <summary>Further leads that were held together with <c>from</c>.</summary>
        public IReadOnlyList<string> Together { get; init; } = [];

        /// <summary>Whether it is of two single leads, whichever was named first.</summary>
        /// <param name="one">A lead's tag.</param>
        /// <param name="other">Another lead's tag.</param>
        public bool IsOfPair(string one, string other) => Together.Count == 0 && ((From == one && To == other) || (From == other && To == one));

        /// <summary>Whether it is of the same leads as another, those that were held together among them.</summary>
        /// <param name="other">Another reading.</param>
        public bool IsOfSame(Reading other) => Together.Count == 0
            ? other.IsOfPair(From, To)
            : other.To == To && Together.Append(From).ToHashSet(StringComparer.Ordinal).SetEquals(other.Together.Append(other.From));
    }

    /// <summary>One field of the plate.</summary>
    public sealed record Plate : Fact
    {
        /// <summary>The field's name in camelCase, for example <c>volts</c>, <c>amps</c>, <c>horsepower</c>.</summary>
        public required string Field { get; init; }

        /// <summary>The value: a number, several numbers such as 115/230, or text.</summary>
        public required PlateValue Value { get; init; }

        /// <summary>The unit that was given, where the field leaves a choice.</summary>
        public string? Unit { get; init; }

        /// <summary>Whose plate: <c>old</c> for the motor that this one replaces, <see langword="null"/> for the motor at hand.</summary>
        public string? Of { get; init; }

        /// <summary>The value of <see cref="Of"/> for the motor that is replaced.</summary>
        public const string Old = "old";
    }

    /// <summary>The supply at hand; a member that was not said stays <see langword="null"/>.</summary>
    public sealed record Supply : Fact
    {
        /// <summary>Volts between the line conductors.</summary>
        public double? Volts { get; init; }

        /// <summary>1 or 3.</summary>
        public int? Phases { get; init; }

        /// <summary>Hertz.</summary>
        public double? Hertz { get; init; }

        /// <summary><c>single-phase</c>, <c>split-phase</c>, <c>three-phase-star</c>, <c>three-phase-delta</c>.</summary>
        public string? System { get; init; }
    }

    /// <summary>A symptom, or its absence.</summary>
    public sealed record Symptom : Fact
    {
        /// <summary>A symptom id.</summary>
        public override required string Id { get; init; }

        /// <summary>Whether it was seen; <see langword="false"/> is a denial ("doesn't even hum").</summary>
        public bool Present { get; init; } = true;
    }

    /// <summary>A lead that comes out of the motor.</summary>
    public sealed record Lead : Fact
    {
        /// <summary>The person's own tag.</summary>
        public required string Tag { get; init; }

        /// <summary>Its colour in words.</summary>
        public string? Colour { get; init; }

        /// <summary>A marking printed on it, for example T4.</summary>
        public string? Marking { get; init; }
    }

    /// <summary>A capacitor found on the motor, or a measurement of it.</summary>
    public sealed record Capacitor : Fact
    {
        /// <summary>Marked microfarads; the lower end of a marked range.</summary>
        public double? Microfarads { get; init; }

        /// <summary>The upper end of a marked range in microfarads.</summary>
        public double? MicrofaradsTo { get; init; }

        /// <summary>Marked volts AC.</summary>
        public double? Volts { get; init; }

        /// <summary>What it is used for: <c>start</c>, <c>run</c>, <c>unknown</c>.</summary>
        public string Use { get; init; } = "unknown";

        /// <summary>What a meter reads, in microfarads.</summary>
        public double? MeasuredMicrofarads { get; init; }

        /// <summary>Volts across it on an alternating supply; with <see cref="ThroughAmps"/> they give its microfarads.</summary>
        public double? AcrossVolts { get; init; }

        /// <summary>Amps through it at <see cref="AcrossVolts"/>.</summary>
        public double? ThroughAmps { get; init; }

        /// <summary><see langword="false"/> says that the motor has none.</summary>
        public bool Present { get; init; } = true;

        /// <summary><see langword="true"/> of a capacitor that is not on the motor: one that may take the place of its own.</summary>
        public bool Spare { get; init; }
    }

    /// <summary>The result of a bench test.</summary>
    public sealed record BenchTest : Fact
    {
        /// <summary>The test from the frame to the earth conductor.</summary>
        public const string EarthContinuity = "earth-continuity";

        /// <summary>The test in which the test leads are held together.</summary>
        public const string ProbeZero = "probe-zero";

        /// <summary>The ohms of a joint that was made.</summary>
        public const string JointResistance = "joint-resistance";

        /// <summary>The outcome that there is no path.</summary>
        public const string NoPath = "open";

        /// <summary>A test id.</summary>
        public required string Test { get; init; }

        /// <summary>The leads that were driven.</summary>
        public IReadOnlyList<string> Drive { get; init; } = [];

        /// <summary>The joints that were made for the test.</summary>
        public IReadOnlyList<IReadOnlyList<string>> Tie { get; init; } = [];

        /// <summary>The leads that were read across.</summary>
        public IReadOnlyList<string> Read { get; init; } = [];

        /// <summary>Volts on the driven leads.</summary>
        public double? AppliedVolts { get; init; }

        /// <summary>The reading.</summary>
        public double? Value { get; init; }

        /// <summary>The reading's unit id.</summary>
        public string? Unit { get; init; }

        /// <summary>The outcome's id where the result is not a number, for example <c>up-on-make</c>.</summary>
        public string? Outcome { get; init; }
    }

    /// <summary>An insulation reading of all leads together to the frame, unless said otherwise.</summary>
    public sealed record Insulation : Fact
    {
        /// <summary>Megohms as read.</summary>
        public required double Megohms { get; init; }

        /// <summary>Test volts DC.</summary>
        public double? TestVolts { get; init; }

        /// <summary>Winding temperature in °C.</summary>
        public double? Celsius { get; init; }

        /// <summary>Minutes after the volts were applied.</summary>
        public double? AtMinute { get; init; }

        /// <summary>Megohms at 40 °C of earlier sessions of the same motor, the earliest first. Whoever keeps the sessions looks them up; nobody types them.</summary>
        public IReadOnlyList<double> EarlierMegohms { get; init; } = [];
    }

    /// <summary>What was read while it ran: power was on.</summary>
    public sealed record Running : Fact
    {
        /// <summary>Volts at the motor.</summary>
        public double? Volts { get; init; }

        /// <summary>Amps in a line.</summary>
        public double? Amps { get; init; }

        /// <summary>Shaft speed.</summary>
        public double? Rpm { get; init; }

        /// <summary><c>clockwise</c>, <c>counterclockwise</c>, <c>right</c> or <c>wrong</c>.</summary>
        public string? Direction { get; init; }

        /// <summary>From which end the direction was seen: <c>shaft-end</c> or <c>opposite-end</c>.</summary>
        public string? SeenFrom { get; init; }

        /// <summary>Frame temperature in °C.</summary>
        public double? Celsius { get; init; }

        /// <summary>What it did: <c>ran</c>, <c>hummed</c>, <c>tripped</c>, <c>nothing</c>, <c>slow</c>.</summary>
        public string? Outcome { get; init; }
    }

    /// <summary>Leads found or made together, on a line conductor or on nothing.</summary>
    public sealed record Joint : Fact
    {
        /// <summary>The leads' tags.</summary>
        public required IReadOnlyList<string> Leads { get; init; }

        /// <summary>L1, L2, L3, N, or <see langword="null"/> for a joint that goes nowhere else.</summary>
        public string? Conductor { get; init; }
    }

    /// <summary>What the person wants.</summary>
    public sealed record Goal : Fact
    {
        /// <summary>A goal id.</summary>
        public override required string Id { get; init; }
    }

    /// <summary>Something that the person confirmed, or said they could not.</summary>
    public sealed record Confirm : Fact
    {
        /// <summary>What was asked to be confirmed.</summary>
        public override required string Id { get; init; }

        /// <summary><see langword="false"/>: "I can't".</summary>
        public bool Confirmed { get; init; } = true;
    }

    /// <summary>An instrument within reach.</summary>
    public sealed record Instrument : Fact
    {
        /// <summary>An instrument id.</summary>
        public override required string Id { get; init; }

        /// <summary><see langword="false"/>: not within reach.</summary>
        public bool Present { get; init; } = true;

        /// <summary>Volts that it gives, of a test transformer.</summary>
        public double? Volts { get; init; }
    }

    /// <summary>What the motor drives.</summary>
    public sealed record Application : Fact
    {
        /// <summary>The person's words.</summary>
        public required string Text { get; init; }

        /// <summary>The application's id where the words are known.</summary>
        [JsonPropertyName("application")]
        public string? ApplicationId { get; init; }
    }

    /// <summary>An option taken where the answer is no other kind of fact.</summary>
    public sealed record Choice : Fact
    {
        /// <summary>The question which connection is wanted: a word of the tables, or volts of the plate.</summary>
        public const string Connection = "connection";

        /// <summary>The question whose option is the volts that the links inside are set for.</summary>
        public const string WiredFor = "wired-for";

        /// <summary>The question whose option is how the links lie: <c>star</c> or <c>delta</c>.</summary>
        public const string Links = "links";

        /// <summary>The question how many leads there are.</summary>
        public const string LeadCount = "leads.count";

        /// <summary>The question whether what was found is made good; behind a point stands the cause.</summary>
        public const string RepairMade = "repair-made";

        /// <summary>The question what the motor does after the repair; behind a point stands the cause.</summary>
        public const string AfterRepair = "after-repair";

        /// <summary>What stands before the id of a danger that was told of.</summary>
        public const string Danger = "danger.";

        /// <summary>What stands before the id of something that was told and may mean more than one thing.</summary>
        public const string Unsettled = "unsettled.";

        /// <summary>What stands before the id of a symptom that a phrase tells and the words around it make unlikely: it tells of no cause, and warns all the same.</summary>
        public const string Doubted = "unsettled.symptom.";

        /// <summary>The option of <see cref="AfterRepair"/> that nothing has changed.</summary>
        public const string Same = "same";

        /// <summary>The question's id.</summary>
        public required string Question { get; init; }

        /// <summary>The option's id.</summary>
        public required string Option { get; init; }
    }

    /// <summary>"I can't tell", "I can't measure that", "skip".</summary>
    public sealed record Unknown : Fact
    {
        /// <summary>The question's id.</summary>
        public required string Question { get; init; }
    }
}

/// <summary>How a fact came in.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<FactEntry>))]
public enum FactEntry
{
    /// <summary>Read from typed words.</summary>
    [JsonStringEnumMemberName("typed")]
    Typed,

    /// <summary>Entered in a form or by a client.</summary>
    [JsonStringEnumMemberName("form")]
    Form,

    /// <summary>Read from the practice motor by its meter.</summary>
    [JsonStringEnumMemberName("probe")]
    Probe,

    /// <summary>Taken as usual for want of a word; shown as such.</summary>
    [JsonStringEnumMemberName("default")]
    Default,
}
