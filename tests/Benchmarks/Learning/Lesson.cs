namespace WireCoach.Benchmarks.Learning;

/// <summary>One message as a network is taught: its words in order, the rows that it tells, and whether people write like that.</summary>
internal sealed record Lesson(IReadOnlyList<(int Word, int[] Meanings)> Said, IReadOnlyList<int> Told, bool Plain);
