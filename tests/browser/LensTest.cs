namespace WireCoach.Browser.Tests;

/// <summary>The look at every page sees what it is for: with each fault put into a sound page, it complains of that one.</summary>
public sealed class LensTest(Bench bench)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desk-no-scripts")]
    public async Task A_fault_that_is_put_into_a_sound_page_is_seen(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        foreach (var (fault, complaint) in new[]
        {
            ("document.documentElement.removeAttribute('lang')", "html-has-lang"),
            ("document.querySelector('main p').style.color = '#777'; document.querySelector('main p').style.background = '#888'", "color-contrast"),
            ("document.querySelector('#begin-now').style = 'min-height: 0; height: 30px; padding: 0'", "×30"),
            ("document.querySelector('main').append(document.createComment('x'.repeat(102400)))", "characters"),
            ("document.querySelector('main').style.width = '3000px'", "wider than the screen"),
        })
        {
            await visitor.Go("/");
            await visitor.Check();
            await visitor.Page.EvaluateAsync($"() => {{ {fault} }}");
            Assert.Contains(complaint, (await Assert.ThrowsAnyAsync<Exception>(visitor.Check)).Message, StringComparison.Ordinal);
        }
    }
}
