using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What readings between leads with standard marks show of the windings, where nobody has put it in words.</summary>
/// <remarks>Marks are those of NEMA MG 1 and IEC 60034-8; a tag that is no such mark tells nothing here.</remarks>
internal static class MarkedReadings
{
    private const double Alike = 0.05;
    private const double SumFits = 0.15;
    private static readonly string[][] ThreePins = [["C", "R", "S"]];
    private static readonly string[][] PhaseCorners = [["U", "V", "W"], ["U1", "V1", "W1"], ["T1", "T2", "T3"]];
    private static readonly string[][] PhaseCoils = [["U1-U2", "V1-V2", "W1-W2"], ["T1-T4", "T2-T5", "T3-T6"]];
    private static readonly HashSet<string> Run = new(StringComparer.Ordinal) { "T1-T2", "T3-T4", "T1-T4", "U1-U2" };
    private static readonly HashSet<string> Start = new(StringComparer.Ordinal) { "T5-T8", "T5-T6", "T7-T8", "Z1-Z2" };
    private static readonly HashSet<string> ShuntField = new(StringComparer.Ordinal) { "F1-F2", "E1-E2" };

    /// <summary>The outcome of the test of resistances, or <see langword="null"/> where the marks do not tell.</summary>
    public static string? Outcome(CaseFile file)
    {
        var read = Latest(file);
        return read.Count == 0 ? null : Pins(read) ?? Field(read) ?? (IsThreePhase(file, read) ? Corners(read) ?? Coils(read) : OnePhase(read));
    }

    /// <summary>Whether the marks belong to three phases: V and W, or T9 and above.</summary>
    public static bool TellThreePhases(CaseFile file) => Marks(file).Any(mark => mark is "V1" or "W1" or "V2" or "W2" or "V" or "W" or "T9" or "T10" or "T11" or "T12");

    /// <summary>Whether the marks belong to a direct-current machine: an armature beside its field.</summary>
    public static bool TellDirectCurrent(CaseFile file) => Marks(file).Any(mark => mark is "F1" or "F2" or "E1" or "E2" or "D1" or "D2")
        || Marks(file).Any(mark => mark is "A1" or "A2");

    /// <summary>Whether the marks are the three pins of a sealed compressor.</summary>
    public static bool TellSealed(CaseFile file) => Marks(file).ToHashSet(StringComparer.Ordinal) is var marks && ThreePins[0].All(marks.Contains);

    private static IEnumerable<string> Marks(CaseFile file) =>
        file.Leads.Select(lead => lead.Marking ?? lead.Tag).Concat(file.Readings.SelectMany(reading => new[] { reading.From, reading.To })).Select(Mark);

    private static string Mark(string tag) => tag.Trim().ToUpperInvariant();

    /// <summary>The latest reading of each pair, the marks in their order.</summary>
    private static Dictionary<string, Fact.Reading> Latest(CaseFile file)
    {
        var latest = new Dictionary<string, Fact.Reading>(StringComparer.Ordinal);
        foreach (var reading in file.Readings.Where(reading => reading.Together.Count == 0))
        {
            latest[Pair(Mark(reading.From), Mark(reading.To))] = reading;
        }

        return latest;
    }

    private static string Pair(string one, string other) => string.CompareOrdinal(one, other) <= 0 ? $"{one}-{other}" : $"{other}-{one}";

    private static string? Pins(Dictionary<string, Fact.Reading> read)
    {
        if (!read.TryGetValue("C-R", out var run) | !read.TryGetValue("C-S", out var start))
        {
            return null;
        }

        read.TryGetValue("R-S", out var both);
        return (run!.Open, start!.Open) switch
        {
            (true, true) => "all-open",
            (true, false) => "run-open",
            (false, true) => "start-open",
            _ => both is { Ohms: { } sum } && run.Ohms + start.Ohms is { } parts && Math.Abs(sum - parts) <= SumFits * parts ? "normal" : null,
        };
    }

    private static string? Field(Dictionary<string, Fact.Reading> read) =>
        read.Any(one => ShuntField.Contains(one.Key) && one.Value.Open) ? "field-open" : null;

    private static bool IsThreePhase(CaseFile file, Dictionary<string, Fact.Reading> read) =>
        file.Plate.Phases is { } phases ? phases == 3
        : TellThreePhases(file) || file.Choices.GetValueOrDefault("family") == "three-phase" || read.ContainsKey("T2-T3") || read.ContainsKey("T1-T3");

    /// <summary>Corners of a star or delta: one winding is broken where two of the three pairs are open and share a lead.</summary>
    private static string? Corners(Dictionary<string, Fact.Reading> read)
    {
        foreach (var corners in PhaseCorners)
        {
            string[] pairs = [Pair(corners[0], corners[1]), Pair(corners[1], corners[2]), Pair(corners[0], corners[2])];
            List<Fact.Reading> taken = [.. pairs.Where(read.ContainsKey).Select(pair => read[pair])];
            if (taken.Count == pairs.Length)
            {
                return Three(taken);
            }
        }

        return null;
    }

    private static string? Coils(Dictionary<string, Fact.Reading> read)
    {
        foreach (var coils in PhaseCoils)
        {
            List<Fact.Reading> taken = [.. coils.Where(read.ContainsKey).Select(coil => read[coil])];
            if (taken.Exists(reading => reading.Open))
            {
                return "phase-open";
            }

            if (taken.Count == coils.Length)
            {
                return Three(taken);
            }
        }

        return null;
    }

    private static string? Three(List<Fact.Reading> readings)
    {
        List<double> ohms = [.. readings.Where(reading => reading.Ohms is not null).Select(reading => reading.Ohms!.Value)];
        return readings.TrueForAll(reading => reading.Open) ? "all-open"
            : readings.Exists(reading => reading.Open) ? "phase-open"
            : ohms.Count == readings.Count ? (ohms.Max() - ohms.Min() > Alike * ohms.Average() ? "unequal" : "normal")
            : null;
    }

    private static string? OnePhase(Dictionary<string, Fact.Reading> read) =>
        read.Any(one => Run.Contains(one.Key) && one.Value.Open) ? "run-open"
        : read.Any(one => Start.Contains(one.Key) && one.Value.Open) ? "start-open"
        : null;
}
