using System.IO.Compression;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Rules.Cases;
using WireCoach.Service.Backups;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>What was backed up comes back, whole or not at all, and what it replaces is kept.</summary>
public sealed class BackupTest : DataFolderTest
{
    private string Data => Path.Combine(Folder, "data");

    private string Backup => Path.Combine(Folder, "fernhollow.backup");

    [Fact]
    public async Task A_backup_made_while_the_service_writes_holds_everything_acknowledged_before_it()
    {
        await using var store = Open(Data);
        var before = new List<string>();
        using var stop = new CancellationTokenSource();
        var writing = Task.Run(async () =>
        {
            while (!stop.IsCancellationRequested)
            {
                await store.Append(StoredSessions.New("later", 3));
            }
        });
        for (var number = 0; number < 40; number++)
        {
            var session = StoredSessions.New("before", 5);
            await store.Append(session);
            before.Add(session[0].Session);
        }

        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        await stop.CancelAsync();
        await writing;

        var other = Path.Combine(Folder, "other");
        Restoring.PutBack(other, Backup, TimeProvider.System);
        await using var restored = Open(other);
        foreach (var id in before)
        {
            Assert.Equal(StoredSessions.Lines(await store.Events(id)), StoredSessions.Lines(await restored.Events(id)));
        }
    }

    [Fact]
    public async Task Restoring_moves_what_was_there_aside()
    {
        var (kept, lost) = (await Fill("kept"), string.Empty);
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        lost = await Fill("after the backup");
        var (_, aside) = Restoring.PutBack(Data, Backup, TimeProvider.System);

        await using (var store = Open(Data))
        {
            Assert.NotEmpty(await store.Events(kept));
            Assert.Empty(await store.Events(lost));
            Assert.Equal(1, (await store.List(new SessionFilter())).Total);
        }

        await using var old = Open(aside!);
        Assert.NotEmpty(await old.Events(lost));
    }

    [Fact]
    public async Task Codes_sign_ins_and_counts_of_rewordings_stay_with_the_machine()
    {
        string[] own = ["access-codes.json", "sign-ins.jsonl", "rewordings.json"];
        await Fill("kept");
        foreach (var name in own)
        {
            await File.WriteAllTextAsync(Path.Combine(Data, name), "of this machine", TestContext.Current.CancellationToken);
        }

        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        using (var zip = ZipFile.OpenRead(Backup))
        {
            Assert.All(zip.Entries, entry => Assert.True(entry.Name == "manifest.json" || Service.Sessions.Journal.IsSegment(entry.Name), entry.Name));
        }

        var (_, aside) = Restoring.PutBack(Data, Backup, TimeProvider.System);
        Assert.All(own, name => Assert.Equal("of this machine", File.ReadAllText(Path.Combine(Data, name))));
        Assert.DoesNotContain(Directory.EnumerateFiles(aside!), path => own.Contains(Path.GetFileName(path)));
    }

    [Theory]
    [InlineData("\"name\"")]
    [InlineData("\"sha256\"")]
    [InlineData("\"parts\"")]
    public async Task A_manifest_without_one_of_its_members_is_no_whole_backup(string member)
    {
        await Fill("kept");
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        using (var zip = ZipFile.Open(Backup, ZipArchiveMode.Update))
        {
            string manifest;
            using (var reader = new StreamReader(zip.GetEntry("manifest.json")!.Open()))
            {
                manifest = await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
            }

            Assert.Contains(member, manifest, StringComparison.Ordinal);
            zip.GetEntry("manifest.json")!.Delete();
            await using var writer = new StreamWriter(zip.CreateEntry("manifest.json").Open());
            await writer.WriteAsync(manifest.Replace(member, "\"nothing\"", StringComparison.Ordinal));
        }

        Assert.Throws<BackupException>(() => Restoring.Check(Backup, TimeProvider.System));
    }

    [Fact]
    public async Task A_backup_with_a_turned_bit_is_refused_and_nothing_changes()
    {
        await Fill("kept");
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        var second = await Fill("second");
        var whole = await File.ReadAllBytesAsync(Backup, TestContext.Current.CancellationToken);
        var before = Contents();
        var chance = new Random(5);
        var refused = 0;
        for (var flip = 0; flip < 60; flip++)
        {
            var damaged = (byte[])whole.Clone();
            damaged[chance.Next(damaged.Length)] ^= (byte)(1 << chance.Next(8));
            await File.WriteAllBytesAsync(Backup, damaged, TestContext.Current.CancellationToken);
            try
            {
                Restoring.Check(Backup, TimeProvider.System); // a bit that says nothing, such as a time in the archive, may turn
            }
            catch (BackupException)
            {
                refused++;
                Assert.Throws<BackupException>(() => Restoring.PutBack(Data, Backup, TimeProvider.System));
                Assert.Equal(before, Contents());
            }
        }

        Assert.InRange(refused, 30, 60);
        await using var store = Open(Data);
        Assert.NotEmpty(await store.Events(second));
    }

    [Fact]
    public async Task A_backup_that_was_cut_short_is_refused()
    {
        await Fill("kept");
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        using (var file = new FileStream(Backup, FileMode.Open))
        {
            file.SetLength(file.Length * 2 / 3);
        }

        Assert.Throws<BackupException>(() => Restoring.Check(Backup, TimeProvider.System));
    }

