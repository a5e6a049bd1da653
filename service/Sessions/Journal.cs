using System.Globalization;
using System.Text;

namespace WireCoach.Service.Sessions;

/// <summary>The truth: monthly files of event lines that only ever grow. Written by one thread.</summary>
internal sealed class Journal : IDisposable
{
    /// <summary>A file of this name says that a backup is being put back: the segments beside it are not whole.</summary>
    public const string Unfinished = "restoring";

    private const int CheckLength = 8;

    private readonly string _folder;
    private readonly TimeProvider _clock;
    private readonly HashSet<string> _deleted = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (long Lines, string Check)> _segments = new(StringComparer.Ordinal);
    private FileStream? _file;

    private Journal(string folder, TimeProvider clock) => (_folder, _clock) = (folder, clock);

    /// <summary>Where the next line goes.</summary>
    public JournalPosition End { get; private set; } = JournalPosition.Start;

    /// <summary>How many lines there are.</summary>
    public long Count { get; private set; }

    /// <summary>How many of them were read and checked at opening.</summary>
    public long LinesRead { get; private set; }

    /// <summary>The file into which a torn tail was put aside at opening, if there was one.</summary>
    public string? TornTail { get; private set; }

    /// <summary>Opens a folder's journal and checks every line of it that was not checked before, or that changed since.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="clock">The time that decides the segment.</param>
    /// <exception cref="StoreException">A line that is not the torn last one is damaged; the files stay as they are.</exception>
    public static Journal Open(string folder, TimeProvider clock)
    {
        if (File.Exists(Path.Combine(folder, Unfinished)))
        {
            throw new StoreException($"Putting back a backup into {folder} was interrupted; run the restore command again.");
        }

        var journal = new Journal(folder, clock);
        var (segments, known) = (Segments(folder), CheckedSegments.Take(folder));
        journal._deleted.UnionWith(known?.Deleted ?? []);
        foreach (var segment in segments)
        {
            if (known?.Of(folder, segment) is { } noted)
            {
                journal.Believe(noted);
            }
            else
            {
                journal.Check(segment, isLast: segment == segments[^1]);
            }
        }

        journal.Erase(); // a deletion that was cut short is finished
        journal.NoteOlder();
        return journal;
    }

    /// <summary>The lines between two positions, as they are on disk.</summary>
    public static IEnumerable<JournalPiece> Read(string folder, JournalPosition from, JournalPosition until)
    {
        foreach (var segment in Segments(folder).Where(name => string.CompareOrdinal(name, from.Segment) >= 0))
        {
            using var reader = new JournalReader(Path.Combine(folder, segment), segment == from.Segment ? from.Offset : 0);
            while (reader.Next() is { } line)
            {
                if (segment == until.Segment && reader.Offset > until.Offset)
                {
                    yield break;
                }

                yield return new([line.ToArray()], new(segment, reader.Offset, CheckOf(line.Span)));
            }
        }
    }

    /// <summary>Whether a line with these check digits ends at this position.</summary>
    public static bool HasLineAt(string folder, JournalPosition position)
    {
        if (position.Segment.Length == 0 || position.Offset == 0)
        {
            return position.Check.Length == 0;
        }

        var file = new FileInfo(Path.Combine(folder, position.Segment));
        if (!file.Exists || file.Length < position.Offset)
        {
            return false;
        }

        using var stream = file.OpenRead();
        for (var length = 1L << 12; ; length *= 8)
        {
            var tail = new byte[Math.Min(length, position.Offset)];
            stream.Position = position.Offset - tail.Length;
            stream.ReadExactly(tail);
            var line = tail.AsSpan(0, tail.Length - 1);
            var start = line.LastIndexOf(EventFormat.LineFeed) + 1;
            if (start > 0 || tail.Length == position.Offset)
            {
                return tail[^1] == EventFormat.LineFeed && EventFormat.IsWhole(line[start..]) && CheckOf(line[start..]) == position.Check;
            }
        }
    }

