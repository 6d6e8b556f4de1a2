using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>A user without a pointer.</summary>
internal sealed class Keys(IPage page)
{
    private const int MostPresses = 120;

    public Task<bool> IsAtAsync(string selector) =>
        page.EvaluateAsync<bool>("selector => document.activeElement.matches(selector)", selector);

    /// <summary>Presses Tab until the focus is there; a user would give up too.</summary>
    public async Task ComeToAsync(string selector)
    {
        for (var presses = 0; presses < MostPresses && !await IsAtAsync(selector); presses++)
            await page.Keyboard.PressAsync("Tab");
        Assert.True(await IsAtAsync(selector), $"Tab does not come to {selector}.");
    }

    public async Task PressAsync(string selector, string key)
    {
        await ComeToAsync(selector);
        await page.Keyboard.PressAsync(key);
    }

    public async Task TypeAsync(string selector, string text)
    {
        await ComeToAsync(selector);
        await page.Keyboard.TypeAsync(text);
    }

    /// <summary>Asks what frees the rear axle.</summary>
    public async Task AskForAxleAsync()
    {
        await page.GetByRole(AriaRole.Searchbox).WaitForAsync();
        await TypeAsync("input[type=search]", "rear axle");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".now").WaitForAsync();
    }

    /// <summary>Says a line, sees what it was understood as, and keeps it.</summary>
    public async Task SayAsync(string line, string understood)
    {
        await TypeAsync(".quick input", line);
        await Assertions.Expect(page.Locator(".understood")).ToContainTextAsync(understood);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".quick")).ToContainTextAsync("Kept: ");
    }
}
