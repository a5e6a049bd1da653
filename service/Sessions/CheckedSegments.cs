using System.Text.Json;

namespace WireCoach.Service.Sessions;

/// <summary>How the journal's files stood when they were last closed in order, or are no longer written, so that the next opening need not read every line again.</summary>
/// <param name="Version">The version of this shape.</param>
/// <param name="Segments">The files.</param>
/// <param name="Deleted">Sessions that were deleted and have not left the files yet.</param>
internal sealed record CheckedSegments(int Version, IReadOnlyList<CheckedSegments.Segment> Segments, IReadOnlyList<string> Deleted)
{
    private const string File = "checked-segments";
    private const int Current = 1;

    /// <summary>What was noted at the last closing. It counts once: it is gone from the folder, and a stop that is not in order leaves none.</summary>
    public static CheckedSegments? Take(string folder)
    {
        var path = Path.Combine(folder, File);
        try
        {
            if (!System.IO.File.Exists(path))
            {
                return null;
            }

            var noted = JsonSerializer.Deserialize<CheckedSegments>(System.IO.File.ReadAllBytes(path));
            System.IO.File.Delete(path);
            return noted is { Version: Current, Segments: not null, Deleted: not null } ? noted : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Notes how the files stand; where that fails, the next opening reads them.</summary>
    public static void Write(string folder, IReadOnlyList<Segment> segments, IReadOnlyList<string> deleted)
    {
        try
        {
            System.IO.File.WriteAllBytes(Path.Combine(folder, File), JsonSerializer.SerializeToUtf8Bytes(new CheckedSegments(Current, segments, deleted)));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            // a note that is missing costs time, nothing else
        }
    }

    /// <summary>The note on a file that is still as it was then: its length, its time of change and its last line.</summary>
    public Segment? Of(string folder, string name)
    {
        var file = new FileInfo(Path.Combine(folder, name));
        var noted = Segments.FirstOrDefault(segment => segment.Name == name);
        return noted is not null && file.Length == noted.Length && file.LastWriteTimeUtc.Ticks == noted.Changed
            && Journal.HasLineAt(folder, new(name, noted.Length, noted.Check)) ? noted : null;
    }

    /// <summary>One file of the journal.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Length">Its length in bytes.</param>
    /// <param name="Changed">When it was changed last, in ticks.</param>
    /// <param name="Lines">How many lines it has.</param>
    /// <param name="Check">The check digits of its last line.</param>
    public sealed record Segment(string Name, long Length, long Changed, long Lines, string Check);
}
