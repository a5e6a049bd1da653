using System.Text;
using WireCoach.Knowledge;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>How much of what people write is understood, by kind, and what is read wrongly.</summary>
public sealed class ListenerTest(ITestOutputHelper output)
{
    private static readonly Listener Listener = new(KnowledgeFolder.Load(KnowledgeFolder.Beside));

    /// <summary>Kinds that are written into every expectation; the others count only where an expectation names them.</summary>
    private static readonly HashSet<string> Scored = ["symptom", "reading", "plate", "supply", "capacitor", "insulation", "bench", "running", "joint", "confirm"];

    private const string HeldOut = "held-out.yaml";

    [Theory]
    [InlineData("development-first.yaml")]
    [InlineData("development-second.yaml")]
    [InlineData("development-third.yaml")]
    [InlineData("development-fourth.yaml")]
    [InlineData("development-fifth.yaml")]
    [InlineData(HeldOut)]
    public void Most_of_what_people_write_is_understood(string file)
    {
        var (table, counts) = Measure(file);
        output.WriteLine(table);
        var symptoms = counts["symptom"];
        Assert.True(symptoms.Recall >= 0.90, table);
        Assert.True(symptoms.Precision >= 0.90, table);
        Assert.True(Count.Sum(counts.Where(kind => kind.Key is "reading" or "plate" or "supply").Select(kind => kind.Value)).F1 >= 0.92, table);
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

    private static (string Table, SortedDictionary<string, Count> Counts) Measure(string file)
    {
        var counts = new SortedDictionary<string, Count>(StringComparer.Ordinal);
        var table = new StringBuilder().AppendLine(file);
        foreach (var utterance in Utterance.Read(file))
        {
            var named = utterance.Expect.Select(Brief.Kind).ToHashSet(StringComparer.Ordinal);
            var heard = Brief.Of(utterance.Heard(Listener)).Where(line => Scored.Contains(Brief.Kind(line)) || named.Contains(Brief.Kind(line))).ToList();
            var missed = utterance.Expect.Except(heard.Concat(heard.Select(line => line.Split(' ')[0]).Where(kind => kind is "capacitor" or "application")), StringComparer.Ordinal).ToList();
            var invented = heard.Except(utterance.Expect, StringComparer.Ordinal).Where(line => !utterance.Expect.Contains(Brief.Kind(line)) && Brief.Kind(line) is not "application").ToList();
            foreach (var kind in utterance.Expect.Concat(heard).Select(Brief.Kind).Distinct(StringComparer.Ordinal))
            {
                var right = utterance.Expect.Count(line => Brief.Kind(line) == kind) - missed.Count(line => Brief.Kind(line) == kind);
                counts[kind] = counts.GetValueOrDefault(kind, Count.None) + new Count(right, missed.Count(line => Brief.Kind(line) == kind), invented.Count(line => Brief.Kind(line) == kind));
            }

            // The held-out set shows its figures only: who tunes to its lines has no held-out set any more.
            if (missed.Count + invented.Count > 0 && file != HeldOut)
            {
                table.AppendLine($"  \"{utterance.Say}\" missed [{string.Join("; ", missed)}] invented [{string.Join("; ", invented)}]");
            }
        }

        foreach (var (kind, count) in counts)
        {
            table.AppendLine($"{kind,-14} recall {count.Recall:0.000} precision {count.Precision:0.000} F1 {count.F1:0.000}  ({count.Right} right, {count.Missed} missed, {count.Invented} invented)");
        }

        return (table.ToString(), counts);
    }

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
