namespace WireCoach.Benchmarks.Learning;

/// <summary>One message as a network is taught: its words in order, and the rows that it tells.</summary>
internal sealed record Lesson(IReadOnlyList<(int Word, int[] Meanings)> Said, IReadOnlyList<int> Told);
