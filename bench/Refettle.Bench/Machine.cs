using System.Runtime.InteropServices;

namespace Refettle.Bench;

/// <summary>What a measurement ran on.</summary>
public static class Machine
{
    public static string Line =>
        $"{Processor()}, {Environment.ProcessorCount} cores, {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.OSDescription}";

    private static string Processor()
    {
        const string file = "/proc/cpuinfo";
        var line = File.Exists(file)
            ? File.ReadLines(file).FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))
            : null;
        return line?[(line.IndexOf(':') + 1)..].Trim() ?? RuntimeInformation.ProcessArchitecture.ToString();
    }
}