    [Theory]
    [InlineData("../journal-2026-01.jsonl")]
    [InlineData("/etc/journal-2026-01.jsonl")]
    [InlineData("journal-2026-01.jsonl/x")]
    [InlineData("journal-20/6-01.jsonl")]
    [InlineData("lock")]
    public void A_name_in_a_backup_cannot_lead_out_of_the_folder(string name)
    {
        Assert.False(Service.Sessions.Journal.IsSegment(name));
        using (var zip = ZipFile.Open(Backup, ZipArchiveMode.Create))
        {
            Add(zip, name, string.Empty);
            Add(zip, "manifest.json", $$"""{"format":"wirecoach-backup","version":1,"lines":1,"at":"2026-03-14T00:00:00Z","parts":[{"name":"{{name}}","bytes":0,"events":0,"sha256":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"}]}""");
        }

        var refused = Assert.Throws<BackupException>(() => Restoring.PutBack(Data, Backup, TimeProvider.System));
        Assert.Contains("no part of a journal", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_backup_of_a_newer_version_is_refused_by_name()
    {
        using (var zip = ZipFile.Open(Backup, ZipArchiveMode.Create))
        {
            Add(zip, "manifest.json", """{"format":"wirecoach-backup","version":1,"lines":99,"at":"2026-03-14T00:00:00Z","parts":[]}""");
        }

        var refused = Assert.Throws<BackupException>(() => Restoring.PutBack(Data, Backup, TimeProvider.System));
        Assert.Contains("newer", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_restore_that_was_interrupted_stops_the_start_until_it_is_done_again()
    {
        await Fill("kept");
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        File.Delete(Directory.EnumerateFiles(Data, "journal-*").Single());
        await File.WriteAllTextAsync(Path.Combine(Data, Service.Sessions.Journal.Unfinished), string.Empty, TestContext.Current.CancellationToken);
        Assert.Contains("interrupted", Assert.Throws<StoreException>(() => Open(Data)).Message, StringComparison.Ordinal);

        Restoring.PutBack(Data, Backup, TimeProvider.System);
        await using var store = Open(Data);
        Assert.Equal(1, (await store.List(new SessionFilter())).Total);
    }

    [Fact]
    public async Task A_damaged_journal_is_not_backed_up_and_a_backup_is_never_overwritten()
    {
        await Fill("kept");
        BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow);
        Assert.Throws<BackupException>(() => BackupWriter.Write(Data, Backup, DateTimeOffset.UtcNow));
        Flip(Directory.EnumerateFiles(Data, "journal-*").Single(), 30);
        var other = Path.Combine(Folder, "other.backup");
        Assert.Throws<BackupException>(() => BackupWriter.Write(Data, other, DateTimeOffset.UtcNow));
        Assert.Equal(["fernhollow.backup"], Directory.EnumerateFiles(Folder).Select(path => Path.GetFileName(path)));
    }

    [Fact]
    public async Task The_commands_back_up_a_running_service_and_put_it_back_when_it_has_stopped()
    {
        string id;
        await using (var service = await ServiceProcess.Start(Data))
        {
            id = await service.Open();
            Assert.Equal(0, (await ServiceProcess.Command(Data, "backup", Backup)).Code);
            var (running, _, errors) = await ServiceProcess.Command(Data, "restore", Backup);
            Assert.NotEqual(0, running);
            Assert.Contains("already uses", errors, StringComparison.Ordinal);
            await service.Open();
            await service.Stop();
        }

        Assert.Equal(0, (await ServiceProcess.Command(Data, "restore", Backup, "--check")).Code);
        var (code, output, _) = await ServiceProcess.Command(Data, "restore", Backup);
        Assert.Equal(0, code);
        Assert.Contains("before-restore-", output, StringComparison.Ordinal);
        await using var again = await ServiceProcess.Start(Data);
        Assert.Equal(id, (await again.Get("/api/sessions")).GetProperty("items").EnumerateArray().Single().GetProperty("id").GetString());
    }

    [Theory]
    [InlineData("backup")]
    [InlineData("restore")]
    [InlineData("serve", "now")]
    public async Task A_word_that_is_no_command_is_answered_with_those_there_are(params string[] words)
    {
        var (code, _, errors) = await ServiceProcess.Command(Data, words);
        Assert.Equal(2, code);
        Assert.Contains("backup FILE", errors, StringComparison.Ordinal);
    }

    private static LocalStore Open(string folder) => LocalStore.Open(folder, TimeProvider.System, NullLogger<LocalStore>.Instance);

    private static void Add(ZipArchive zip, string name, string text)
    {
        using var entry = zip.CreateEntry(name).Open();
        entry.Write(Encoding.UTF8.GetBytes(text));
    }

    private async Task<string> Fill(string who)
    {
        await using var store = Open(Data);
        var session = StoredSessions.New(who, 6);
        await store.Append(session);
        return session[0].Session;
    }

    private List<string> Contents() =>
        [.. Directory.EnumerateFileSystemEntries(Data, "*", SearchOption.AllDirectories).Where(path => Path.GetFileName(path) != "lock")
            .Order(StringComparer.Ordinal).Select(path => $"{path} {Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)))}")];
}
