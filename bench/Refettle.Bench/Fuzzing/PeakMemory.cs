using System.Diagnostics;
using System.Globalization;

namespace Refettle.Bench.Fuzzing;

/// <summary>The most memory that this process held since the count was begun anew.</summary>
internal static class PeakMemory
{
    private const string Reset = "/proc/self/clear_refs";
    private const string Status = "/proc/self/status";

    /// <summary>Where the system cannot forget a peak, later ones include it.</summary>
    public static void Forget()
    {
        GC.Collect();
        if (File.Exists(Reset))
            File.WriteAllText(Reset, "5");
    }

    /// <summary>Megabytes.</summary>
    public static long Read()
    {
        if (File.Exists(Status)
            && File.ReadLines(Status).FirstOrDefault(line => line.StartsWith("VmHWM:", StringComparison.Ordinal)) is { } line)
            return long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2].Trim()
                .Replace("VmHWM:", "", StringComparison.Ordinal), CultureInfo.InvariantCulture) / 1_000;
        using var process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64 / 1_000_000;
    }
}
