namespace WireCoach.Knowledge.Tests;

public sealed class KnowledgeFolderTest : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("wirecoach-knowledge-").FullName;

    [Fact]
    public void The_knowledge_that_ships_is_whole() => Assert.NotEmpty(KnowledgeFolder.Load(KnowledgeFolder.Beside).Layouts);

    [Fact]
    public void An_unknown_key_is_refused_with_file_and_line()
    {
        Copy();
        File.AppendAllText(Path.Combine(_folder, "layouts", "capacitor-start-dual-6.yaml"), "colour-of-the-box: green\n");
        var wrong = Assert.Throws<KnowledgeException>(() => KnowledgeFolder.Load(_folder));
        Assert.Matches(@"^layouts/capacitor-start-dual-6\.yaml\(\d+\): .*colour-of-the-box", wrong.Message);
    }

    [Fact]
    public void An_id_that_stands_twice_is_refused()
    {
        Copy();
        File.Copy(Path.Combine(_folder, "layouts", "capacitor-start-dual-6.yaml"), Path.Combine(_folder, "layouts", "again.yaml"));
        Assert.Contains("stands twice", Assert.Throws<KnowledgeException>(() => KnowledgeFolder.Load(_folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_folder_is_named() =>
        Assert.Matches("^[a-z]+: the folder is missing\\.$", Assert.Throws<KnowledgeException>(() => KnowledgeFolder.Load(_folder)).Message);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Copy()
    {
        foreach (var file in Directory.EnumerateFiles(KnowledgeFolder.Beside, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder, Path.GetRelativePath(KnowledgeFolder.Beside, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
