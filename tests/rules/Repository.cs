namespace WireCoach.Rules.Tests;

/// <summary>Where the sources lie, for tests that read them.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    private static string Find(string folder) => File.Exists(Path.Combine(folder, "WireCoach.sln"))
        ? folder
        : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("The solution lies in no folder above the tests."));
}
