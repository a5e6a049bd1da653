using System.Text;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>How much of what people write is understood, by kind, and what is read wrongly.</summary>
public sealed class ListenerTest(ITestOutputHelper output)
{
    private const string Does = "- what it does";
    private const string Before = "- its history";
    private const string Denied = "- that it is not so";

    private static readonly Listener Listener = new(Trade.Knowledge);

    /// <summary>Kinds that are written into every expectation; the others count only where an expectation names them.</summary>
    private static readonly HashSet<string> Scored = ["symptom", "reading", "plate", "supply", "capacitor", "insulation", "bench", "running", "joint", "confirm"];

    /// <summary>How many lines of a set are heard as they were written, and how many that nobody wrote at the most: what is understood once stays understood, but for one that goes where others come.</summary>
    private static readonly Dictionary<string, (int Right, int Invented)> Kept = new(StringComparer.Ordinal)
    {
        ["development-first.yaml"] = (162, 1),
        ["development-second.yaml"] = (163, 7),
        ["development-third.yaml"] = (199, 12),
        ["development-fourth.yaml"] = (133, 7),
        ["development-fifth.yaml"] = (66, 8),
        ["development-sixth.yaml"] = (190, 7),
        ["development-seventh.yaml"] = (211, 8),
        ["development-eighth.yaml"] = (397, 41),
        ["development-ninth.yaml"] = (481, 45),
        ["development-tenth.yaml"] = (468, 36),
        ["development-eleventh.yaml"] = (437, 56),
        ["development-twelfth.yaml"] = (218, 8),
        ["development-thirteenth.yaml"] = (1020, 186),
        ["development-fifteenth.yaml"] = (69, 12),
        ["development-sixteenth.yaml"] = (90, 11),
    };

    /// <summary>Symptoms that tell what was before, not what it does.</summary>
    private static readonly HashSet<string> History = ["got-wet", "stood-unused", "just-rewired", "supply-changed", "motor-replaced", "protection-bypassed"];

    private static readonly HashSet<string> HeldOut = ["held-out.yaml", "held-out-second.yaml", "held-out-third.yaml", "held-out-fourth.yaml", "held-out-fifth.yaml"];

    [Theory]
    [InlineData("development-first.yaml")]
    [InlineData("development-second.yaml")]
    [InlineData("development-third.yaml")]
    [InlineData("development-fourth.yaml")]
    [InlineData("development-fifth.yaml")]
    [InlineData("development-sixth.yaml", 0.95, 0.95)]
    [InlineData("development-seventh.yaml", 0.95, 0.95)]
    [InlineData("held-out.yaml")]
    [InlineData("held-out-second.yaml", 0.945, 0.96)]
    [InlineData("development-eighth.yaml", 0.95, 0.90)]
    [InlineData("development-ninth.yaml", 0.90, 0.88, 0.90)]
    [InlineData("development-tenth.yaml", 0.95, 0.93)]
    [InlineData("development-eleventh.yaml", 0.93, 0.88, 0.88)]
    [InlineData("development-twelfth.yaml", 0.90, 0.90, 0)]
    [InlineData("development-thirteenth.yaml", 0.90, 0.86, 0)]
    [InlineData("development-fifteenth.yaml", 0.85, 0.87, 0)]
    [InlineData("development-sixteenth.yaml", 0.87, 0.90, 0)]
    [InlineData("development-seventeenth.yaml", 0.88, 0.84, 0)]
    [InlineData("held-out-third.yaml", 0.86, 0.875, 0)]
    [InlineData("held-out-fourth.yaml", 0.90, 0.91, 0)]
    [InlineData("held-out-fifth.yaml", 0.89, 0.87, 0)]
    public void Most_of_what_people_write_is_understood(string file, double recall = 0.90, double precision = 0.90, double figures = 0.92)
    {
        var (table, counts, _) = Measure(file);
        output.WriteLine(table);
        var symptoms = counts["symptom"];
        Assert.True(symptoms.Recall >= recall, table);
        Assert.True(symptoms.Precision >= precision, table);
        var (all, (right, invented)) = (Count.Sum(counts.Values), Kept.GetValueOrDefault(file, (0, int.MaxValue)));
        Assert.True(all.Right >= right && all.Invented <= invented, $"{all}\n{table}");
        Assert.True(Count.Sum(counts.Where(kind => kind.Key is "reading" or "plate" or "supply").Select(kind => kind.Value)).F1 >= figures, table);
    }

