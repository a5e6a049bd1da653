using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>The figures by which leads are told apart: the usual meter, how alike is alike, and how often things go wrong.</summary>
public sealed record IdentificationFigures
{
    /// <summary>The usual hand-held meter, taken where nothing is said of the meter.</summary>
    public required MeterFigures Meter { get; init; }

    /// <summary>Two windings within this share of the greater one are neither alike nor different.</summary>
    public required Judgement AlikeShare { get; init; }

    /// <summary>Two windings within so many ohms are neither alike nor different.</summary>
    public required Judgement AlikeOhms { get; init; }

    /// <summary>On one meter and range the gain error cancels but for this share of the reading.</summary>
    public required Judgement SameMeterShare { get; init; }

    /// <summary>How far the coils of one group lie apart in a sound motor: one standard deviation as a share.</summary>
    public required Judgement CoilSpread { get; init; }

    /// <summary>A steady figure above so many ohms is no winding: a bleed resistor or a leak.</summary>
    public required Judgement WindingOhmsMost { get; init; }

    /// <summary>So many times the most that is usual for a winding of a kind of motor, and it is none; a ratio.</summary>
    public required Judgement OhmsBeyond { get; init; }

    /// <summary>How often a single reading is a slip of the hand; a probability.</summary>
    public required Judgement Slip { get; init; }

    /// <summary>How far a misread figure usually lies from the right one: one standard deviation of its natural logarithm.</summary>
    public required Judgement SlipSpread { get; init; }

    /// <summary>How often a person sees the kick of a capacitor on an ohmmeter; a probability.</summary>
    public required Judgement KickSeen { get; init; }

    /// <summary>How likely a person sees a meter move and then go open where nothing is, against other slips; a ratio.</summary>
    public required Judgement KickImagined { get; init; }

    /// <summary>How often a lead carries a marking that goes against what it is; a probability.</summary>
    public required Judgement MarkingMistaken { get; init; }

    /// <summary>How often a figure changes with the shaft of which none goes through an armature; a probability.</summary>
    public required Judgement TurningMistaken { get; init; }

    /// <summary>Up to so many standard deviations off, sound motors explain the readings.</summary>
    public required Judgement SoundFits { get; init; }

    /// <summary>Beyond so many standard deviations a reading does not go with an explanation.</summary>
    public required Judgement Misfit { get; init; }

    /// <summary>How likely a motor with something the matter must be beside the likeliest sound one that explains as much, to be looked at; a ratio.</summary>
    public required Judgement FaultCounts { get; init; }

    /// <summary>How likely a motor with something open must be beside the likeliest sound one, to take part in choosing the next reading; a ratio.</summary>
    public required Judgement BreakCounts { get; init; }

    /// <summary>How likely even a reading that must be taken in any case is one too many, because another may have been the better one: a share.</summary>
    public required Judgement ReadingWasted { get; init; }

    /// <summary>Above this share nothing is the matter as far as ohms can show: faults that no reading could show keep their small shares for ever.</summary>
    public required Judgement MostlySound { get; init; }

    /// <summary>How far a ratio of windings may be off by the meter and the spread of coils; a natural logarithm.</summary>
    public required Judgement RatioBlur { get; init; }

    /// <summary>How often a coil is open; a probability for each motor.</summary>
    public required Judgement OpenCoil { get; init; }

    /// <summary>How often a coil has shorted turns that ohms can show; a probability for each motor.</summary>
    public required Judgement ShortedTurns { get; init; }

    /// <summary>What is left of a coil's ohms when turns are shorted: a share.</summary>
    public required FigureRange ShortedLeft { get; init; }

    /// <summary>What is left of a coil's ohms where shorted turns must be tried out one by one, because no reading leaves them open: shares of it.</summary>
    public required FigureSteps ShortedSteps { get; init; }

    /// <summary>How fast more or fewer shorted turns than that become unlikely: the logarithm's scale.</summary>
    public required Judgement ShortedTail { get; init; }

    /// <summary>Ohms of a protector between its own leads, cold.</summary>
    public required FigureRange ProtectorOhms { get; init; }

    /// <summary>What reads more ohms is no protector, not even one with burnt contacts.</summary>
    public required Judgement ProtectorOhmsMost { get; init; }

    /// <summary>How often a start switch reads open at rest; a probability for each motor that has one.</summary>
    public required Judgement SwitchOpen { get; init; }

    /// <summary>How often a protector reads open cold; a probability for each motor that has one.</summary>
    public required Judgement ProtectorOpen { get; init; }

    /// <summary>How often the capacitor of a motor that has one inside stands in the way of the meter when nothing is said; a probability.</summary>
    public required Judgement CapacitorInTheWay { get; init; }

    /// <summary>How likely a motor of a kind that needs a capacitor is one when none was found, against when one was; a ratio.</summary>
    public required Judgement CapacitorMissed { get; init; }

    /// <summary>How likely a kind of motor is that goes against what a look at it or a turn of its shaft has told, against one that goes with it; a ratio.</summary>
    public required Judgement LookMissed { get; init; }

    /// <summary>How likely a lead that was followed from the brushes of slip rings is none of a rotor's; a probability.</summary>
    public required Judgement RingLeadMistaken { get; init; }

