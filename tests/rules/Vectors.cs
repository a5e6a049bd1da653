using System.Text.Json;

namespace WireCoach.Rules.Tests;

/// <summary>Reference figures from outside the code, as files beside the tests.</summary>
internal static class Vectors
{
    public static JsonElement Of(string file) => JsonDocument.Parse(File.ReadAllText(
        Path.Combine(Repository.Root, "tests", "rules", "vectors", file))).RootElement;
}
