namespace Refettle.Web.Garage;

/// <summary>How long one waits for the network. Who asks the server next should be answered with what was just
/// written; but on a silent network a request hangs for more than a minute, and who works goes on.</summary>
internal static class Patience
{
    private static readonly TimeSpan While = TimeSpan.FromSeconds(2);

    /// <summary>Waits for it a while; then it goes on by itself.</summary>
    public static async Task ForAWhileAsync(this Task work, TimeProvider clock) => await await Task.WhenAny(work, Task.Delay(While, clock));
}
