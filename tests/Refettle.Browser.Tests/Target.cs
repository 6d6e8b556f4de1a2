using System.Text.Json;
using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>What a thumb, a pointer or a key can hit, and the part of it that can be seen, in CSS pixels of the whole page.</summary>
/// <param name="IsInline">A link in a sentence.</param>
/// <param name="IsWhole">Nothing of it is scrolled out of the box that it lies in.</param>
internal sealed record Target(string Says, double Left, double Top, double Right, double Bottom, bool IsInline, bool IsWhole)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    /// <summary>Pixels from edge to edge; 0 where they touch or overlap.</summary>
    public double Apart(Target other) =>
        double.Hypot(Between(Left, Right, other.Left, other.Right), Between(Top, Bottom, other.Top, other.Bottom));

    public override string ToString() => $"{Says} [{Left:0.#} {Top:0.#} {Right:0.#} {Bottom:0.#}]";

    /// <summary>The targets of the page, in the order of the document. The page is at its end then, where what sticks to the
    /// screen's edge lies in its place.</summary>
    public static async Task<Target[]> AllAsync(IPage page) =>
        JsonSerializer.Deserialize<Target[]>(await page.EvaluateAsync<string>(All), JsonSerializerOptions.Web)!;

    private static double Between(double start, double end, double otherStart, double otherEnd) =>
        Math.Max(0, Math.Max(otherStart - end, start - otherEnd));

    /// <summary>A script's function that lists the elements: a box to tick, and a file to choose, is as large as its label.</summary>
    public const string Elements = """
        () => [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [role=button]')]
          .filter(one => one.checkVisibility({ visibilityProperty: true }))
          .map(one => [one, one.closest('label') ?? one])
          .filter(([, shape]) => { const box = shape.getBoundingClientRect(); return box.width > 1 && box.height > 1 && box.right > 0; })
        """;

    private const string All = $$"""
        () => {
          window.scrollTo(0, document.documentElement.scrollHeight);
          const named = one => one.tagName.toLowerCase() + (one.getAttribute('class') ?? '').trim().split(/\s+/).filter(Boolean).map(name => '.' + name).join('');
          const says = one => `${named(one)} “${(one.ariaLabel ?? one.labels?.[0]?.innerText ?? one.textContent).trim().slice(0, 30)}” in ${named(one.parentElement)}`;
          const cut = shape => {
            let { left, top, right, bottom } = shape.getBoundingClientRect();
            const whole = (right - left) * (bottom - top);
            for (let box = shape.parentElement; box && box !== document.documentElement; box = box.parentElement) {
              if (getComputedStyle(box).overflow === 'visible') continue;
              const edge = box.getBoundingClientRect();
              [left, top, right, bottom] = [Math.max(left, edge.left), Math.max(top, edge.top), Math.min(right, edge.right), Math.min(bottom, edge.bottom)];
            }
            return { left, top: top + scrollY, right, bottom: bottom + scrollY, isWhole: (right - left) * (bottom - top) >= whole - 1 };
          };
          const isInline = one => getComputedStyle(one).display === 'inline' && [...one.parentElement.childNodes].some(text => text.nodeType === Node.TEXT_NODE && text.data.trim().length > 1);
          return JSON.stringify(({{Elements}})().map(([one, shape]) => ({ ...cut(shape), says: says(one), isInline: isInline(one) }))
            .filter(target => target.right > target.left && target.bottom > target.top));
        }
        """;
}
