using System.Text.RegularExpressions;

namespace Refettle.Cli.Tests.Verbs;

public sealed partial class ServeVerbTests
{
    [Fact]
    public async Task The_pages_are_served_until_interrupted()
    {
        using var interrupt = new CancellationTokenSource();
        using var bench = new Bench(interrupt: interrupt.Token);
        var output = new AddressWriter();
        var serving = Task.Run(() => new Shell(bench.Around with { Out = output }).Run(["serve", "--port", "0"]));
        Assert.Same(output.Address, await Task.WhenAny(output.Address, serving));
        using var client = new HttpClient();
        Assert.Contains("<title>", await client.GetStringAsync(await output.Address), StringComparison.Ordinal);
        await interrupt.CancelAsync();
        Assert.Equal(ExitCode.Good, await serving);
    }

    /// <summary>Waits for the address to be written.</summary>
    private sealed partial class AddressWriter : StringWriter
    {
        private readonly TaskCompletionSource<Uri> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<Uri> Address => _address.Task;

        public override void WriteLine(string? value)
        {
            if (AnAddress().Match(value ?? "") is { Success: true } address)
                _address.TrySetResult(new(address.Value));
        }

        [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
        private static partial Regex AnAddress();
    }
}