    [Theory]
    [InlineData("I have a 24 V transformer", 24.0)]
    [InlineData("I've got an isolating transformer, it gives 18 volts", 18.0)]
    [InlineData("a 12 volt transformer", 12.0)]
    [InlineData("I have a transformer", null)]
    public void A_test_transformer_is_heard_with_its_volts(string text, double? volts)
    {
        var heard = Listener.Hear(text, ["1", "2"], null, null).Value!;
        Assert.Equal(volts, heard.Facts.OfType<WireCoach.Rules.Cases.Fact.Instrument>().Single().Volts);
        Assert.Empty(heard.Facts.OfType<WireCoach.Rules.Cases.Fact.Supply>());
    }

    /// <summary>
    /// What nobody learnt from and nobody read: of ordinary messages all symptoms and denials together, and of all sets, also of the third with its words that were looked for to be unusual, what is told to be so.
    /// What is not so is said in so many ways that two people who label it agree on no more than five in six.
    /// </summary>
    [Fact]
    public void Symptoms_of_messages_that_nobody_has_read_are_heard()
    {
        var parts = HeldOut.Where(file => file != "held-out.yaml").ToDictionary(file => file, file => Measure(file).Parts, StringComparer.Ordinal);
        var ordinary = Count.Sum(parts.Where(set => set.Key != "held-out-third.yaml").SelectMany(set => set.Value.Values));
        var told = Of(Does) + Of(Before);
        output.WriteLine($"{Does} {Of(Does)}{Environment.NewLine}{Before} {Of(Before)}{Environment.NewLine}{Denied} {Of(Denied)}{Environment.NewLine}told {told}{Environment.NewLine}all {told + Of(Denied)}{Environment.NewLine}ordinary {ordinary}");
        Assert.True(told is { Recall: >= 0.90, Precision: >= 0.90 }, told.ToString());
        Assert.True(ordinary is { Recall: >= 0.90, Precision: >= 0.90 }, ordinary.ToString());

        Count Of(string part) => Count.Sum(parts.Values.Select(one => one[part]));
    }

    private static (string Table, SortedDictionary<string, Count> Counts, SortedDictionary<string, Count> Parts) Measure(string file)
    {
        var (counts, parts) = (new SortedDictionary<string, Count>(StringComparer.Ordinal), new SortedDictionary<string, Count>(StringComparer.Ordinal));
        var table = new StringBuilder().AppendLine(file);
        foreach (var utterance in Utterance.Read(file))
        {
            var expected = Conventional(utterance.Expect);
            var named = utterance.Expect.Select(Brief.Kind).ToHashSet(StringComparer.Ordinal);
            var heard = Brief.Of(utterance.Heard(Listener)).Where(line => Scored.Contains(Brief.Kind(line)) || named.Contains(Brief.Kind(line))).ToList();
            heard = [.. heard.Select(line => line.EndsWith(" ran", StringComparison.Ordinal) && expected.Contains(line[..^4]) ? line[..^4] : line)];
            expected.RemoveAll(line => IsLeftToFigures(line, heard));
            var missed = expected.Except(heard.Concat(heard.Select(line => line.Split(' ')[0]).Where(kind => kind is "capacitor" or "application")), StringComparer.Ordinal).ToList();
            var invented = heard.Except(expected, StringComparer.Ordinal).Where(line => !expected.Contains(Brief.Kind(line)) && Brief.Kind(line) is not "application" && !Follows(line, expected)).ToList();
            Add(counts, Brief.Kind);
            Add(parts, line => Brief.Kind(line) != "symptom" ? null : line.StartsWith("no ", StringComparison.Ordinal) ? Denied : History.Contains(line) ? Before : Does);

            void Add(SortedDictionary<string, Count> to, Func<string, string?> kind)
            {
                foreach (var one in expected.Concat(heard).Select(kind).OfType<string>().Distinct(StringComparer.Ordinal))
                {
                    to[one] = to.GetValueOrDefault(one, Count.None)
                        + new Count(expected.Count(line => kind(line) == one && !missed.Contains(line)), missed.Count(line => kind(line) == one), invented.Count(line => kind(line) == one));
                }
            }

            // A held-out set shows its figures only: who tunes to its lines has no held-out set any more.
            if (missed.Count + invented.Count > 0 && !HeldOut.Contains(file))
            {
                table.AppendLine($"  \"{utterance.Say}\" missed [{string.Join("; ", missed)}] invented [{string.Join("; ", invented)}]");
            }
        }

        foreach (var (kind, count) in counts.SelectMany(kind => kind.Key == "symptom" ? parts.Prepend(kind) : [kind]))
        {
            table.AppendLine($"{kind,-20} recall {count.Recall:0.000} precision {count.Precision:0.000} F1 {count.F1:0.000}  ({count.Right} right, {count.Missed} missed, {count.Invented} invented)");
        }

        return (table.ToString(), counts, parts);
    }

