namespace WireCoach.Service.Hosting;

/// <summary>Where a published service has its pages' files: beside itself, wherever it is started from.</summary>
internal static class Installed
{
    /// <summary>The service's own folder where it is published; <see langword="null"/> while it is built, when the files lie with their projects.</summary>
    public static string? Folder => Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot")) ? AppContext.BaseDirectory : null;
}
