using System.Diagnostics;
using System.Runtime.InteropServices;

namespace WireCoach.Service.Tests.Store;

/// <summary>A small disk of a test's own, which can be filled, made read-only and cut off in the middle of a write. Where the machine allows none, the test is skipped with the reason.</summary>
internal sealed class OwnDisk : IDisposable
{
    private const nuint Shutdown = 0x8004587D; // ext4's own call for a disk that is gone
    private const uint WithoutFlushing = 2;

    private readonly DirectoryInfo _place = Directory.CreateTempSubdirectory("wirecoach-disk-");

    public OwnDisk(int mebibytes)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess, "A disk of one's own takes Linux and its administrator.");
        using (var image = File.Create(Image))
        {
            image.SetLength((long)mebibytes << 20);
        }

        Directory.CreateDirectory(Folder);
        var made = Try("mkfs.ext4", "-q", "-m", "0", Image) ?? Try("mount", "-o", "loop", Image, Folder);
        if (made is not null)
        {
            _place.Delete(recursive: true);
            Assert.Skip($"This machine gives no disk of one's own: {made}");
        }
    }

    /// <summary>Where it is mounted.</summary>
    public string Folder => Path.Combine(_place.FullName, "mounted");

    private string Image => Path.Combine(_place.FullName, "image");

    private string Filler => Path.Combine(Folder, "filler");

    /// <summary>Takes all but so many bytes.</summary>
    public void FillUpTo(long left)
    {
        using var filler = new FileStream(Filler, FileMode.Create);
        Run("fallocate", "-l", $"{new DriveInfo(Folder).AvailableFreeSpace - left}", Filler);
    }

    public void Free() => File.Delete(Filler);

    public void MakeReadOnly() => Run("mount", "-o", "remount,ro", Folder);

    public void MakeWritable() => Run("mount", "-o", "remount,rw", Folder);

    /// <summary>Cuts the power: whatever was not synced is gone, whatever comes later fails.</summary>
    public void Cut()
    {
        var handle = Open(Folder, 0);
        var flag = WithoutFlushing;
        Assert.Equal(0, Control(handle, Shutdown, ref flag));
        _ = Close(handle);
    }

    /// <summary>Gives the power back.</summary>
    public void Restore()
    {
        Run("umount", Folder);
        Run("mount", "-o", "loop", Image, Folder);
    }

    public void Dispose()
    {
        _ = Try("umount", Folder);
        _place.Delete(recursive: true);
    }

    private static void Run(string program, params string[] arguments) => Assert.Null(Try(program, arguments));

    private static string? Try(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardError = true })!;
            var said = process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? null : $"{program}: {said.Trim()}";
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            return $"{program}: {missing.Message}";
        }
    }

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "ioctl")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Control(int handle, nuint request, ref uint flag);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
