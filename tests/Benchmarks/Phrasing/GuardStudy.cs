using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Service.Phrasing;
using WireCoach.Service.Tests.Phrasing;

namespace WireCoach.Benchmarks.Phrasing;

/// <summary>The whole corpus of rewordings through the guard, and chance text against its patience.</summary>
internal static class GuardStudy
{
    public static void Run(string[] args)
    {
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        var (guard, sources) = (new Guard(knowledge.Phrasing), Corpus.Sources(knowledge));
        Console.WriteLine($"{sources.Count} sentences");
        Print("by mutation", guard, Corpus.Faithful(sources).ToList(), Corpus.Unfaithful(sources, seed: 8).ToList());
        Print("as a fluent writer does", guard, NaturalCorpus.Faithful(sources).ToList(), NaturalCorpus.Unfaithful(sources).ToList());
        var hand = HandCorpus.Read();
        Print("by hand", guard, hand.Good, hand.Bad);
        var free = HandCorpus.Read(HandCorpus.Free);
        Print("by hand, of a writer who was not told what may be changed", guard, free.Good, free.Bad);
        Fuzz(guard, sources, args.Length > 0 ? int.Parse(args[0]) : 100_000);
    }

    private static void Print(string made, Guard guard, List<(string Kind, string Source, string Text)> good, List<(string Kind, string Source, string Text)> bad)
    {
        var refused = good.Where(pair => !guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful).ToList();
        var accepted = bad.Where(pair => guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful).ToList();
        Console.WriteLine($"{made}:");
        Console.WriteLine($"{good.Count} faithful rewordings: {refused.Count} refused ({100.0 * refused.Count / good.Count:F1} %)");
        foreach (var kind in refused.GroupBy(pair => pair.Kind).OrderByDescending(kind => kind.Count()).Take(12))
        {
            Console.WriteLine($"  {kind.Count(),5}  {kind.Key}: {kind.First().Text} ({guard.Compare(kind.First().Source, kind.First().Text, Corpus.Leads).Reason})");
        }

        Console.WriteLine($"{bad.Count} unfaithful rewordings: {accepted.Count} accepted");
        foreach (var pair in accepted.Take(40))
        {
            Console.WriteLine($"  {pair.Kind}: {pair.Source} | {pair.Text}");
        }
    }

    private static void Fuzz(Guard guard, List<string> sources, int times)
    {
        var chance = new Random(8);
        var (took, through, repeated) = (new List<double>(times), 0, 0.0);
        for (var again = 0; again < times; again++)
        {
            var source = sources[chance.Next(sources.Count)];
            var text = source.ToCharArray();
            for (var wounds = chance.Next(1, 6); wounds > 0; wounds--)
            {
                text[chance.Next(text.Length)] = (char)(chance.Next(3) == 0 ? chance.Next(0x10000) : chance.Next(32, 127));
            }

            var (wounded, first) = (new string(text), Took(guard, source, new string(text), out var passes));
            took.Add(first);
            repeated = Math.Max(repeated, first > 5 ? Took(guard, source, wounded, out _) : 0);
            if (passes && ++through <= 12)
            {
                Console.WriteLine($"  passes: {source} | {wounded}");
            }
        }

        took.Sort();
        Console.WriteLine($"{times} strings of chance: none threw, {through} passed; 99.9 % took less than {took[times * 999 / 1000]:F2} ms, the longest {took[^1]:F2} ms; those above 5 ms took at most {repeated:F2} ms when timed again");
    }

    private static double Took(Guard guard, string source, string text, out bool passes)
    {
        var started = Stopwatch.GetTimestamp();
        passes = guard.Compare(source, text, Corpus.Leads).IsFaithful;
        return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
    }
}
