using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests;

public sealed class TablesTest
{
    private static readonly TradeBook<TradeTable> Tables = CsvFile.Knowledge.Tables;

    public static TheoryData<string> Ids() => [.. Tables.Ids];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_cell_is_the_one_that_was_written_down_apart(string id)
    {
        var table = Tables[id];
        var written = CsvFile.Rows(Path.Combine(Repository.Root, "tests", "rules", "Tables", id + ".csv"));
        Assert.NotEmpty(written);
        Assert.Equal(written[0].Keys.Skip(1), table.Columns);
        Assert.Equal(written.Select(row => row.Values.First()), table.Rows.Select(row => row.Key));
        Assert.All(written.Zip(table.Rows), pair => Assert.Equal(pair.First.Values.Skip(1), pair.Second.Cells));
        Assert.True(table.Columns.Count == 0 || table.Rows.Any(row => row.Cells.Any(cell => cell.Length > 0)));
    }

    [Fact]
    public void Every_file_that_was_written_down_apart_is_held_against_a_table() =>
        Assert.Equal(
            Tables.Ids.Order(StringComparer.Ordinal),
            Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "rules", "Tables"), "*.csv").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_table_and_rule_says_where_it_comes_from() =>
        Assert.All(Tables.All.Select(table => table.Source).Concat(CsvFile.Knowledge.Rules.All.Select(rule => rule.Source)), source => Assert.True(source.Title.Length >= 3));

    [Fact]
    public void Single_phase_amps_at_115_volts_are_twice_those_at_230_and_the_rest_goes_with_them()
    {
        var table = Tables["nec-430-248"];
        Assert.All(table.Rows, row =>
        {
            var amps = table.Number(row, "230")!.Value;
            Assert.Equal(2 * amps, table.Number(row, "115")!.Value, 1e-9);
            Assert.Equal(1.10 * amps, table.Number(row, "208")!.Value, 0.0501);
            Assert.Equal(1.15 * amps, table.Number(row, "200")!.Value, 0.0501);
        });
    }

    [Fact]
    public void Single_phase_locked_rotor_amps_are_six_times_the_full_load_amps()
    {
        var (running, held) = (Tables["nec-430-248"], Tables["nec-430-251-a"]);
        Assert.All(held.Rows, row => Assert.All((string[])["115", "230"], volts =>
            Assert.Equal(6 * running.Number(running.Row(row.Key)!, volts)!.Value, held.Number(row, volts)!.Value, 1e-9)));
    }

    [Theory]
    [InlineData("nec-430-247")]
    [InlineData("nec-430-248")]
    [InlineData("nec-430-250")]
    [InlineData("nec-430-251-a")]
    [InlineData("nec-430-251-b")]
    [InlineData("nec-310-16-2011")]
    [InlineData("nec-310-16-before-2011")]
    [InlineData("iec-cable")]
    public void Amps_rise_from_row_to_row(string id)
    {
        var table = Tables[id];
        Assert.All(table.Columns, column =>
        {
            var amps = table.Rows.Select(row => table.Number(row, column)).OfType<double>().ToList();
            Assert.All(amps.Zip(amps.Skip(1)), pair => Assert.True(pair.First < pair.Second, $"{id} {column}: {pair}"));
        });
    }

    [Theory]
    [InlineData("nec-310-16", 2008, "14", "60", 20)]
    [InlineData("nec-310-16", 2011, "14", "60", 15)]
    [InlineData("nec-310-16", 2023, "12", "60", 20)]
    [InlineData("nec-310-16", 2005, "12", "60", 25)]
    public void The_adopted_edition_picks_the_table(string of, int year, string row, string column, double amps)
    {
        var table = Tables.In(of, year);
        Assert.Equal(amps, table.Number(table.Row(row)!, column));
    }

    [Theory]
    [InlineData(2014, "Table 310.15(B)(16)")]
    [InlineData(2020, "Table 310.16")]
    [InlineData(2008, "Table 310.16")]
    public void The_adopted_edition_names_the_place(int year, string place)
    {
        var table = Tables.In("nec-310-16", year);
        Assert.Equal(place, table.Quote(1, "amp", string.Empty, year).Source.Place);
        Assert.Contains($"{year}", table.Quote(1, "amp", string.Empty, year).Source.ToString(), StringComparison.Ordinal);
    }
}
