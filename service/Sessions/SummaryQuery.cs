using LiteDB;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A filter as the conditions that LiteDB evaluates.</summary>
internal static class SummaryQuery
{
    public static List<BsonExpression> Of(SessionFilter filter)
    {
        var where = new List<BsonExpression>();
        if (filter.Only is { } only)
        {
            where.Add(Query.In("_id", only.OrderDescending(StringComparer.Ordinal).Select(id => new BsonValue(id)))); // LiteDB gives them in the order asked for
        }

        Add(filter.From, from => Query.GTE("_id", SessionId.From(from)));
        Add(filter.To, to => Query.LT("_id", SessionId.From(to)));
        Add(filter.Role, role => Query.EQ("role", (int)role));
        AddText(filter.Status, status => Query.EQ("status", status));
        AddText(filter.Verdict, verdict => Query.EQ("verdict", verdict));
        AddText(filter.Who, who => BsonExpression.Create("LOWER($.who) = @0", who.ToLowerInvariant()));
        AddText(filter.MotorTag, tag => BsonExpression.Create("LOWER($.motorTag) = @0", tag.ToLowerInvariant()));
        AddText(filter.Cause, cause => BsonExpression.Create("$.causes[*] ANY = @0", cause));
        AddText(filter.Caution, caution => BsonExpression.Create("$.cautions[*] ANY = @0", caution));
        foreach (var word in (filter.Text ?? string.Empty).ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            where.Add(BsonExpression.Create("INDEXOF($.words, @0) >= 0", word)); // LIKE would take % and _ for more than themselves
        }

        return where;

        void Add<T>(T? member, Func<T, BsonExpression> condition)
            where T : struct
        {
            if (member is { } value)
            {
                where.Add(condition(value));
            }
        }

        void AddText(string? member, Func<string, BsonExpression> condition)
        {
            if (!string.IsNullOrEmpty(member))
            {
                where.Add(condition(member));
            }
        }
    }
}
