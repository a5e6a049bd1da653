namespace WireCoach.Service.Sessions;

/// <summary>One process owns a data folder; the system frees the lock when the process ends, however it ends.</summary>
internal sealed class FolderLock : IDisposable
{
    private readonly FileStream _file;

    private FolderLock(FileStream file) => _file = file;

    /// <exception cref="StoreException">Another process owns the folder, or it cannot be written.</exception>
    public static FolderLock Take(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return new FolderLock(new FileStream(Path.Combine(folder, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (UnauthorizedAccessException wrong)
        {
            throw new StoreException($"The data folder {folder} cannot be written: {wrong.Message}", wrong);
        }
        catch (IOException wrong) when (IsHeld(wrong))
        {
            throw new StoreException($"Another WireCoach already uses the data folder {folder}; stop it, or choose another folder with --Data:Folder.", wrong);
        }
        catch (IOException wrong)
        {
            throw new StoreException($"The data folder {folder} cannot be written: {wrong.Message}", wrong);
        }
    }

    public void Dispose() => _file.Dispose();

    /// <summary>The system's word for "held by another": a sharing violation, or a lock that would block.</summary>
    private static bool IsHeld(IOException wrong) => wrong.HResult is unchecked((int)0x80070020) or 11 or 35;
}
