using WireCoach.Knowledge;
using WireCoach.Service.Access;
using WireCoach.Service.Backups;
using WireCoach.Service.Phrasing;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Hosting;

/// <summary>What keeps the service from starting, in one sentence.</summary>
internal static class StartFailure
{
    /// <summary>The sentence, or <see langword="null"/> for what is no fault of the surroundings.</summary>
    public static string? Sentence(Exception wrong) => wrong switch
    {
        KnowledgeException => $"The knowledge cannot be used: {OneLine(wrong.Message)}",
        StoreException or PhrasingSettingsException or BackupException or SharingException => OneLine(wrong.Message),
        IOException => $"{OneLine(wrong.Message).TrimEnd('.')}; choose another address with --urls.",
        FormatException or InvalidOperationException { Source: "Microsoft.AspNetCore.Server.Kestrel.Core" } =>
            $"The address cannot be used: {OneLine(wrong.Message)}",
        _ => null,
    };

    private static string OneLine(string text) => string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
