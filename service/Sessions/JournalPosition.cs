namespace WireCoach.Service.Sessions;

/// <summary>A place in the journal: just behind a line.</summary>
/// <param name="Segment">The segment's file name.</param>
/// <param name="Offset">Bytes from its start.</param>
/// <param name="Check">The check digits of the line that ends here; empty at a segment's start.</param>
internal readonly record struct JournalPosition(string Segment, long Offset, string Check)
{
    public static JournalPosition Start { get; } = new(string.Empty, 0, string.Empty);
}

/// <summary>Lines that were written together.</summary>
/// <param name="Lines">Whole lines without their line feeds.</param>
/// <param name="End">Just behind the last of them.</param>
internal sealed record JournalPiece(IReadOnlyList<ReadOnlyMemory<byte>> Lines, JournalPosition End);
