using System.Runtime.CompilerServices;

namespace WireCoach.WebUi.Tests.Diagrams;

/// <summary>Pictures kept beside the test. With WIRECOACH_REWRITE=1 they are written anew, to be looked at before they are committed.</summary>
internal static class Kept
{
    public static void Compare(string name, string content)
    {
        var file = Path.Combine(Folder(), name);
        if (Environment.GetEnvironmentVariable("WIRECOACH_REWRITE") == "1")
        {
            _ = Directory.CreateDirectory(Folder());
            File.WriteAllText(file, content);
        }

        Assert.Equal(File.ReadAllText(file), content);
    }

    private static string Folder([CallerFilePath] string path = "") => Path.Combine(Path.GetDirectoryName(path)!, "kept");
}
