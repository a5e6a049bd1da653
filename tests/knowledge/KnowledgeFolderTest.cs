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

    [Theory]
    [InlineData("T1, to: T2", "T1, to: x", "T2: nothing ends at this lead's node")]
    [InlineData("from: T8, to: s1", "from: T8, to: s9", "s9: only one thing ends at this node")]
    [InlineData("joints: [[T2, T3, T8]]", "joints: [[T2, T3, T9]]", "T9: the row high-counterclockwise names a lead that does not come out")]
    [InlineData("L2: [T4, T5]", "L2: [T4]", "leaves the lead T5 lying open")]
    [InlineData("of: start", "of: strat", "strat: no coil is of this group")]
    [InlineData("id: run-2", "id: run-1", "run-1: the coil stands twice")]
    [InlineData("layout.start-ratio-near-one", "layout.unheard-of", "layout.unheard-of: there is no such sentence")]
    public void A_name_that_stands_for_nothing_is_refused_with_file_and_line(string right, string wrong, string expected)
    {
        Copy();
        var file = Path.Combine(_folder, "layouts", "capacitor-start-dual-6.yaml");
        var text = File.ReadAllText(file);
        var at = text.IndexOf(right, StringComparison.Ordinal);
        File.WriteAllText(file, string.Concat(text.AsSpan(0, at), wrong, text.AsSpan(at + right.Length)));
        var refused = Assert.Throws<KnowledgeException>(() => KnowledgeFolder.Load(_folder));
        Assert.Matches(@"^layouts/capacitor-start-dual-6\.yaml\(\d+\): ", refused.Message);
        Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gate/confirmations", "confirmations.yaml", "    - \"Keep the plug where you see it for as long as you look.\"\n")]
    [InlineData("tests", "tests.yaml", "    - \"Plug out. Look through the vents and along the cord to the plug, and open nothing.\"\n")]
    public void Steps_for_home_that_do_not_stand_beside_the_others_are_refused(string folder, string file, string step)
    {
        Copy();
        var path = Path.Combine(_folder, folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(step, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(step, string.Empty, StringComparison.Ordinal));
        Assert.Contains("homeowner-how: it has another number of steps", Assert.Throws<KnowledgeException>(() => KnowledgeFolder.Load(_folder)).Message, StringComparison.Ordinal);
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
