namespace WireCoach.Service.Sessions;

/// <summary>Splits a journal file into lines without holding more of it than it must.</summary>
internal sealed class JournalReader : IDisposable
{
    private readonly FileStream _file;
    private byte[] _buffer = new byte[1 << 18];
    private int _start;
    private int _end;

    public JournalReader(string path, long offset)
    {
        _file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0) { Position = offset };
        Offset = offset;
    }

    /// <summary>Where the last line ended, its line feed included.</summary>
    public long Offset { get; private set; }

    /// <summary>What stands behind the last line feed, once there is no further line.</summary>
    public ReadOnlyMemory<byte> Rest => _buffer.AsMemory(_start, _end - _start);

    /// <summary>The next line without its line feed, valid until the next call; <see langword="null"/> when there is none.</summary>
    public ReadOnlyMemory<byte>? Next()
    {
        var searched = 0;
        while (true)
        {
            var at = _buffer.AsSpan(_start + searched, _end - _start - searched).IndexOf(EventFormat.LineFeed);
            if (at >= 0)
            {
                var line = _buffer.AsMemory(_start, searched + at);
                _start += line.Length + 1;
                Offset += line.Length + 1;
                return line;
            }

            searched = _end - _start;
            if (!Fill())
            {
                return null;
            }
        }
    }

    public void Dispose() => _file.Dispose();

    private bool Fill()
    {
        if (_end == _buffer.Length)
        {
            var larger = _start == 0 ? new byte[_buffer.Length * 2] : _buffer;
            Buffer.BlockCopy(_buffer, _start, larger, 0, _end - _start);
            (_end, _start, _buffer) = (_end - _start, 0, larger);
        }

        var read = _file.Read(_buffer, _end, _buffer.Length - _end);
        _end += read;
        return read > 0;
    }
}
