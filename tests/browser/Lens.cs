using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace WireCoach.Browser.Tests;

/// <summary>What every page and every state of it must bear.</summary>
internal static class Lens
{
    private const int LargestPage = 100 * 1024;

    private const string Rest = "place => document.querySelectorAll('.save').forEach(save => save.style.position = place)";

    private static readonly AxeRunOptions Tags = new()
    {
        RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    // Everything that a finger must hit: its box and, for a radio or a box to tick, it together with its label.
    private const string Small = """
        () => {
          const shown = e => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0 && !e.closest('.skip');
          const box = e => {
            const own = e.getBoundingClientRect();
            const label = e.type === 'radio' || e.type === 'checkbox' ? (e.closest('label') ?? document.querySelector(`label[for="${CSS.escape(e.id)}"]`))?.getBoundingClientRect() : null;
            return label ? { width: Math.max(own.right, label.right) - Math.min(own.left, label.left), height: Math.max(own.bottom, label.bottom) - Math.min(own.top, label.top) } : own;
          };
          const name = e => `${e.tagName.toLowerCase()} "${(e.textContent || e.id).trim().slice(0, 30)}" ${Math.round(box(e).width)}×${Math.round(box(e).height)}`;
          const all = [...document.querySelectorAll('a[href], button, select, summary, input:not([type=hidden]), textarea')].filter(shown);
          const small = all.filter(e => box(e).width < 43.9 || box(e).height < 43.9).map(name);
          const low = all.filter(e => (e.matches('.ask .go, .ask input[type=radio]')) && box(e).height < 63.9).map(e => 'low ' + name(e));
          const rects = [...document.querySelectorAll('.ask .go, .ask .tile')].filter(shown).map(e => [name(e), e.getBoundingClientRect()]);
          const close = [];
          for (let i = 0; i < rects.length; i++) for (let j = i + 1; j < rects.length; j++) {
            const [a, b] = [rects[i][1], rects[j][1]];
            const across = Math.max(a.left, b.left) - Math.min(a.right, b.right), down = Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom);
            if (across < 7.9 && down < 7.9) close.push(`close ${rects[i][0]} and ${rects[j][0]}`);
          }
          return [...small, ...low, ...close];
        }
        """;

    // The question, its first answer and the button to save it are in view and not covered, at the top of the page.
    private const string Hidden = """
        () => {
          const wrong = [];
          const see = (e, name) => {
            if (!e) { wrong.push(`no ${name}`); return; }
            const box = e.getBoundingClientRect(), column = e.closest('.talk').getBoundingClientRect();
            const bottom = Math.min(innerHeight, getComputedStyle(e.closest('.talk')).overflowY === 'auto' ? column.bottom : innerHeight);
            if (box.top < 0 || box.bottom > bottom + .5) wrong.push(`${name} at ${Math.round(box.top)} to ${Math.round(box.bottom)} of ${Math.round(bottom)}`);
            else {
              const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
              if (!top || !(e.contains(top) || top.contains(e))) wrong.push(`${name} is covered by ${top?.className || top?.tagName}`);
            }
          };
          window.scrollTo(0, 0);
          document.querySelector('.talk').scrollTo(0, 0);
          const form = document.querySelector('.ask .answers');
          see(document.querySelector('#asked'), 'question');
          see(form.querySelector('#value, #text, .tile label'), 'answer');
          see(form.querySelector('button.go'), 'button');
          if (innerWidth < 760) {
            const whole = form.getBoundingClientRect().width;
            for (const e of form.querySelectorAll('.go, .tiles:not(.units) > .tile')) {
              const box = e.getBoundingClientRect();
              if (box.width < whole - 1 || box.height < 63.9) wrong.push(`${e.textContent.trim().slice(0, 30)} is ${Math.round(box.width)}×${Math.round(box.height)} of ${Math.round(whole)}`);
            }
          }
          return wrong;
        }
        """;

    /// <summary>A question with its first answer and its button is seen without scrolling, also after its "why" was opened.</summary>
    public static async Task<IReadOnlyList<string>> Unseen(this Visitor visitor)
    {
        var closed = await visitor.Page.EvaluateAsync<string[]>(Hidden);
        await visitor.Page.EvaluateAsync("() => document.querySelectorAll('.ask .why').forEach(why => why.open = true)");
        var open = await visitor.Page.EvaluateAsync<string[]>(Hidden);
        await visitor.Page.EvaluateAsync("() => document.querySelectorAll('.ask .why').forEach(why => why.open = false)");
        return [.. closed, .. open.Except(closed, StringComparer.Ordinal).Select(one => $"with its why open: {one}")];
    }

    /// <summary>Nothing for axe to find, nothing too small for a glove, nothing beside the screen, no page too heavy.</summary>
    public static async Task Check(this Visitor visitor)
    {
        var page = await visitor.Seen();
        await page.EvaluateAsync(Rest, "static"); // what scrolls under the button that stays in view is scrolled free before it is touched
        await CheckAxe(page);
        var small = await page.EvaluateAsync<string[]>(Small);
        await page.EvaluateAsync(Rest, string.Empty);
        Assert.True(small.Length == 0, $"{page.Url}: {string.Join("; ", small)}");
        var html = await page.ContentAsync();
        Assert.True(html.Length < LargestPage, $"{page.Url} has {html.Length} characters.");
        await visitor.CheckWidth();
        Assert.Empty(visitor.Complaints);
    }

    private static async Task CheckAxe(IPage page)
    {
        var found = await page.RunAxe(Tags);
        Assert.True(found.Violations.Length == 0, $"{page.Url}: {string.Join("; ", found.Violations.Select(one => $"{one.Id} {string.Join(" | ", one.Nodes.Select(node => node.Html))}"))}");
        Assert.True(found.Passes.Length > 10, "axe did not look.");
    }

    /// <summary>Paper has nothing to press, and nothing for axe to find.</summary>
    public static async Task CheckPrinted(this Visitor visitor)
    {
        Assert.Equal(0, await visitor.Page.Locator("main button:visible, nav a:visible, main input:not([type=hidden]):visible, main textarea:visible").CountAsync());
        await CheckAxe(visitor.Page);
    }

    /// <summary>No page is wider than the screen.</summary>
    public static async Task CheckWidth(this Visitor visitor)
    {
        var wide = await visitor.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        var guilty = wide <= 0 ? string.Empty : await visitor.Page.EvaluateAsync<string>("""
            () => [...document.querySelectorAll('body *')]
              .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + .5 || (e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 2 && getComputedStyle(e).overflowX === 'visible'))
              .map(e => `${e.tagName}.${e.className} ${e.scrollWidth} of ${e.clientWidth}`).slice(-3).join(' | ')
            """);
        Assert.True(wide <= 0, $"{visitor.Page.Url} is {wide} px wider than the screen: {guilty}");
    }

    /// <summary>The same on the two narrowest screens.</summary>
    public static async Task CheckNarrow(this Visitor visitor)
    {
        var before = visitor.Page.ViewportSize!;
        foreach (var width in new[] { 320, 360 })
        {
            await visitor.Page.SetViewportSizeAsync(width, before.Height);
            await visitor.CheckWidth();
        }

        await visitor.Page.SetViewportSizeAsync(before.Width, before.Height);
    }
}
