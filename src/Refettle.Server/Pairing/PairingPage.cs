using System.Net;

namespace Refettle.Server.Pairing;

/// <summary>The one page that a device sees before it is paired. It needs no script.</summary>
internal static class PairingPage
{
    public const string Style = """
        html { scroll-padding: 1rem; }
        body { font: 1.25rem/1.5 system-ui, sans-serif; margin: 0 auto; max-width: 30rem; padding: 1rem; background: #f7f4ee; color: #1b1815; }
        input, button { font: inherit; box-sizing: border-box; width: 100%; min-height: 3.5rem; padding: .5rem 1rem; margin: .25rem 0 1rem; border: 2px solid #49423a; border-radius: .6rem; }
        button { background: #7a2812; color: #fffaf6; border-color: #7a2812; font-weight: 600; }
        :focus-visible { outline: 4px solid #0a4a86; outline-offset: 3px; }
        .wrong { background: #ffe7a0; color: #2d2000; padding: .75rem 1rem; border-radius: .6rem; }
        @media (prefers-color-scheme: dark) {
          body { background: #14120f; color: #f7f2ea; }
          input { background: #221f1b; color: #f7f2ea; border-color: #d2c9bd; }
          button { background: #ffb59c; color: #2b0f05; border-color: #ffb59c; }
          :focus-visible { outline-color: #8fc8ff; }
        }
        """;

    /// <param name="code">As scanned; empty when it has to be typed.</param>
    /// <param name="wrong">What was wrong with the last try; null at first.</param>
    public static string Of(string code, string? wrong) => $"""
        <!doctype html>
        <html lang="en">
        <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Pair this device</title><link rel="icon" href="data:,"><link rel="stylesheet" href="{PairingRoutes.Path}/style.css"></head>
        <body><main>
        <h1>Pair this device</h1>
        {(wrong is null ? "" : $"<p class=\"wrong\" role=\"alert\">{WebUtility.HtmlEncode(wrong)}</p>")}
        <p>The code is shown on the garage's own machine. It works once.</p>
        <form method="post" action="{PairingRoutes.Path}">
        <label for="code">Code</label><input id="code" name="code" required maxlength="20" autocomplete="off" autocapitalize="characters" value="{WebUtility.HtmlEncode(code)}">
        <label for="name">What to call this device</label><input id="name" name="name" required maxlength="60" value="Phone">
        <button>Pair</button>
        </form>
        </main></body>
        </html>
        """;
}
