using Npgsql;

namespace WireCoach.Service.Sessions;

/// <summary>The tables in PostgreSQL: events as the journal's lines, one row a session for the list, what was deleted.</summary>
internal static class PostgresSchema
{
    /// <summary>The version of the tables; a store of a newer one is refused.</summary>
    public const int Version = 1;

    private const string Tables = """
        create table if not exists meta (name text primary key, value text not null);
        create table if not exists events (
            session text collate "C" not null, seq integer not null, line text not null, primary key (session, seq));
        create table if not exists sessions (
            id text collate "C" primary key, events integer not null, role integer not null, status text not null, verdict text,
            who text, motor_tag text, causes text[] not null, cautions text[] not null, words text not null, shown text not null);
        create table if not exists deletions (session text collate "C" primary key, at bigint not null, who text, why text not null);
        create index if not exists sessions_role on sessions (role, id);
        create index if not exists sessions_status on sessions (status, id);
        create index if not exists sessions_verdict on sessions (verdict, id);
        create index if not exists sessions_who on sessions (who, id);
        create index if not exists sessions_motor_tag on sessions (motor_tag, id);
        create index if not exists sessions_causes on sessions using gin (causes);
        create index if not exists sessions_cautions on sessions using gin (cautions);
        """;

    /// <summary>Without the extension, which some servers do not have, a search for words reads every row.</summary>
    private const string WordIndex = """
        create extension if not exists pg_trgm;
        create index if not exists sessions_words on sessions using gin (words gin_trgm_ops);
        """;

    /// <summary>Makes what is missing and takes the store over for this service.</summary>
    /// <param name="connection">An open connection.</param>
    /// <param name="owner">The mark of this service: whoever wrote it last may write.</param>
    /// <returns>Why words are searched without an index, or <see langword="null"/>.</returns>
    /// <exception cref="StoreException">A newer version made the tables.</exception>
    public static string? Prepare(NpgsqlConnection connection, string owner)
    {
        using var tables = new NpgsqlCommand(Tables, connection);
        tables.ExecuteNonQuery();
        using var command = new NpgsqlCommand("insert into meta values ('schema', $1) on conflict (name) do update set name = excluded.name returning value", connection)
        {
            Parameters = { new() { Value = $"{Version}" } },
        };
        if ((string)command.ExecuteScalar()! is var found && found != $"{Version}")
        {
            throw new StoreException($"The sessions in PostgreSQL are of version {found}; this WireCoach reads version {Version}.");
        }

        using var takes = new NpgsqlCommand("insert into meta values ('owner', $1) on conflict (name) do update set value = excluded.value", connection)
        {
            Parameters = { new() { Value = owner } },
        };
        takes.ExecuteNonQuery();
        try
        {
            using var index = new NpgsqlCommand(WordIndex, connection);
            index.ExecuteNonQuery();
            return null;
        }
        catch (PostgresException wrong)
        {
            return wrong.MessageText;
        }
    }
}
