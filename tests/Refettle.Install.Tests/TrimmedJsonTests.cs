using System.Text.Json;
using Microsoft.Playwright;
using Refettle.Browser.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Tests.Json;

namespace Refettle.Install.Tests;

/// <summary>The pages as they are published: trimmed. What is read by reflection can go there without a word, so every type that is
/// read or written as JSON is read and written there, whole, with each property missing and with each property null, and must come out, or
/// be refused, as it is untrimmed.</summary>
[Collection(AsServed.Name)]
public sealed class TrimmedJsonTests(Served served, Chromium browser) : IClassFixture<Chromium>
{
    private const string Refused = "refused";

    private const string Ask = """
        async asks => Promise.all(asks.map(ask => DotNet.invokeMethodAsync('Refettle.Web', 'Echo', ask.type, ask.text)
            .catch(problem => String(problem).includes('JsonException') ? 'refused' : String(problem))))
        """;

    [NeedsChromiumFact]
    public async Task Every_type_is_read_and_written_as_it_is_untrimmed()
    {
        await using var context = await browser.ContextAsync(Looks.Phone());
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(served.Address, "numbers").ToString());
        await page.Locator("main:not(.opening) h1").First.WaitForAsync();
        var wrong = new List<string>();
        foreach (var type in PageJson.Types)
            wrong.AddRange(await DifferencesAsync(page, type));
        Assert.True(wrong.Count == 0, $"{wrong.Count}: {string.Join('\n', wrong.Take(20))}");
    }

    private static async Task<IEnumerable<string>> DifferencesAsync(IPage page, Type type)
    {
        var asks = JsonSample.Around(type).Select(sample => new { type = NameOf(type), text = sample.ToJsonString(ExchangeJson.Options) })
            .ToList();
        var there = await page.EvaluateAsync<string[]>(Ask, asks);
        Assert.Equal(asks.Count, there.Length);
        return asks.Zip(there).Where(pair => Here(type, pair.First.text) != pair.Second)
            .Select(pair => $"{type} {pair.First.text}: {pair.Second}");
    }

    private static string Here(Type type, string text)
    {
        try
        {
            return JsonEcho.Echo(type.AssemblyQualifiedName!, text);
        }
        catch (JsonException)
        {
            return Refused;
        }
    }

    /// <summary>The page may have its framework in another version.</summary>
    private static string NameOf(Type type) =>
        System.Text.RegularExpressions.Regex.Replace(type.AssemblyQualifiedName!, ", Version=[^,]+, Culture=[^,]+, PublicKeyToken=[^],]+",
            "");
}
