using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;

namespace Refettle.Web.Tests.Garage;

/// <summary>
/// A touch of a page that may be drawn anew at any time, as its log and plan arrive: finds the element and touches it in one go on
/// the page's own thread, since what was found before a drawing answers no more after it (bUnit's UnknownEventHandlerIdException).
/// </summary>
internal static class Touching
{
    /// <summary>Waits for the element, touches it and waits for what follows.</summary>
    /// <param name="page">The page.</param>
    /// <param name="selector">A CSS selector.</param>
    /// <param name="touch">What is done to it.</param>
    /// <param name="at">Which of those that the selector finds; the first unless told.</param>
    public static async Task TouchAsync<T>(this IRenderedComponent<T> page, string selector, Func<IElement, Task> touch, Index at = default)
        where T : IComponent
    {
        await page.WaitForElementAsync(selector, TimeSpan.FromSeconds(30));
        await page.InvokeAsync(() => touch(page.FindAll(selector)[at]));
    }
}
