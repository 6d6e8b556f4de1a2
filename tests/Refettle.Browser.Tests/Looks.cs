using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>The screens that the pages are made for.</summary>
internal static class Looks
{
    public static BrowserNewContextOptions Phone(ColorScheme theme = ColorScheme.Light) =>
        new()
        {
            ViewportSize = new() { Width = 390, Height = 844 },
            HasTouch = true,
            ColorScheme = theme,
            ReducedMotion = ReducedMotion.Reduce
        };

    public static BrowserNewContextOptions Laptop(ColorScheme theme = ColorScheme.Light) =>
        new() { ViewportSize = new() { Width = 1440, Height = 900 }, ColorScheme = theme, ReducedMotion = ReducedMotion.Reduce };

    /// <summary>A laptop's screen at 200 %: WCAG 2.2, 1.4.4.</summary>
    public static BrowserNewContextOptions Zoomed() =>
        new() { ViewportSize = new() { Width = 720, Height = 450 }, DeviceScaleFactor = 2, ReducedMotion = ReducedMotion.Reduce };

    /// <summary>The narrowest page of WCAG 2.2, 1.4.10 Reflow: what 1280 pixels become at 400 %.</summary>
    public static BrowserNewContextOptions Narrow() =>
        new() { ViewportSize = new() { Width = 320, Height = 640 }, ReducedMotion = ReducedMotion.Reduce };
}