    /// <summary>The plate's pairs as the program writes them, the lower volts first: "690/400 V, 8.6/14.9 A" is 400/690 V, 14.9/8.6 A, and 208-230/460 V are three.</summary>
    private static List<string> Conventional(string[] lines)
    {
        var turned = lines.Any(line => Pair(line, "plate volts ") is [var first, var second] && first > second);
        return [.. lines.Select(line => line.StartsWith("plate volts ", StringComparison.Ordinal) ? line.Replace('-', '/') : line).Select(line => turned && (Pair(line, "plate volts ") ?? Pair(line, "plate amps ")) is [_, _] ? Turned(line) : line)];
    }

    private static double[]? Pair(string line, string start) =>
        line.StartsWith(start, StringComparison.Ordinal) ? [.. line[start.Length..].Split('/').Select(number => double.TryParse(number, System.Globalization.CultureInfo.InvariantCulture, out var value) ? value : 0)] : null;

    private static string Turned(string line)
    {
        var space = line.LastIndexOf(' ') + 1;
        return line[..space] + string.Join('/', line[space..].Split('/').Reverse());
    }

    /// <summary>What follows from other expected lines is not invented: who speaks of a swollen capacitor has one, amps against the plate's are too many or not, and three currents are equal or not.</summary>
    private static bool Follows(string line, List<string> expected) => line.Replace("no ", string.Empty, StringComparison.Ordinal) switch
    {
        "capacitor" => expected.Exists(other => other.EndsWith("capacitor-swollen", StringComparison.Ordinal)),
        "high-current" => expected.Exists(other => IsLine(other) || IsDrawn(other)) && expected.Exists(other => other.StartsWith("plate amps", StringComparison.Ordinal)),
        "unequal-phase-currents" => expected.Count(IsLine) > 1,
        _ => false,
    };

    /// <summary>"14.8, 15.1 and 21 A": the figures were heard, and whether they are unequal, too many or too few is reckoned from them; that counts as neither right nor missed.</summary>
    private static bool IsLeftToFigures(string line, List<string> heard)
    {
        var lines = heard.Count(IsLine);
        var running = heard.FindAll(other => other.StartsWith("running", StringComparison.Ordinal));
        return !heard.Contains(line) && line.Replace("no ", string.Empty, StringComparison.Ordinal) switch
        {
            "unequal-phase-currents" => lines > 1,
            "high-current" => (lines > 0 || running.Exists(IsDrawn)) && heard.Exists(other => other.StartsWith("plate amps", StringComparison.Ordinal)),
            "low-voltage-at-motor" => running.Exists(other => other.Contains(" V=", StringComparison.Ordinal)) || heard.Exists(other => other.StartsWith("bench voltage-at-motor", StringComparison.Ordinal) || other.StartsWith("bench supply-voltage", StringComparison.Ordinal)),
            _ => false,
        };
    }

    private static bool IsLine(string line) => line.StartsWith("bench line-currents", StringComparison.Ordinal);

    private static bool IsDrawn(string line) => line.StartsWith("running", StringComparison.Ordinal) && line.Contains(" A=", StringComparison.Ordinal);

    private sealed record Count(int Right, int Missed, int Invented)
    {
        public static readonly Count None = new(0, 0, 0);

        public double Recall => Right + Missed == 0 ? 1 : Right / (double)(Right + Missed);

        public double Precision => Right + Invented == 0 ? 1 : Right / (double)(Right + Invented);

        public double F1 => Recall + Precision == 0 ? 0 : 2 * Recall * Precision / (Recall + Precision);

        public static Count operator +(Count one, Count other) => new(one.Right + other.Right, one.Missed + other.Missed, one.Invented + other.Invented);

        public static Count Sum(IEnumerable<Count> counts) => counts.Aggregate(None, (sum, count) => sum + count);
    }
}
