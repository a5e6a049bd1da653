using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace WireCoach.Browser.Tests;

/// <summary>What every page and every state of it must bear.</summary>
internal static class Lens
{
    private const int LargestPage = 100 * 1024;

    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private const string HasAxe = "() => typeof axe !== 'undefined'";

    // In the page itself: the package for this browser opens a window more, with axe in it once again, for every look.
    private const string Axed = """
        async () => {
          const found = await axe.run(document, {
            runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
            resultTypes: ['violations'],
          });
          return { wrong: found.violations.map(one => `${one.id} ${one.nodes.map(node => node.html).join(' | ')}`), passed: found.passes.length };
        }
        """;

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

    // What scrolls under the button that stays in view is scrolled free before it is touched.
    private const string Looked = $$"""
        async () => {
          const rest = place => document.querySelectorAll('.save').forEach(save => save.style.position = place);
          rest('static');
          const found = await ({{Axed}})();
          const small = ({{Small}})();
          rest('');
          return { ...found, small, length: `${document.doctype ? '<!DOCTYPE html>' : ''}${document.documentElement.outerHTML}`.length };
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

    private const string HiddenTwice = $$"""
        () => {
          const whys = open => document.querySelectorAll('.ask .why').forEach(why => why.open = open);
          const closed = ({{Hidden}})();
          whys(true);
          const open = ({{Hidden}})();
          whys(false);
          return [closed, open];
        }
        """;

    /// <summary>A question with its first answer and its button is seen without scrolling, also after its "why" was opened.</summary>
    public static async Task<IReadOnlyList<string>> Unseen(this Visitor visitor)
    {
        var looks = await visitor.Page.EvaluateAsync<string[][]>(HiddenTwice);
        return [.. looks[0], .. looks[1].Except(looks[0], StringComparer.Ordinal).Select(one => $"with its why open: {one}")];
    }

    /// <summary>Nothing for axe to find, nothing too small for a glove, nothing beside the screen, no page too heavy.</summary>
    public static async Task Check(this Visitor visitor)
    {
        var page = await visitor.Seen();
        var looked = await Look(page, Looked);
        var small = Texts(looked, "small");
        Assert.True(small.Length == 0, $"{page.Url}: {string.Join("; ", small)}");
        var length = looked.GetProperty("length").GetInt32();
        Assert.True(length is > 0 and < LargestPage, $"{page.Url} has {length} characters.");
        await visitor.CheckWidth();
        Assert.Empty(visitor.Complaints);
    }

    private static async Task<JsonElement> Look(IPage page, string script)
    {
        if (!await page.EvaluateAsync<bool>(HasAxe))
        {
            await page.EvaluateAsync(Axe);
        }

        var found = await page.EvaluateAsync<JsonElement>(script);
        var wrong = Texts(found, "wrong");
        Assert.True(wrong.Length == 0, $"{page.Url}: {string.Join("; ", wrong)}");
        Assert.True(found.GetProperty("passed").GetInt32() > 10, "axe did not look.");
        return found;
    }

    private static string[] Texts(JsonElement found, string name) => [.. found.GetProperty(name).EnumerateArray().Select(one => one.GetString()!)];

    /// <summary>Paper has nothing to press, and nothing for axe to find.</summary>
    public static async Task CheckPrinted(this Visitor visitor)
    {
        Assert.Equal(0, await visitor.Page.Locator("main button:visible, nav a:visible, main input:not([type=hidden]):visible, main textarea:visible").CountAsync());
        await Look(visitor.Page, Axed);
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
