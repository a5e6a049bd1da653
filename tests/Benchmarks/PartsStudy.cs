using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Tests;
using Coach = WireCoach.Rules.Coaching.Coach;

namespace WireCoach.Benchmarks;

/// <summary>What the parts of a turn cost, as ratios of one run: reading the words, assessing the case early and late, reading the knowledge.</summary>
internal static class PartsStudy
{
    public static void Run(string[] args) => BenchmarkRunner.Run<TurnParts>(
        DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)).WithOptions(ConfigOptions.DisableLogFile).WithArtifactsPath(Path.Combine(Repository.Root, ".artifacts", "benchmarks")), args);
}

/// <summary>A turn of the brine pump's job, part by part; reading its first message is what the others are held against.</summary>
[MemoryDiagnoser]
public class TurnParts
{
    private const string First = "brine pump motor from fernhollow, plate says 3/4 hp 115/230 10.4/5.2A 1140, single phase, cap on top. six wires no marks. going on 240";
    private const string Fault = "the brine pump hums and trips after a few seconds, if I spin the shaft it runs either way";

    private readonly TradeKnowledge _knowledge;
    private readonly Listener _listener;
    private readonly Coach _coach;
    private readonly CaseFile _opened;
    private readonly CaseFile _failing;
    private readonly CaseFile _read;

    public TurnParts()
    {
        _knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        _listener = new Listener(_knowledge);
        _coach = new Coach(_knowledge);
        _opened = Case(First);
        _failing = Case(Fault);
        _read = Case($"{First}. leads 1 2 3 4 5 6", "isolated", "discharged", "1 to 4 1.7", "2 to 6 1.8", "3 to 5 4.1");
    }

    [Benchmark(Baseline = true)]
    public int ReadAMessage() => _listener.Understand(First).Facts.Count;

    [Benchmark]
    public string AssessAnOpening() => _coach.Assess(_opened).Status;

    [Benchmark]
    public string AssessAFault() => _coach.Assess(_failing).Status;

    [Benchmark]
    public string AssessReadings() => _coach.Assess(_read).Status;

    [Benchmark]
    public int LoadTheKnowledge() => KnowledgeFolder.Load(KnowledgeFolder.Beside).Causes.Count;

    private CaseFile Case(params string[] said)
    {
        var facts = new List<Fact>();
        foreach (var text in said)
        {
            string[] leads = [.. facts.OfType<Fact.Lead>().Select(lead => lead.Tag)];
            var before = facts.Count;
            facts.AddRange(_listener.Understand(text, leads).Facts.Select((fact, at) => fact with { FactId = $"f{before + at + 1}" }));
        }

        return CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);
    }
}
