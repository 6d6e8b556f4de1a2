using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>PNG files of the pages: to look at them, and for the documentation.</summary>
internal static class Pictures
{
    /// <summary>The folder they are put in; none are taken when it is not set.</summary>
    private const string FolderVariable = "REFETTLE_PICTURES";

    public static async Task TakeAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is { } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png"), Animations = ScreenshotAnimations.Disabled });
    }
}
