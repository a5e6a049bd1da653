using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

public sealed class IdentifierTest
{
    private static readonly Identifier Identifier = new(Trade.Knowledge);

    private static readonly IdentificationInput Six = new() { Leads = ["1", "2", "3", "4", "5", "6"], HasCapacitor = true };

    [Fact]
    public void The_odd_winding_is_the_start_winding_when_two_are_alike()
    {
        var found = Find(Six, ("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1));
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal("start", found.Windings.Single(winding => winding.Leads.Contains("3")).Role);
    }

    [Fact]
    public void The_order_of_the_readings_changes_nothing()
    {
        var readings = All(Six, [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)]);
        var turned = readings.AsEnumerable().Reverse().Select(reading => reading with { From = reading.To, To = reading.From }).ToList();
        Assert.Equal(Text(Give(Six with { Readings = readings })), Text(Give(Six with { Readings = turned })));
    }

    [Fact]
    public void A_lower_odd_winding_is_not_called_a_start_winding() =>
        Assert.NotEqual(IdentificationStatus.Identified, Find(Six, ("1-4", 5.0), ("2-5", 5.0), ("3-6", 2.0)).Status);

    [Fact]
    public void Three_windings_nearer_than_the_meter_can_tell_are_not_told_apart()
    {
        var found = Find(Six, ("1-4", 1.2), ("2-5", 1.3), ("3-6", 1.4));
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Equal(3, found.Windings.Count);
    }

    [Fact]
    public void Nothing_measured_asks_for_a_first_reading()
    {
        var found = Give(Six);
        Assert.Equal(IdentificationStatus.NeedsReading, found.Status);
        Assert.Equal(6, found.ExpectedTouchesLeft, 1);
        Assert.NotNull(found.Next);
    }

    /// <summary>Half of the partners that are still possible for each lead that has none.</summary>
    [Theory]
    [InlineData(4, 3)]
    [InlineData(2, 1)]
    public void Touches_to_be_expected_grow_fewer_with_each_pair_that_is_found(int lonely, double touches)
    {
        List<Fact.Reading> read = [Ohms("1-4", 2.0)];
        read.AddRange(lonely == 2 ? [Ohms("2-5", 2.0)] : []);
        Assert.Equal(touches, Give(Six with { Readings = read }).ExpectedTouchesLeft, 1);
    }

    [Fact]
    public void Three_like_phases_need_no_word_of_a_capacitor()
    {
        var star = new IdentificationInput { Leads = ["1", "2", "3"], Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)) };
        Assert.Equal(IdentificationStatus.Identified, Find(star, ("1-2", 3.0), ("2-3", 3.0), ("1-3", 3.0)).Status);
    }

    [Fact]
    public void With_printed_marks_the_windings_that_they_promise_are_checked_first()
    {
        string[] leads = ["T1", "T2", "T3", "T4", "T5", "T8"];
        var marked = Six with { Leads = leads, Markings = leads.ToDictionary(lead => lead, StringComparer.Ordinal) };
        var first = Give(marked).Next!;
        Assert.Equal(("windings.check-marking", "T1", "T2"), (first.Why.Id, first.From, first.To));
        var second = Give(marked with { Readings = [Ohms("T1-T2", 2.0)] }).Next!;
        Assert.Equal(("windings.check-marking", "T3", "T4"), (second.Why.Id, second.From, second.To));
    }

    [Fact]
    public void A_winding_that_follows_from_the_rest_is_measured_all_the_same()
    {
        var found = Give(Six with { Readings = [Open("1-2"), Open("1-3"), Ohms("1-4", 2.0), Open("2-3"), Ohms("2-5", 2.0)] });
        Assert.Equal(IdentificationStatus.NeedsReading, found.Status);
        Assert.Equal(["3", "6"], new[] { found.Next!.From, found.Next.To }.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void One_lead_in_two_windings_is_a_contradiction_that_names_the_reading()
    {
        var readings = All(Six, [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)]).Select(reading => reading is { From: "1", To: "2" } ? Ohms("1-2", 7.7) : reading).ToList();
        var found = Give(Six with { Readings = readings });
        Assert.Equal(IdentificationStatus.Contradiction, found.Status);
        Assert.Contains(found.Contradictions.Single().Readings, reading => reading is { From: "1", To: "2" });
        Assert.Equal(("1", "2"), (found.Next!.From, found.Next.To));
    }

    [Fact]
    public void The_reading_taken_again_settles_a_contradiction()
    {
        var readings = All(Six, [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)]);
        Assert.Equal(IdentificationStatus.Identified, Give(Six with { Readings = [Ohms("1-2", 7.7), .. readings] }).Status);
    }

    [Fact]
    public void A_reading_taken_again_that_goes_worse_with_the_rest_is_decided_by_a_third()
    {
        var readings = All(Six with { CapacitorBridged = true }, [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)]);
        var doubtful = Give(Six with { CapacitorBridged = true, Readings = [.. readings, Open("3-6")] });
        Assert.Equal(IdentificationStatus.Contradiction, doubtful.Status);
        Assert.Equal(("3", "6"), (doubtful.Next!.From, doubtful.Next.To));
        Assert.Equal(IdentificationStatus.Identified, Give(Six with { CapacitorBridged = true, Readings = [.. readings, Open("3-6"), Ohms("3-6", 5.1)] }).Status);
        Assert.Equal(IdentificationStatus.Faulty, Give(Six with { CapacitorBridged = true, Readings = [.. readings, Open("3-6"), Open("3-6")] }).Status);
    }

    [Fact]
    public void A_winding_whose_reading_cannot_be_taken_is_not_called_certain()
    {
        var readings = All(Six, [("2-6", 1.4), ("3-5", 1.4)]).FindAll(reading => (reading.From, reading.To) != ("1", "4"));
        var found = Give(Six with { HasCapacitor = false, Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)), Readings = readings, Unreadable = [("1", "4")] });
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
    }

    [Fact]
    public void A_start_pair_that_kicks_is_the_start_branch_with_its_capacitor()
    {
        var readings = All(Six, [("1-4", 2.0), ("2-5", 2.0)]).Select(reading => reading is { From: "3", To: "6" } ? new Fact.Reading { From = "3", To = "6", Kick = true } : reading).ToList();
        var found = Give(Six with { Readings = readings });
        Assert.True(found.Status == IdentificationStatus.Identified, $"{found.Status} {found.Next} {found.Next?.Why} {string.Join(' ', found.Notes)}");
        Assert.Null(found.Windings.Single(winding => winding.Role == "start").Ohms);
    }

    [Fact]
    public void A_start_pair_that_reads_open_is_asked_about_and_not_called_broken()
    {
        var found = Find(Six, ("1-4", 2.0), ("2-5", 2.0));
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Empty(found.Faults);
        Assert.Equal(("3", "6"), (found.Next!.From, found.Next.To));
    }

    [Fact]
    public void With_the_capacitor_bridged_an_open_start_pair_is_a_fault()
    {
        var found = Find(Six with { CapacitorBridged = true }, ("1-4", 2.0), ("2-5", 2.0));
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Contains(found.Faults, fault => fault.Id == "open-start-winding" && fault.Leads.SequenceEqual(["3", "6"]));
    }

    [Fact]
    public void An_open_run_half_is_found_beside_a_run_half_and_a_start_winding()
    {
        var found = Find(Six with { CapacitorBridged = true }, ("1-4", 2.0), ("3-6", 5.1));
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Equal("open-run-winding", found.Faults[0].Id);
        Assert.Equal(["2", "5"], found.Faults[0].Leads);
    }

    [Fact]
    public void A_run_half_with_shorted_turns_reads_lower_than_its_like()
    {
        var found = Find(Six with { CapacitorBridged = true, Meter = new() { Percent = 0.5, Counts = 0 } }, ("1-4", 4.0), ("2-5", 2.9), ("3-6", 9.8));
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Equal("shorted-run-turns", found.Faults[0].Id);
        Assert.Equal(["2", "5"], found.Faults[0].Leads);
    }

    /// <summary>Alike within the meter's counts, or one with a start winding across it, or with that branch open: the joints are the same.</summary>
    [Fact]
    public void Halves_are_named_though_no_reading_shows_the_start_branch_inside_and_it_is_said()
    {
        var halves = new IdentificationInput
        {
            Leads = ["1", "2", "3", "4"],
            HasCapacitor = false,
            Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)).With("volts", PlateValue.Of(115, 230)),
            Looks = new() { BothWays = false, Brushes = false, Speeds = false },
            Meter = new() { TestLeadOhms = 0.2, Zeroed = false },
        };
        var read = All(halves, [("1-2", 1.9), ("3-4", 1.7)]);
        var found = Give(halves with { Readings = [.. read, .. read] });
        Assert.Equal((IdentificationStatus.Identified, "dual-voltage-4"), (found.Status, found.Layouts[0].Id));
        Assert.All(found.Windings, winding => Assert.Equal("run", winding.Role));
        Assert.Contains(found.Notes, note => note.Id == "windings.start-branch-unseen");
        Assert.DoesNotContain(Find(Six, ("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)).Notes, note => note.Id == "windings.start-branch-unseen");
    }

    [Fact]
    public void Ohms_to_the_frame_are_a_grounded_winding()
    {
        var readings = All(Six, [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)]);
        var found = Give(Six with { Readings = [.. readings, new() { From = "5", To = "frame", Ohms = 0.8 }] });
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        var fault = found.Faults.Single();
        Assert.Equal("grounded-winding", fault.Id);
        Assert.Equal(["2", "5"], fault.Leads);
    }

    [Fact]
    public void Four_leads_of_a_capacitor_motor_are_run_and_start()
    {
        var found = Find(Six with { Leads = ["red", "blue", "black", "white"], CapacitorBridged = true }, ("red-black", 1.6), ("blue-white", 6.4));
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal(["red", "black"], found.Windings.Single(winding => winding.Role == "run").Leads);
    }

    [Theory]
    [InlineData("M1 M2 A1 A2", "M1-M2", "A1-A2")]
    [InlineData("U1 U2 Z1 Z2", "U1-U2", "Z1-Z2")]
    public void Marks_of_a_main_and_a_capacitor_winding_are_checked_pair_by_pair(string marks, string main, string start)
    {
        string[] leads = marks.Split(' ');
        Assert.True(Identifier.AreMarkings(leads));
        IdentificationInput marked = new()
        {
            Leads = leads,
            Markings = leads.ToDictionary(lead => lead, StringComparer.Ordinal),
            HasCapacitor = true,
            CapacitorUse = "run",
            CapacitorBridged = true,
            Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)),
            Looks = new() { Brushes = false, Speeds = false, CapacitorOutside = true },
        };
        Assert.Equal(main, $"{Give(marked).Next!.From}-{Give(marked).Next!.To}");
        var read = All(marked, [(main, 21.0), (start, 53.0)]);
        var found = Give(marked with { Readings = [.. read, .. read] });
        Assert.Equal((IdentificationStatus.Identified, "psc-4"), (found.Status, found.Layouts[0].Id));
        Assert.Equal([$"run {main}", $"start {start}"], found.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads)}"));
    }

    [Fact]
    public void The_probes_are_taken_off_when_they_were_not_zeroed()
    {
        var found = Find(Six with { Meter = new() { Percent = 1, Counts = 2, TestLeadOhms = 0.2, Zeroed = false } }, ("1-4", 3.4), ("2-5", 3.4), ("3-6", 8.2));
        Assert.Equal(3.2, found.Windings[0].Ohms!.Value, 6);
    }

    internal static Fact.Reading Open(string pair) => new() { From = pair.Split('-')[0], To = pair.Split('-')[1], Open = true };

    internal static Fact.Reading Ohms(string pair, double ohms) => new() { From = pair.Split('-')[0], To = pair.Split('-')[1], Ohms = ohms };

    internal static Identification Give(IdentificationInput input) => Identifier.Identify(input).Value!;

    /// <summary>All pairs read: those given read ohms, the others open.</summary>
    internal static Identification Find(IdentificationInput input, params (string Pair, double Ohms)[] windings) => Give(input with { Readings = All(input, windings) });

    internal static List<Fact.Reading> All(IdentificationInput input, (string Pair, double Ohms)[] windings) =>
    [
        .. from first in Enumerable.Range(0, input.Leads.Count)
           from second in Enumerable.Range(first + 1, input.Leads.Count - first - 1)
           let pair = $"{input.Leads[first]}-{input.Leads[second]}"
           let found = windings.FirstOrDefault(winding => winding.Pair == pair)
           select found.Pair is null ? Open(pair) : Ohms(pair, found.Ohms),
    ];

    private static string Text(Identification found) =>
        $"{found.Status} {string.Join(' ', found.Windings.Select(winding => $"{winding.Role}{string.Join('-', winding.Leads)}={winding.Ohms}"))} {string.Join(' ', found.Layouts)}";
}
