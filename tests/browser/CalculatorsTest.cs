namespace WireCoach.Browser.Tests;

/// <summary>The calculators as pages: an example, a link that gives the same again, and a slip of the finger.</summary>
public sealed class CalculatorsTest(Bench bench)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    public async Task The_list_leads_to_every_calculator(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.OpenMenu();
        await visitor.Press("Calculate");
        await visitor.Picture("calculators", whole: true);
        await visitor.CheckNarrow();
        await visitor.Check();
        Assert.Equal(6, await visitor.Page.Locator(".rows a").CountAsync());
    }

    [Theory]
    [InlineData("plate", "Poles", "rpm", "fast")]
    [InlineData("supply", "Conductor", "volts", "400 bar")]
    [InlineData("capacitor", "Good between", "tolerancePercent", "six")]
    [InlineData("insulation", "Least that it needs", "ratedVolts", "-")]
    [InlineData("winding-heat", "Rise", "hotOhms", "hot")]
    [InlineData("unbalance", "Usable share of the power", "volts[1]", "4x0")]
    public async Task A_calculator_answers_its_example_and_keeps_what_cannot_be_read(string name, string figure, string field, string slip)
    {
        foreach (var device in new[] { Device.Phone, Device.Desk, Device.Of("phone-no-scripts") })
        {
            await using var visitor = await bench.Visit(device);
            await visitor.Go($"/calculators/{name}");
            await visitor.Picture($"calculator-{name}-empty", whole: true);
            await Looked();
            await visitor.Press("Show me an example");
            await visitor.Page.GetByText(figure, new() { Exact = true }).First.WaitForAsync();
            await visitor.Picture($"calculator-{name}", whole: true);
            await Looked();
            Assert.Equal(0, await visitor.Page.Locator(".wrong-line").CountAsync());
            var answer = await visitor.Page.Locator("section[aria-labelledby=answer]").InnerTextAsync();

            await visitor.Go("/" + await visitor.Page.GetByText("Link to exactly this").GetAttributeAsync("href"));
            Assert.Equal(answer, await visitor.Page.Locator("section[aria-labelledby=answer]").InnerTextAsync());

            await visitor.Page.Locator($"[name='{field}']").FillAsync(slip);
            await visitor.Press("Work it out");
            await visitor.Picture($"calculator-{name}-slip", whole: true);
            Assert.Equal(slip, await visitor.Page.Locator($"[name='{field}']").InputValueAsync());
            Assert.Contains(slip, await visitor.Page.Locator($".entry:has([name='{field}']) .wrong-line").InnerTextAsync(), StringComparison.Ordinal);
            Assert.Equal(0, await visitor.Page.Locator("section[aria-labelledby=answer]").CountAsync());
            await Looked();

            // The page is the same one on every device: it is gone over whole on the narrowest, and for its width on the others.
            Task Looked() => device == Device.Phone ? Check(visitor) : visitor.CheckNarrow();
        }
    }

    private static async Task Check(Visitor visitor)
    {
        await visitor.CheckNarrow();
        await visitor.Check();
    }
}
