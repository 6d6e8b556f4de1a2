using System.Diagnostics;

namespace Refettle.Bench.Fuzzing;

/// <summary>Reads changed inputs one after the other and keeps what went wrong.</summary>
internal sealed class Lane
{
    private static readonly TimeSpan TooLong = TimeSpan.FromSeconds(1);

    /// <summary>What one input may make a reader allocate, in bytes; the largest seed has some thousand.</summary>
    private const long TooMuch = 300_000_000;

    private const int Again = 4;
    private const int Shown = 6_000;

    public TimeSpan Slowest { get; private set; }

    public long MostAllocated { get; private set; }

    public List<string> Faults { get; } = [];

    public void Run(string name, int count, Func<Trial> next)
    {
        for (var i = 0; i < count; i++)
        {
            var trial = next();
            var took = Timed(name, trial);
            // Other work on the machine can make anything slow; an input that is slow by itself is slow each time.
            for (var again = 0; took > TooLong && again < Again; again++)
                took = Timed(name, trial);
            Slowest = took > Slowest ? took : Slowest;
            if (took > TooLong)
                Add(name, $"{took.TotalSeconds:0.0} s", trial);
        }
    }

    private TimeSpan Timed(string name, Trial trial)
    {
        var (started, before) = (Stopwatch.GetTimestamp(), GC.GetAllocatedBytesForCurrentThread());
        try
        {
            trial.Read();
        }
        catch (Exception crash)
        {
            Add(name, $"{crash.GetType().Name}: {crash.Message}\n{Frame(crash)}", trial);
        }

        var took = Stopwatch.GetElapsedTime(started);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        MostAllocated = Math.Max(MostAllocated, allocated);
        if (allocated > TooMuch)
            Add(name, $"{allocated / 1_000_000} MB allocated", trial);
        return took;
    }

    private void Add(string name, string what, Trial trial) => Faults.Add(
        $"{name}: {what}\n--- input of {trial.Input.Length} bytes, base64{(trial.Input.Length > Shown ? ", its beginning" : "")}\n{Convert.ToBase64String(trial.Input.AsSpan(0, Math.Min(Shown, trial.Input.Length)))}\n---");

    private static string? Frame(Exception crash) => crash.StackTrace?.Split('\n').Take(4).Aggregate((above, line) => above + "\n" + line);
}
