using LiteDB;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A session in the list as LiteDB keeps it; written by hand, so that nothing is trimmed, cut or guessed.</summary>
internal static class SummaryDocument
{
    public static BsonDocument Write(SummaryFold fold)
    {
        var shown = fold.Shown;
        return new BsonDocument
        {
            ["_id"] = shown.Id,
            ["role"] = (int)shown.Role,
            ["region"] = (int)shown.Region,
            ["status"] = shown.Status,
            ["created"] = shown.CreatedAt.ToUnixTimeMilliseconds(),
            ["changed"] = shown.ChangedAt.ToUnixTimeMilliseconds(),
            ["who"] = shown.Who,
            ["motorTag"] = shown.MotorTag,
            ["practice"] = shown.Practice,
            ["title"] = shown.Title,
            ["asked"] = shown.Asked,
            ["goal"] = shown.Goal,
            ["layout"] = shown.Layout,
            ["causes"] = List(shown.Causes),
            ["cautions"] = List(shown.Cautions),
            ["confirmed"] = List(shown.Confirmed),
            ["notConfirmed"] = List(shown.NotConfirmed),
            ["touches"] = shown.Touches,
            ["facts"] = shown.Facts,
            ["retracted"] = shown.Retracted,
            ["events"] = shown.Events,
            ["verdict"] = shown.Verdict,
            ["words"] = fold.Words,
        };
    }

    public static SummaryFold Read(BsonDocument document) => new(
        new SessionSummary
        {
            Id = document["_id"].AsString,
            Role = (Role)document["role"].AsInt32,
            Region = (Region)document["region"].AsInt32,
            Status = document["status"].AsString,
            CreatedAt = DateTimeOffset.FromUnixTimeMilliseconds(document["created"].AsInt64),
            ChangedAt = DateTimeOffset.FromUnixTimeMilliseconds(document["changed"].AsInt64),
            Who = Text(document["who"]),
            MotorTag = Text(document["motorTag"]),
            Practice = document["practice"].AsBoolean,
            Title = Text(document["title"]),
            Asked = Text(document["asked"]),
            Goal = Text(document["goal"]),
            Layout = Text(document["layout"]),
            Causes = List(document["causes"]),
            Cautions = List(document["cautions"]),
            Confirmed = List(document["confirmed"]),
            NotConfirmed = List(document["notConfirmed"]),
            Touches = document["touches"].AsInt32,
            Facts = document["facts"].AsInt32,
            Retracted = document["retracted"].AsInt32,
            Events = document["events"].AsInt32,
            Verdict = Text(document["verdict"]),
        },
        document["words"].AsString);

    private static BsonArray List(IReadOnlyList<string> ids) => [.. ids.Select(id => new BsonValue(id))];

    private static string[] List(BsonValue ids) => ids.AsArray.Count == 0 ? [] : [.. ids.AsArray.Select(id => id.AsString)];

    private static string? Text(BsonValue value) => value.IsNull ? null : value.AsString;
}
