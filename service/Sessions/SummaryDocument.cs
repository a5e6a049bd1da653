using System.IO.Hashing;
using System.Text;
using LiteDB;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A session in the list as LiteDB keeps it: packed by hand, so that nothing is trimmed or guessed and many are read fast, with a checksum, which LiteDB has not.</summary>
internal static class SummaryDocument
{
    private const int CheckLength = sizeof(uint);

    public static BsonDocument Write(SummaryFold fold)
    {
        var shown = fold.Shown;
        using var bytes = new MemoryStream(512);
        using (var pack = new BinaryWriter(bytes, Encoding.UTF8, leaveOpen: true))
        {
            pack.Write7BitEncodedInt((int)shown.Role);
            pack.Write7BitEncodedInt((int)shown.Region);
            pack.Write(shown.Status);
            pack.Write7BitEncodedInt64(shown.CreatedAt.ToUnixTimeMilliseconds());
            pack.Write7BitEncodedInt64(shown.ChangedAt.ToUnixTimeMilliseconds());
            pack.Write(shown.Practice);
            foreach (var text in (string?[])[shown.Who, shown.MotorTag, shown.Title, shown.Asked, shown.Goal, shown.Layout, shown.Verdict])
            {
                pack.Write(text is not null);
                pack.Write(text ?? string.Empty);
            }

            foreach (var ids in (IReadOnlyList<string>[])[shown.Causes, shown.Cautions, shown.Confirmed, shown.NotConfirmed])
            {
                pack.Write7BitEncodedInt(ids.Count);
                foreach (var id in ids)
                {
                    pack.Write(id);
                }
            }

            pack.Write7BitEncodedInt(shown.Touches);
            pack.Write7BitEncodedInt(shown.Facts);
            pack.Write7BitEncodedInt(shown.Retracted);
            pack.Write(fold.Words);
            pack.Write(Check(shown.Id, shown.Events, bytes.GetBuffer().AsSpan(0, (int)bytes.Position)));
        }

        return new BsonDocument { ["_id"] = shown.Id, ["events"] = shown.Events, ["shown"] = bytes.ToArray() };
    }

    /// <exception cref="StoreException">It is not as it was written.</exception>
    public static SummaryFold Read(BsonDocument document)
    {
        var (id, events, packed) = (document["_id"].AsString, document["events"].AsInt32, document["shown"].AsBinary);
        if (packed.Length < CheckLength || Check(id, events, packed.AsSpan()[..^CheckLength]) != BitConverter.ToUInt32(packed.AsSpan()[^CheckLength..]))
        {
            throw new StoreException($"The database does not hold the summary of the session {id} as it was written.");
        }

        using var bytes = new MemoryStream(packed, writable: false);
        using var pack = new BinaryReader(bytes);
        var shown = new SessionSummary
        {
            Id = id,
            Events = events,
            Role = (Role)pack.Read7BitEncodedInt(),
            Region = (Region)pack.Read7BitEncodedInt(),
            Status = pack.ReadString(),
            CreatedAt = DateTimeOffset.FromUnixTimeMilliseconds(pack.Read7BitEncodedInt64()),
            ChangedAt = DateTimeOffset.FromUnixTimeMilliseconds(pack.Read7BitEncodedInt64()),
            Practice = pack.ReadBoolean(),
            Who = Text(pack),
            MotorTag = Text(pack),
            Title = Text(pack),
            Asked = Text(pack),
            Goal = Text(pack),
            Layout = Text(pack),
            Verdict = Text(pack),
            Causes = Ids(pack),
            Cautions = Ids(pack),
            Confirmed = Ids(pack),
            NotConfirmed = Ids(pack),
            Touches = pack.Read7BitEncodedInt(),
            Facts = pack.Read7BitEncodedInt(),
            Retracted = pack.Read7BitEncodedInt(),
        };
        return new(shown, pack.ReadString());
    }

    private static uint Check(string id, int events, ReadOnlySpan<byte> packed)
    {
        var check = new Crc32();
        check.Append(Encoding.ASCII.GetBytes(id));
        check.Append(BitConverter.GetBytes(events));
        check.Append(packed);
        return check.GetCurrentHashAsUInt32();
    }

    private static string? Text(BinaryReader pack)
    {
        var isGiven = pack.ReadBoolean();
        var text = pack.ReadString();
        return isGiven ? text : null;
    }

    private static string[] Ids(BinaryReader pack)
    {
        var count = pack.Read7BitEncodedInt();
        var ids = count == 0 ? [] : new string[count];
        for (var at = 0; at < count; at++)
        {
            ids[at] = pack.ReadString();
        }

        return ids;
    }
}
