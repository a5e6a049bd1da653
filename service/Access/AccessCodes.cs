using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Access;

/// <summary>The access code of each role, kept as the framework's own password hash in a file that only the service's user may read.</summary>
internal sealed class AccessCodes(string folder)
{
    public const int ShortestCode = 8;
    public const int LongestCode = 100;

    private readonly PasswordHasher<AccessCodes> _hasher = new();
    private readonly string _nobody = new PasswordHasher<AccessCodes>().HashPassword(null!, Guid.NewGuid().ToString());

    private string File => Path.Combine(folder, "access-codes.json");

    public bool Has(AccessRole role) => Read().ContainsKey(role.ToString());

    /// <exception cref="SharingException">The code is too short, or another role has it.</exception>
    public void Set(AccessRole role, string code)
    {
        if (code.Length is < ShortestCode or > LongestCode)
        {
            throw new SharingException($"An access code has {ShortestCode} to {LongestCode} characters.");
        }

        var codes = Read();
        codes[role.ToString()] = _hasher.HashPassword(this, code);
        Directory.CreateDirectory(folder);
        var partial = $"{File}.partial";
        using (var stream = new FileStream(partial, Private()))
        {
            JsonSerializer.Serialize(stream, codes);
            stream.Flush(flushToDisk: true);
        }

        System.IO.File.Move(partial, File, overwrite: true);
        DirectorySync.Flush(folder);
    }

    /// <summary>Whether it is the role's code; a role without one takes as long to refuse.</summary>
    public bool IsRight(AccessRole role, string? code)
    {
        var known = Read().TryGetValue(role.ToString(), out var hash);
        var result = _hasher.VerifyHashedPassword(this, known ? hash! : _nobody, code is { Length: <= LongestCode } ? code : string.Empty);
        return known && result != PasswordVerificationResult.Failed;
    }

    private static FileStreamOptions Private()
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return options;
    }

    private Dictionary<string, string> Read()
    {
        if (!System.IO.File.Exists(File))
        {
            return [];
        }

        try
        {
            using var stream = System.IO.File.OpenRead(File);
            return JsonSerializer.Deserialize<Dictionary<string, string>>(stream) ?? [];
        }
        catch (JsonException wrong)
        {
            throw new SharingException($"The access codes in {File} are damaged; delete the file and set the codes again.", wrong);
        }
    }
}
