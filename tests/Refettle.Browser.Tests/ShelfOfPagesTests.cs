namespace Refettle.Browser.Tests;

/// <summary>What the service worker keeps for a time without a network must never stand in the way of what the server gives.</summary>
public sealed class ShelfOfPagesTests(Bench bench) : IClassFixture<Bench>
{
    private static readonly string Worker = File.ReadAllText(Path.Combine(Repository.Root, "src", "Refettle.Web", "wwwroot", "offline.js"));

    [NeedsChromiumTheory]
    [InlineData("async () => ({ match: async () => undefined, put: async () => { throw new Error('no room'); } })")]
    [InlineData("async () => ({ match: async () => undefined, put: () => new Promise(() => {}) })")]
    [InlineData("async () => { throw new Error('the shelf is broken'); }")]
    public async Task What_the_server_gives_is_answered_where_nothing_can_be_kept(string open)
    {
        await using var context = await bench.ContextAsync(Looks.Phone());
        var page = await context.NewPageAsync();
        var answer = page.EvaluateAsync<string>(Asked(open));
        Assert.Equal("as the server has it", await answer.WaitAsync(TimeSpan.FromSeconds(30)));
    }

    /// <summary>Runs the worker with a shelf and a server of the test's own, and asks it for a file.</summary>
    private static string Asked(string open) => $$"""
        async () => {
          const heard = {}, location = { origin: "http://garage" }, caches = { open: {{open}} };
          const addEventListener = (name, hear) => { heard[name] = hear; };
          const given = { ok: true, type: "basic", clone: () => given, text: async () => "as the server has it" };
          const fetch = async () => given;
          {{Worker}}
          let answered;
          heard.fetch({ request: { method: "GET", url: "http://garage/css/page.css" }, respondWith: one => { answered = one; }, waitUntil: () => {} });
          return (await answered).text();
        }
        """;
}
