using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Language;

namespace WireCoach.Benchmarks;

/// <summary>How long a message takes to be read, and how the time grows with its length: about 2 for each doubling where each word costs the same.</summary>
internal static class ListenStudy
{
    private const int Rounds = 7;

    private static readonly int[] Lengths = [2_500, 5_000, 10_000, 20_000];

    private static readonly string[] Hard = ["1-4 1.7, ", "a", "between 1 and ", "1/2/3/4-", "won't start but hums when I spin it by hand and ", "((((", "1,000,000 ", "red to blue to red to ", "no not never ", "230 V ", "12 "];

    public static void Run(string[] args)
    {
        var listener = new Listener(KnowledgeFolder.Load(KnowledgeFolder.Beside));
        foreach (var piece in Hard)
        {
            Time(listener, piece, Lengths[0]); // compiled before it is timed
        }

        const string Usual = "brine pump motor from fernhollow, plate says 3/4 hp 115/230 10.4/5.2A 1140, single phase, cap on top. six wires no marks. going on 240. it just hums and if I give it a flick it goes, smells a bit hot, no smoke though. 1-4 is 1.7, 1-2 nothing, 2-6 1.7, 3-5 3.6. what should I check next?";
        Console.WriteLine($"a usual message of {Usual.Length} characters: {Time(listener, Usual, Usual.Length):0.00} ms");
        foreach (var piece in Hard)
        {
            var times = Lengths.Select(length => Time(listener, piece, length)).ToList();
            Console.WriteLine($"{string.Join(", ", times.Select(time => $"{time:0.0}"))} ms for {string.Join(", ", Lengths)} characters of \"{piece}\": {string.Join(", ", times.Skip(1).Zip(times, (longer, shorter) => $"{longer / shorter:0.0}"))} each doubling");
        }
    }

    private static double Time(Listener listener, string piece, int length)
    {
        var text = string.Concat(Enumerable.Repeat(piece, length / piece.Length));
        return Enumerable.Range(0, Rounds).Min(_ =>
        {
            var started = Stopwatch.GetTimestamp();
            listener.Understand(text);
            return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        });
    }
}
