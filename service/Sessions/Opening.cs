using System.Security.Cryptography;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Reads what a session is opened with.</summary>
internal sealed class Opening(FactCheck check, Hearing hearing, PracticeBench bench, Coach coach)
{
    public const int NameLength = 80;

    /// <summary>The opening, and what it gives to the first turn.</summary>
    public Answer<Begun> Read(NewSession opening)
    {
        var problems = Wrong(opening).ToList();
        if (problems.Count > 0)
        {
            return Answer<Begun>.Refused(problems);
        }

        var practice = opening.Practice is { Seed: null } chosen ? chosen with { Seed = RandomNumberGenerator.GetInt32(1, int.MaxValue) } : opening.Practice;
        var opened = new SessionEvent.Opened(opening.Role!.Value, opening.Region!.Value, Named(opening.Who), Named(opening.MotorTag), practice);
        var empty = CaseFile.From(new CaseOpening(opened.Role, opened.Region, practice is not null), []);
        var seen = practice is null ? Answer<IReadOnlyList<Fact>>.Given([]) : bench.FirstSight(practice);
        if (!seen.IsGiven)
        {
            return Answer<Begun>.Refused(seen.Problems);
        }

        problems.AddRange((opening.Instruments ?? []).SelectMany((id, at) => check.Against(empty, Instrument(id), $"instruments[{at}]")));
        problems.AddRange((opening.Motor ?? new Dictionary<string, PlateValue>()).SelectMany(field => check.Against(empty, Plate(field), $"motor.{field.Key}")));
        if (problems.Count > 0)
        {
            return Answer<Begun>.Refused(problems);
        }

        var taken = check.Check(empty, [.. seen.Value, .. Facts(opening)], "motor");
        if (!taken.IsGiven)
        {
            return Answer<Begun>.Refused(taken.Problems);
        }

        if (opening.Text is null)
        {
            return new Begun(opened, new Given { Facts = taken.Value });
        }

        var file = taken.Value.Aggregate(empty, (known, fact) => known.With(fact));
        var heard = hearing.Hear(file, coach.Assess(file).Next, opening.Text);
        return heard.IsGiven
            ? new Begun(opened, heard.Value.Given with { Facts = [.. taken.Value, .. heard.Value.Given.Facts] })
            : Answer<Begun>.Refused(heard.Problems);
    }

    private static IEnumerable<Problem> Wrong(NewSession opening)
    {
        if (opening.Role is not { } role || !Enum.IsDefined(role))
        {
            yield return Refusals.Needed("role", "technician, homeowner, manager, apprentice");
        }

        if (opening.Region is not { } region || !Enum.IsDefined(region))
        {
            yield return Refusals.Needed("region", "na, iec");
        }

        if (opening.Who?.Length > NameLength)
        {
            yield return Refusals.TooLong("who", NameLength);
        }

        if (opening.MotorTag?.Length > NameLength)
        {
            yield return Refusals.TooLong("motorTag", NameLength);
        }
    }

    private static IEnumerable<Fact> Facts(NewSession opening) =>
    [
        .. (opening.Instruments ?? []).Select(Instrument),
        .. (opening.Motor ?? new Dictionary<string, PlateValue>()).Select(Plate),
    ];

    private static Fact.Instrument Instrument(string? id) => new() { Id = id ?? string.Empty, How = FactEntry.Form };

    private static Fact.Plate Plate(KeyValuePair<string, PlateValue> field) => new() { Field = field.Key, Value = field.Value, How = FactEntry.Form };

    private static string? Named(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>A session about to be opened.</summary>
    /// <param name="Opened">Its opening.</param>
    /// <param name="Given">What it gives to the first turn.</param>
    public sealed record Begun(SessionEvent.Opened Opened, Given Given);
}
