using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The rise of the winding by its resistance, once the hot ohms were told: what is still missing is asked, then it is judged against the class.</summary>
internal static class HeatUnderLoad
{
    private const string Hot = "hot-resistance";
    private const string Cold = "cold-resistance";
    private const string ColdCelsius = "cold-celsius";
    private const string Ambient = "ambient-celsius";
    private const string Class = "plate.insulationClass";

    public static Question? Next(Workup work) => Told(work, Hot) is null || Refused(work)
        ? null
        : Wanted(work, Cold, ColdOhms(work)) ?? Wanted(work, ColdCelsius, Told(work, ColdCelsius)) ?? Wanted(work, Ambient, Told(work, Ambient))
            ?? (Letter(work) is not null || work.Skipped(Class) ? null : work.Ask.Of(Class));

    /// <summary>How to go about it after a good first run, and the judgement once everything is there.</summary>
    public static IEnumerable<Statement> Say(Workup work)
    {
        if (Told(work, Hot) is not { } hot)
        {
            return FirstStart.Verified(work) ? [Statement.Of("heat.rise-offer")] : [];
        }

        if (ColdOhms(work) is not { } cold || Told(work, ColdCelsius) is not { } coldCelsius || Told(work, Ambient) is not { } ambient)
        {
            return [];
        }

        var input = new HeatInput
        {
            ColdOhms = cold,
            ColdCelsius = coldCelsius,
            HotOhms = hot,
            AmbientCelsius = ambient,
            InsulationClass = Letter(work) ?? string.Empty,
            ServiceFactor = work.File.Plate.ServiceFactor,
        };
        return Letter(work) is null ? RiseAlone(work, input) : Judged(WindingHeat.Judge(work.Knowledge, input), report => [report.Why]);
    }

    private static IReadOnlyList<Statement> RiseAlone(Workup work, HeatInput input) => work.Skipped(Class)
        ? Judged(WindingHeat.Rises(work.Knowledge, input), risen => [Statement.Of("heat.rise-no-class").With("rise", risen.Rise).With("hot", risen.Hot)])
        : [];

    private static IReadOnlyList<Statement> Judged<T>(Answer<T> answer, Func<T, IReadOnlyList<Statement>> say)
        where T : class =>
        answer.IsGiven ? say(answer.Value) : [.. answer.Problems.Select(problem => problem.Advice)];

    private static Question? Wanted(Workup work, string test, double? known) => known is not null || work.Skipped(test) ? null : work.Ask.Of(test);

    /// <summary>Whether a figure was refused that nothing else can stand for.</summary>
    private static bool Refused(Workup work) => work.Skipped(Cold) || work.Skipped(ColdCelsius) || work.Skipped(Ambient);

    private static string? Letter(Workup work) => work.File.Plate.Text("insulationClass") is { Length: > 0 } letter ? letter : null;

    private static double? Told(Workup work, string test) => work.File.BenchTests.LastOrDefault(told => told.Test == test)?.Value;

    /// <summary>The cold ohms that were told, or those of the joints before the first start, where only one pair of joints was read.</summary>
    private static double? ColdOhms(Workup work) => Told(work, Cold)
        ?? (work.File.BenchTests.Where(test => test is { Test: Fact.BenchTest.JointResistance, Value: not null } && !test.Read.Contains(Fact.Reading.Frame, StringComparer.Ordinal))
            .GroupBy(test => string.Join('-', test.Read), StringComparer.Ordinal).ToList() is [var only] ? only.Last().Value : null);
}
