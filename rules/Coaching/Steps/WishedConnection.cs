using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The connection that a person wants: delta, star, high or low voltage, or volts of the plate. It is taken where it suits the supply, and refused with the reason where not.</summary>
internal static class WishedConnection
{
    /// <summary>The request with the wish, where the supply suits it.</summary>
    public static PlanRequest In(Workup work, PlanRequest request) =>
        Row(work) is { } row && work.Rooms.Planner.Plan(request with { Connection = row }).IsGiven ? request with { Connection = row } : request;

    /// <summary>Whether the wish suits; nothing while the leads, the plate or the supply are not known.</summary>
    public static IEnumerable<Statement> Say(Workup work)
    {
        var plate = work.File.Plate.Volts;
        if (Wish(work) is not { } wish || plate.Count == 0)
        {
            return [];
        }

        if (Volts(wish) is { } volts && !plate.Contains(volts))
        {
            return [Statement.Of("coach.wish-not-on-plate", ("volts", SupplyJudge.Volts(volts)), ("plate", SupplyJudge.All(plate)))];
        }

        return Row(work) is { } row && work.File.Supply?.Volts is not null ? Judged(work, row) : [];
    }

    private static IEnumerable<Statement> Judged(Workup work, string row)
    {
        var answers = FoundLayouts.Of(work)
            .Select(motor => work.Rooms.Planner.Plan(ChooseConnection.Request(work, motor.Layout.Id, motor.Tags, work.Phases) with { Connection = row })).ToList();
        if (answers.Count > 0 && answers.TrueForAll(answer => answer.IsGiven))
        {
            return [Statement.Of("coach.wish-suits", ("connection", Called(work, row, answers.Select(answer => work.Rooms.Names.Use(answer.Value!.Row)))), ("supply", SupplyJudge.Volts(work.File.Supply!.Volts!.Value)))];
        }

        var refusals = answers.Select(Refusal).OfType<Statement>().ToList();
        return answers.Count > 0 && refusals.Count == answers.Count
            ? [refusals[0].With("row", Called(work, row, refusals.Select(refusal => refusal.Gaps.GetValueOrDefault("row", row))))]
            : [];
    }

    /// <summary>The connection's name; the word of the wish where the motors that it may be call it differently.</summary>
    private static string Called(Workup work, string row, IEnumerable<string> names) =>
        names.Distinct(StringComparer.Ordinal).ToList() is [var name] ? name : work.Rooms.Names.Use(row);

    private static Statement? Refusal(Answer<Plan> answer) =>
        answer.Problems.FirstOrDefault(problem => problem.Field == "connection" || problem.Advice.Id == "connections.row-not-for-supply")?.Advice;

    private static string? Wish(Workup work) => work.File.Choices.GetValueOrDefault(Fact.Choice.Connection);

    private static double? Volts(string wish) => double.TryParse(wish, NumberStyles.Float, CultureInfo.InvariantCulture, out var volts) ? volts : null;

    /// <summary>The wish as the tables name it: volts are those of the higher or the lower voltage of the plate.</summary>
    private static string? Row(Workup work) => Wish(work) is not { } wish ? null
        : Volts(wish) is not { } volts ? wish
        : work.File.Plate.Volts is { Count: > 1 } plate && plate.Contains(volts) ? volts == plate.Max() ? "high" : volts == plate.Min() ? "low" : null
        : null;
}
