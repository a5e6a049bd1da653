using WireCoach.Benchmarks.Sessions;

namespace WireCoach.Benchmarks;

/// <summary>Runs one study by name, or lists them.</summary>
internal static class Program
{
    private static readonly Dictionary<string, Action<string[]>> Studies = new(StringComparer.Ordinal)
    {
        ["diagnose"] = DiagnoseStudy.Run,
        ["fuzz"] = FuzzStudy.Run,
        ["kill"] = KillStudy.Run,
        ["size"] = SizeStudy.Run,
        ["turn"] = TurnStudy.Run,
        ["identify"] = Identification.IdentifyStudy.Run,
        ["ends"] = Identification.EndsStudy.Run,
        ["optimum"] = Identification.OptimumStudy.Run,
        ["identify-cost"] = Identification.IdentifyCostStudy.Run,
        ["listen"] = ListenStudy.Run,
        ["learn"] = Learning.LearnStudy.Run,
        ["parts"] = PartsStudy.Run,
        ["solver"] = SolverStudy.Run,
        ["checker"] = CheckerStudy.Run,
        ["guard"] = Phrasing.GuardStudy.Run,
        ["waiting"] = Phrasing.WaitingStudy.Run,
    };

    private static int Main(string[] args)
    {
        if (args.Length == 0 || !Studies.TryGetValue(args[0], out var study))
        {
            Console.WriteLine($"Studies: {string.Join(", ", Studies.Keys.Order(StringComparer.Ordinal))}");
            return args.Length == 0 ? 0 : 1;
        }

        study(args[1..]);
        return 0;
    }
}
