using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Browser.Tests;

/// <summary>All readings on one page, in any order, together or one by one.</summary>
public sealed class ReadingTableTest(Bench bench)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("phone-no-scripts")]
    [InlineData("desk-dark")]
    public async Task Readings_are_filled_in_in_any_order_and_the_windings_appear(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", "Six leads tagged 1 2 3 4 5 6, no marks, single phase, no capacitor, plate 115/230 V 10.4/5.2 A 1140 rpm. I want to find which is which.");
        await visitor.Press("Begin");
        await visitor.Go($"/sessions/{visitor.Session}/readings");
        Assert.Contains("Nothing may be measured yet", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await Look(visitor);
        await visitor.Go($"/sessions/{visitor.Session}");
        for (var turn = 0; turn < 12 && await visitor.Page.GetByText("All readings in one table").CountAsync() == 0; turn++)
        {
            await Respond(visitor);
            await visitor.Go($"/sessions/{visitor.Session}");
        }

        await visitor.Press("All readings in one table");
        await visitor.Picture("readings-empty", whole: true);
        await Look(visitor);

        await visitor.Page.FillAsync("#r3-4", "many");
        await visitor.Page.FillAsync("#r0-3", "1,7");
        await visitor.Page.Locator("[name='r0-3.open']").ClickAsync();
        await Save(visitor);
        var wrong = await visitor.Page.Locator("#wrong").InnerTextAsync();
        Assert.Contains("4–5: \"many\" is no figure", wrong, StringComparison.Ordinal);
        Assert.Contains("1–4: there is a figure and OL is ticked as well", wrong, StringComparison.Ordinal);
        Assert.Equal("many", await visitor.Page.Locator("#r3-4").InputValueAsync());
        await visitor.Picture("readings-wrong", whole: true);
        await Look(visitor);

        await visitor.Page.FillAsync("#r3-4", string.Empty);
        await visitor.Page.Locator("[name='r0-3.open']").ClickAsync();
        await visitor.Page.Locator("[name='r0-1.open']").ClickAsync();
        await visitor.Page.FillAsync("#r2-4", "3.6");
        await Save(visitor);
        Assert.Contains("Stored: 3", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        // then one alone, which settles the third pair, and one that takes the place of another
        await visitor.Page.FillAsync("#r1-5", "1.9");
        await Save(visitor);
        await visitor.Page.FillAsync("#r1-5", "1.7");
        await Save(visitor);
        await visitor.Picture("readings", whole: true);
        await Look(visitor);
        var session = await visitor.Read();
        var readings = session.GetProperty("facts").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "reading" && fact.GetProperty("to").GetString() != "frame").ToList();
        Assert.Equal(["1-4", "1-2", "3-5", "2-6"], readings.Select(one => $"{one.GetProperty("from").GetString()}-{one.GetProperty("to").GetString()}").Order(Comparer<string>.Create((a, b) => Place(a) - Place(b))));
        Assert.Equal(1.7, readings.Single(one => one.GetProperty("from").GetString() == "2" && one.GetProperty("to").GetString() == "6").GetProperty("ohms").GetDouble());
        Assert.Equal(3, session.GetProperty("assessment").GetProperty("identification").GetProperty("windings").GetArrayLength());
    }

    private static int Place(string pair) => Array.IndexOf(["1-4", "1-2", "3-5", "2-6"], pair);

    private static Task Save(Visitor visitor) => visitor.Press(visitor.Page.Locator(".readings button.go").First);

    private async Task Respond(Visitor visitor)
    {
        var ask = (await visitor.Read()).GetProperty("assessment").GetProperty("next");
        var questionId = ask.GetProperty("id").GetString();
        object answer = ask.GetProperty("kind").GetString() switch
        {
            "confirm" => new { questionId, confirmed = true },
            "reading" => new { questionId, reading = new { open = true } },
            "quantity" => new { questionId, quantity = new { value = 0.2 } },
            _ => new { questionId, choice = ask.GetProperty("options")[0].GetProperty("id").GetString() },
        };
        (await bench.Http.PostAsJsonAsync($"/api/sessions/{visitor.Session}/answers", answer)).EnsureSuccessStatusCode();
    }

    private static async Task Look(Visitor visitor)
    {
        await visitor.CheckNarrow();
        await visitor.Check();
    }
}
