using Microsoft.Playwright;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>One browser in one garage. What the page complains of is collected.</summary>
internal sealed class Visit : IAsyncDisposable
{
    /// <summary>Milliseconds; what is waited for is that it comes, not how soon.</summary>
    private const float Patience = 90_000;

    private const int Beginning = 300;

    private readonly List<string> _complaints = [];
    private readonly List<string> _failed = [];

    private Visit(TestGarage garage, IBrowserContext context, IPage page) => (Garage, Context, Page) = (garage, context, page);

    public TestGarage Garage { get; }

    public IBrowserContext Context { get; }

    public IPage Page { get; }

    /// <summary>Errors in the page's console and scripts, lost connections apart.</summary>
    public IEnumerable<string> Complaints =>
        _complaints.Where(line => !line.Contains("ERR_INTERNET_DISCONNECTED", StringComparison.Ordinal));

    public static async Task<Visit> StartAsync(TestGarage garage, IBrowserContext context)
    {
        var visit = new Visit(garage, context, await context.NewPageAsync());
        visit.Page.SetDefaultTimeout(Patience);
        // What is looked at is the page as it is, never as it was shown last (ShownTests looks at that).
        await visit.Page.AddInitScriptAsync("localStorage.clear()");
        visit.Page.Console += (_, message) =>
        {
            if (message.Type == "error")
                visit._complaints.Add(message.Text);
        };
        visit.Page.PageError += (_, problem) => visit._complaints.Add(problem);
        visit.Page.RequestFailed += (_, request) => visit._failed.Add($"{request.Method} {request.Url} {request.Failure}");
        await visit.GoAsync("");
        return visit;
    }

    /// <summary>How things stand, for who was not there when a test failed.</summary>
    public async Task<string> ToldAsync()
    {
        var text = await Page.EvaluateAsync<string>("() => document.body.innerText");
        return $"{Page.Url} says: {text[..Math.Min(Beginning, text.Length)]}\ncomplaints: {string.Join("\n  ", _complaints)}\nfailed requests: {string.Join("\n  ", _failed)}";
    }

    /// <summary>Loads a page of the small car: <c>off</c>, <c>parts</c>, <c>part/rear-axle</c>.</summary>
    public async Task GoAsync(string page)
    {
        await Page.GotoAsync(new Uri(Garage.Address, $"car/{SmallCar.Id}/{page}".TrimEnd('/')).ToString());
        await Page.GetByText("All in the logbook").WaitForAsync();
    }

    /// <summary>Asks what frees the rear axle.</summary>
    public async Task AskForAxleAsync()
    {
        await Page.GetByRole(AriaRole.Searchbox, new() { Name = "What do you want to get at?" }).FillAsync("rear axle");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Rear axle", Exact = false }).First.ClickAsync();
        await Page.GetByText("Proven").Or(Page.Locator(".now")).First.WaitForAsync();
    }

    /// <summary>Takes the network away once all is here that comes behind the first page.</summary>
    public async Task GoOfflineAsync()
    {
        await Page.WaitForFunctionAsync(
            "() => ['Refettle.Further', 'MathNet.Numerics'].every(part => performance.getEntriesByType('resource').some(one => one.name.includes(part) && one.responseEnd > 0))");
        await Context.SetOfflineAsync(true);
    }

    public async ValueTask DisposeAsync()
    {
        await Context.DisposeAsync();
        await Garage.DisposeAsync();
    }
}
