using System.Diagnostics;

namespace Refettle.Bench;

/// <summary>A clock that runs as this process uses its cores: a measure that does not see what else the machine does.</summary>
internal sealed class ProcessorTime(int cores) : TimeProvider
{
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp()
    {
        using var process = Process.GetCurrentProcess();
        return process.TotalProcessorTime.Ticks / cores;
    }
}