    /// <summary>How far two speeds of a plate must lie apart to be those of a motor with two speeds; their ratio.</summary>
    public required Judgement SpeedsApart { get; init; }

    /// <summary>How likely a motor of one speed is under a plate with two, against one of two speeds; a ratio.</summary>
    public required Judgement SpeedsMisread { get; init; }

    /// <summary>How far two voltages of a plate, or their ratio and that of a connection table, may lie apart and count as the same; a share.</summary>
    public required Judgement VoltsAlike { get; init; }

    /// <summary>How likely a motor for two voltages is when one was read from its plate, against one for a single voltage; a ratio.</summary>
    public required Judgement OneVoltsRead { get; init; }

    /// <summary>How likely a motor of another kind may be while a look that nobody has taken would tell it; a probability.</summary>
    public required Judgement UnseenTurnsRoles { get; init; }

    /// <summary>How likely a sound motor of another kind may be before a look is wanted ahead of calling a motor faulty; a probability.</summary>
    public required Judgement SoundUnseen { get; init; }

    /// <summary>How likely another kind of motor with something the matter may be while one without is still called by its roles; a probability.</summary>
    public required Judgement FaultTurnsLayout { get; init; }

    /// <summary>How likely a motor with brushes is when nobody spoke of brushes, against other motors with as many leads; a ratio.</summary>
    public required Judgement BrushesUnsaid { get; init; }

    /// <summary>How likely an accessory's leads lie among the winding leads when nobody spoke of one, against how often motors have it; a ratio.</summary>
    public required Judgement AccessoryUnsaid { get; init; }

    /// <summary>How fast ratios of windings outside their usual range become unlikely: the logarithm's scale.</summary>
    public required Judgement RatioTail { get; init; }

    /// <summary>The share that one class of explanations must hold before it settles the matter.</summary>
    public required Judgement Enough { get; init; }

    /// <summary>How likely a single slip may turn one winding into another before it is borne out; a probability.</summary>
    public required Judgement SlipTurnsRoles { get; init; }

    /// <summary>How likely a single slip in a motor with something the matter may turn one winding into another before it is borne out; a probability.</summary>
    public required Judgement SlipAndFaultTurnRoles { get; init; }

    /// <summary><see cref="SlipTurnsRoles"/> of a table of readings of a motor that nobody has at hand; a probability.</summary>
    public required Judgement SlipTurnsTable { get; init; }

    /// <summary><see cref="SlipAndFaultTurnRoles"/> of a table of readings of a motor that nobody has at hand; a probability.</summary>
    public required Judgement SlipAndFaultTurnTable { get; init; }

    /// <summary>How likely the two halves of a winding lie on poles of their own, so that one hardly shows what is fed to the other; a probability.</summary>
    public required Judgement OwnPoles { get; init; }

    /// <summary>How likely such halves show nothing of each other at all; a probability.</summary>
    public required Judgement OwnPolesNothing { get; init; }

    /// <summary>How likely like coils on one axis show only as much as phases would; a probability.</summary>
    public required Judgement HalvesLoaded { get; init; }

    /// <summary>How likely a test between windings shows what it should not; a probability.</summary>
    public required Judgement TestMisread { get; init; }

    /// <summary>How likely a test between windings must settle the matter, to be asked for; a probability.</summary>
    public required Judgement TestSettles { get; init; }

    /// <summary>The share above which one class of explanations is near enough to settled for the next test to settle it.</summary>
    public required Judgement TestLeaves { get; init; }

    /// <summary>How likely a motor with brushes may be while windings are still fed; a probability.</summary>
    public required Judgement BrushesBarTest { get; init; }
}

/// <summary>A figure with the place it comes from.</summary>
public sealed record Judgement
{
    /// <summary>The figure; its meaning and unit are those of the member that holds it.</summary>
    public required double Value { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>A range with the place it comes from.</summary>
public sealed record FigureRange
{
    /// <summary>The least.</summary>
    public required double Low { get; init; }

    /// <summary>The greatest.</summary>
    public required double High { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>Several figures of one kind with the place they come from.</summary>
public sealed record FigureSteps
{
    /// <summary>The figures; their meaning and unit are those of the member that holds them.</summary>
    public required IReadOnlyList<double> Values { get; init; }

    /// <summary>Where they come from.</summary>
    public required Source Source { get; init; }
}

/// <summary>What a meter does in ohms.</summary>
public sealed record MeterFigures
{
    /// <summary>Error in percent of the reading.</summary>
    public required double Percent { get; init; }

    /// <summary>Error in counts of the last digit.</summary>
    public required double Counts { get; init; }

    /// <summary>Ohms of the test leads held together.</summary>
    public required double TestLeadOhms { get; init; }

    /// <summary>The ranges, the lowest first.</summary>
    public required IReadOnlyList<MeterRange> Ranges { get; init; }

    /// <summary>The highest resistance at which a continuity tester still beeps, in ohms.</summary>
    public required double BeepOhms { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required Source Source { get; init; }
}

/// <summary>A range of a meter.</summary>
public sealed record MeterRange
{
    /// <summary>The highest ohms of the range.</summary>
    public required double UpToOhms { get; init; }

    /// <summary>What one count is worth, in ohms.</summary>
    public required double CountOhms { get; init; }
}
