using System.Reflection;
using System.Text.RegularExpressions;

namespace WireCoach.Rules.Tests;

/// <summary>The order of the rooms: a dependency only ever points down.</summary>
public sealed partial class LayersTest
{
    /// <summary>From the top of the house to its ground; rooms on one line do not know each other.</summary>
    private static readonly string[][] Floors =
    [
        ["Coaching"],
        ["Diagnosis", "Safety"],
        ["Connections", "Supply", "Insulation", "Capacitors"],
        ["Heat"],
        ["Windings", "Nameplate", "Machines"],
        ["Circuits", "Language", "Choosing"],
        ["Cases"],
        ["Statements", "Reference", "Quantities"],
    ];

    [Fact]
    public void Rules_know_nothing_above_them() =>
        Assert.DoesNotContain(
            typeof(WireCoach.Rules.Cases.Fact).Assembly.GetReferencedAssemblies(),
            (AssemblyName name) => name.Name!.StartsWith("WireCoach", StringComparison.Ordinal) || name.Name.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_uses_only_rooms_below_it(string room)
    {
        var floor = Array.FindIndex(Floors, rooms => rooms.Contains(room));
        // The practice motor stands beside the house: it may use layouts and circuits, never the identification that it tests.
        string[] allowed = room == "Practice"
            ? ["Practice", "Circuits", "Cases", "Statements", "Reference", "Quantities"]
            : [room, .. Floors[(floor + 1)..].SelectMany(rooms => rooms), .. floor == Floors.Length - 1 ? Floors[floor] : []];
        if (room is "Statements" or "Reference")
        {
            allowed = [.. allowed, "Cases"]; // the role decides the wording, the region the offers
        }

        var used = Directory.EnumerateFiles(Path.Combine(Repository.Root, "rules", room), "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => RoomName().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value));
        Assert.Empty(used.Distinct(StringComparer.Ordinal).Except(allowed, StringComparer.Ordinal));
    }

    public static TheoryData<string> Rooms() => [.. Directory.EnumerateDirectories(Path.Combine(Repository.Root, "rules"))
        .Select(folder => Path.GetFileName(folder)!).Where(room => char.IsUpper(room[0]))];

    [GeneratedRegex(@"WireCoach\.Rules\.([A-Z]\w+)", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex RoomName();
}
