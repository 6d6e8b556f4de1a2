using System.Text.Json;
using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Goes over a page with Tab alone, from its first target round to it again.</summary>
internal static class TabWalk
{
    /// <summary>A field for a day has three parts and a calendar's button; each is a press.</summary>
    private const int PressesInOne = 6;

    private const int Nowhere = -2;

    /// <summary>What is wrong with it: a target that Tab does not come to, comes to in another order than
    /// the document's, or does not leave again; a focus that is not seen whole (WCAG 2.2: 2.1.1, 2.1.2, 2.4.3, 2.4.7, 2.4.12; at least 2
    /// pixels of outline as in 2.4.13); something to click that is no target at all.</summary>
    public static async Task<IEnumerable<string>> FaultsAsync(IPage page)
    {
        var targets = await page.EvaluateAsync<string[]>(Begin);
        var faults = new List<string>(await page.EvaluateAsync<string[]>(MouseOnly));
        var (reached, last, furthest, same) = (new HashSet<int>(), Nowhere, 0, 0);
        while (!reached.Contains(0))
        {
            var stop = await NextAsync(page);
            same = stop.Index == last ? same + 1 : 0;
            if (same >= PressesInOne)
                return [.. faults, $"Tab does not leave {stop.Says}"];
            if (same == 0)
                faults.AddRange(stop.Faults);
            if (stop.Index > 0 && furthest == targets.Length - 1 && stop.Index < furthest)
                break;
            if (stop.Index > 0 && stop.Index < furthest)
                return [.. faults, $"Tab goes back from {targets[furthest]} to {stop.Says}"];
            (last, furthest) = (stop.Index, Math.Max(furthest, stop.Index));
            reached.Add(stop.Index);
        }

        // Round the end the browser hands the focus over in its own time, so the first may be passed unseen; the walk began there.
        return [.. faults, .. targets.Where((_, i) => i > 0 && !reached.Contains(i)).Select(target => $"Tab does not come to {target}")];
    }

    private static async Task<Stop> NextAsync(IPage page)
    {
        await page.Keyboard.PressAsync("Tab");
        return JsonSerializer.Deserialize<Stop>(await page.EvaluateAsync<string>(Look), JsonSerializerOptions.Web)!;
    }

    /// <param name="Index">Its place among the targets; −1 for the page itself, a box that scrolls.</param>
    private sealed record Stop(int Index, string Says, string[] Faults);

    /// <summary>Sets the focus on the first target. Of radio buttons one is a stop, the others are reached by
    /// arrows; what is switched off is none.</summary>
    private const string Begin = $$"""
        () => {
          const all = ({{Target.Elements}})().map(([one]) => one).filter(one => !one.disabled);
          const skip = document.querySelector('.skip');
          window.stops = [...(skip ? [skip] : []), ...all].filter(one => one.type !== 'radio' || one.checked);
          window.named = one => one.outerHTML.replace(/<svg.*?<\/svg>/g, '').replace(/ _bl_[^ >]*/g, '').slice(0, 140);
          stops[0].focus();
          return stops.map(named);
        }
        """;

    private const string MouseOnly = $$"""
        () => [...document.querySelectorAll('body *')]
          .filter(one => one.draggable && !one.matches('a, img') || getComputedStyle(one).cursor === 'pointer')
          .filter(one => one.checkVisibility() && !one.closest('a[href], button, input, select, summary, label, [role=button]') && !one.querySelector('button, a[href]'))
          .map(one => `only the mouse reaches ${one.outerHTML.slice(0, 140)}`)
        """;

    /// <summary>The focus and how it is shown: the outline (a stroke in a drawing) of the element, or of the label that stands for it,
    /// inside the window and all that cuts it off, and under nothing. Of a field for many lines a browser
    /// shows the one that is written in.</summary>
    private const string Look = """
        () => {
          const one = document.activeElement;
          const index = window.stops.indexOf(one);
          if (one === document.body || one === null) return JSON.stringify({ index: -1, says: 'the page', faults: [] });
          const faults = [];
          const shape = one.closest('label.button') ?? one;
          const style = getComputedStyle(shape);
          const stroke = shape.querySelector(':scope > .shape');
          const outline = style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth);
          const seen = stroke ? parseFloat(getComputedStyle(stroke).strokeWidth) - 2 : outline;
          const says = window.named(one);
          if (seen < 2) faults.push(`the focus is not seen on ${says}`);
          const box = shape.getBoundingClientRect();
          const out = stroke ? 0 : Math.max(0, outline + parseFloat(style.outlineOffset)) - 0.5;
          const cuts = edge => box.left - out < edge.left || box.top - out < edge.top || box.right + out > edge.right || box.bottom + out > edge.bottom;
          if (box.height < innerHeight && cuts({ left: 0, top: 0, right: innerWidth, bottom: innerHeight })) faults.push(`the window cuts off the focus on ${says} ${JSON.stringify(box)}`);
          for (let around = shape.parentElement; around && around !== document.documentElement; around = around.parentElement)
            if (!stroke && getComputedStyle(around).overflow !== 'visible' && cuts(around.getBoundingClientRect())) faults.push(`.${around.className} cuts off the focus on ${says}`);
          const [across, down] = [box.left + box.width / 2, box.top + box.height / 2];
          const edges = [[across, box.top + 3], [box.left + 3, down], [box.right - 3, down], [across, box.bottom - 3]].slice(0, one.matches('textarea') ? 1 : 4);
          for (const [x, y] of edges) {
            const top = document.elementFromPoint(x, y);
            if (top && !shape.contains(top) && !top.contains(shape)) { faults.push(`${top.outerHTML.slice(0, 60)} lies over the focus on ${says}`); break; }
          }
          return JSON.stringify({ index, says, faults });
        }
        """;
}