    /// <summary>Appends whole lines and returns when they are on disk. After a failure the journal ends where it ended before.</summary>
    /// <exception cref="IOException">The disk did not take them.</exception>
    public void Append(ReadOnlySpan<byte> lines, int count)
    {
        var file = Current();
        try
        {
            file.Write(lines);
            file.Flush(flushToDisk: true);
        }
        catch
        {
            Discard();
            throw;
        }

        foreach (var line in lines.Split(EventFormat.LineFeed))
        {
            Deletes(lines[line]);
        }

        var last = lines[..^1];
        var at = last.LastIndexOf(EventFormat.LineFeed) + 1;
        End = new(End.Segment, End.Offset + lines.Length, CheckOf(last[at..]));
        Count += count;
        Note(End.Segment, count, End.Check);
    }

    /// <summary>Tries whether the disk takes something again.</summary>
    /// <exception cref="IOException">It does not.</exception>
    public void Try()
    {
        var path = Path.Combine(_folder, "trial");
        try
        {
            using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
            file.Write(new byte[1 << 16]);
            file.Flush(flushToDisk: true);
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>Takes the events of deleted sessions out of the files; what says that they were deleted stays.</summary>
    /// <remarks>Each file is written anew beside the old one and takes its place when it is on disk.</remarks>
    /// <exception cref="IOException">The disk did not take it; the next opening tries again.</exception>
    public void Erase()
    {
        if (_deleted.Count == 0)
        {
            return;
        }

        _file?.Dispose();
        _file = null;
        foreach (var segment in Segments(_folder).Where(segment => Lines(segment).Any(IsErased)))
        {
            Rewrite(segment);
        }

        _deleted.Clear();
        NoteOlder();
    }

    /// <summary>Closes the files in order and notes how they stand.</summary>
    public void Dispose()
    {
        _file?.Dispose();
        CheckedSegments.Write(
            _folder,
            [.. _segments.Where(segment => segment.Value.Lines > 0).Select(segment => Noted(segment.Key, segment.Value.Lines, segment.Value.Check))],
            [.. _deleted]);
    }

    /// <summary>The names of a folder's segments, the oldest first.</summary>
    public static string[] Segments(string folder) =>
        [.. Directory.EnumerateFiles(folder, "journal-????-??.jsonl").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    /// <summary>Whether a file name is a segment's, and nothing else: it may come from outside.</summary>
    public static bool IsSegment(string name) =>
        name.Length == "journal-0000-00.jsonl".Length && name.StartsWith("journal-", StringComparison.Ordinal) && name.EndsWith(".jsonl", StringComparison.Ordinal)
        && name.AsSpan(8, 4).IndexOfAnyExceptInRange('0', '9') < 0 && name[12] == '-' && name.AsSpan(13, 2).IndexOfAnyExceptInRange('0', '9') < 0;

    /// <summary>Notes how the files stand that no line is added to any more: after a kill only the newest is read again.</summary>
    private void NoteOlder()
    {
        List<CheckedSegments.Segment> older = [.. _segments.Where(segment => segment.Value.Lines > 0 && segment.Key != End.Segment).Select(segment => Noted(segment.Key, segment.Value.Lines, segment.Value.Check))];
        if (older.Count > 0)
        {
            CheckedSegments.Write(_folder, older, []);
        }
    }

    private CheckedSegments.Segment Noted(string name, long lines, string check)
    {
        var file = new FileInfo(Path.Combine(_folder, name));
        return new(name, file.Exists ? file.Length : 0, file.LastWriteTimeUtc.Ticks, lines, check);
    }

    private void Note(string segment, long lines, string check) =>
        _segments[segment] = (_segments.GetValueOrDefault(segment).Lines + lines, check);

    private void Believe(CheckedSegments.Segment noted)
    {
        End = new(noted.Name, noted.Length, noted.Check);
        Count += noted.Lines;
        Note(noted.Name, noted.Lines, noted.Check);
    }

    private static string CheckOf(ReadOnlySpan<byte> line) => Encoding.ASCII.GetString(line[..CheckLength]);

    private void Check(string segment, bool isLast)
    {
        var path = Path.Combine(_folder, segment);
        var (good, before) = (0L, Count);
        var check = new byte[CheckLength];
        End = new(segment, 0, string.Empty);
        using (var reader = new JournalReader(path, 0))
        {
            while (reader.Next() is { } line)
            {
                if (!EventFormat.IsWhole(line.Span))
                {
                    throw new StoreException(
                        $"The journal {path} is damaged at byte {good}: the line there is not as it was written. Nothing was changed; put the file back from a backup.");
                }

                Deletes(line.Span);
                good = reader.Offset;
                Count++;
                LinesRead++;
                line.Span[..CheckLength].CopyTo(check);
            }

            if (good > 0)
            {
                End = new(segment, good, CheckOf(check));
                Note(segment, Count - before, End.Check);
            }

            if (reader.Rest is not { Length: > 0 } rest)
            {
                return;
            }

            if (!isLast || EventFormat.IsWhole(rest.Span[..^1]))
            {
                throw new StoreException(
                    $"The journal {path} is damaged at byte {good}: its last line does not end. Nothing was changed; put the file back from a backup.");
            }
        }

        PutAside(path, good);
    }

    private void Deletes(ReadOnlySpan<byte> line)
    {
        if (EventFormat.IsDeletion(line))
        {
            _deleted.Add(EventFormat.SessionOf(line));
        }
    }

    private bool IsErased(ReadOnlyMemory<byte> line) => _deleted.Contains(EventFormat.SessionOf(line.Span)) && !EventFormat.IsDeletion(line.Span);

    /// <summary>The lines of a file, each valid until the next.</summary>
    private IEnumerable<ReadOnlyMemory<byte>> Lines(string segment)
    {
        using var reader = new JournalReader(Path.Combine(_folder, segment), 0);
        while (reader.Next() is { } line)
        {
            yield return line;
        }
    }

    private void Rewrite(string segment)
    {
        var (path, offset, check) = (Path.Combine(_folder, segment), 0L, string.Empty);
        var left = 0L;
        using (var anew = new FileStream($"{path}.new", FileMode.Create, FileAccess.Write))
        {
            foreach (var line in Lines(segment))
            {
                if (IsErased(line))
                {
                    Count--;
                    continue;
                }

                anew.Write(line.Span);
                anew.WriteByte(EventFormat.LineFeed);
                (offset, check, left) = (offset + line.Length + 1, CheckOf(line.Span), left + 1);
            }

            anew.Flush(flushToDisk: true);
        }

        File.Move($"{path}.new", path, overwrite: true);
        DirectorySync.Flush(_folder);
        _segments[segment] = (left, check);
        if (segment == End.Segment)
        {
            End = new(segment, offset, check);
        }
    }

    private void PutAside(string path, long good)
    {
        TornTail = $"{path}.torn-{_clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff", CultureInfo.InvariantCulture)}";
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.Read);
        file.Position = good;
        using (var aside = new FileStream(TornTail, FileMode.Create, FileAccess.Write))
        {
            file.CopyTo(aside);
            aside.Flush(flushToDisk: true);
        }

        file.SetLength(good);
        file.Flush(flushToDisk: true);
        DirectorySync.Flush(_folder);
    }

    private FileStream Current()
    {
        var month = $"journal-{_clock.GetUtcNow().UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture)}.jsonl";
        var segment = string.CompareOrdinal(month, End.Segment) > 0 ? month : End.Segment;
        if (_file is not null && segment == End.Segment)
        {
            return _file;
        }

        _file?.Dispose();
        _file = new FileStream(
            Path.Combine(_folder, segment), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
        if (segment != End.Segment)
        {
            DirectorySync.Flush(_folder);
            End = new(segment, 0, string.Empty);
        }

        _file.SetLength(End.Offset);
        _file.Position = End.Offset;
        return _file;
    }

    /// <summary>Drops what a failed write left; the next append opens the file anew and cuts it to where it ended.</summary>
    private void Discard()
    {
        try
        {
            _file?.SetLength(End.Offset);
        }
        catch (IOException)
        {
            // the next append tries again
        }
        finally
        {
            _file?.Dispose();
            _file = null;
        }
    }
}
