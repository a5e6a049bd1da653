using System.Globalization;
using Npgsql;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A filter as conditions of SQL; every value is a parameter.</summary>
internal sealed class PostgresQuery
{
    private readonly List<string> _conditions = [];
    private readonly List<object> _values = [];

    public static PostgresQuery Of(SessionFilter filter)
    {
        var query = new PostgresQuery();
        query.And("id = any({0})", filter.Only?.ToArray());
        query.And("id >= {0}", filter.From is { } from ? SessionId.From(from) : null);
        query.And("id < {0}", filter.To is { } to ? SessionId.From(to) : null);
        query.And("role = {0}", filter.Role is { } role ? (int)role : null);
        query.And("status = {0}", Given(filter.Status));
        query.And("verdict = {0}", Given(filter.Verdict));
        query.And("who = {0}", Given(filter.Who?.ToLowerInvariant()));
        query.And("motor_tag = {0}", Given(filter.MotorTag?.ToLowerInvariant()));
        query.And("causes @> {0}", Given(filter.Cause) is { } cause ? new[] { cause } : null);
        query.And("cautions @> {0}", Given(filter.Caution) is { } caution ? new[] { caution } : null);
        foreach (var word in (filter.Text ?? string.Empty).ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            query.And("words like {0}", $"%{Literal(word)}%");
        }

        return query;
    }

    /// <summary>A text as PostgreSQL takes it: it has no character of value zero.</summary>
    public static string? Storable(string? text) => text?.Replace("\0", string.Empty, StringComparison.Ordinal);

    /// <summary>Adds a condition unless its value is missing.</summary>
    /// <param name="condition">The condition, with <c>{0}</c> for the value.</param>
    /// <param name="value">The value.</param>
    public PostgresQuery And(string condition, object? value)
    {
        if (value is not null)
        {
            _values.Add(value);
            _conditions.Add(string.Format(CultureInfo.InvariantCulture, condition, $"${_values.Count}"));
        }

        return this;
    }

    /// <summary>The command that begins with a selection and ends with an order.</summary>
    public NpgsqlBatchCommand Select(string selection, string order = "")
    {
        var command = new NpgsqlBatchCommand($"{selection} where {string.Join(" and ", [.. _conditions, "true"])} {order}");
        _values.ForEach(value => command.Parameters.Add(new() { Value = value }));
        return command;
    }

    private static string? Given(string? text) => string.IsNullOrEmpty(text) ? null : Storable(text);

    private static string Literal(string word) => Storable(word)!
        .Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);
}
