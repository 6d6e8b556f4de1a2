using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Bench.Verbs;

/// <summary>How long a big logbook takes to open: read, decode, order, fold. <c>open-log [ENTRIES]</c>, 100,000 when not said.</summary>
/// <remarks>Each time is taken in a process of its own, so that it holds what starting up costs.</remarks>
internal static class OpenLog
{
    private const string Car = "heron";

    public static int Run(string[] arguments)
    {
        if (arguments is ["read", var file])
            return Read(file);
        var count = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 100_000;
        var folder = Directory.CreateTempSubdirectory("refettle-bench-");
        try
        {
            var path = Path.Combine(folder.FullName, "big.logbook");
            BigLog.Write(path, Car, count);
            Console.WriteLine(
                $"{count} entries, {new FileInfo(path).Length / 1_000_000.0:0.0} MB; times in ms, each row a process of its own");
            Console.WriteLine("  open   read   fold  total processor  again");
            for (var i = 0; i < 5; i++)
                ReadApart(path);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>With the runtime set as in Refettle.Cli.csproj.</summary>
    private static void ReadApart(string path)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["open-log", "read", path])
        {
            Environment = { ["DOTNET_TieredPGO"] = "0", ["DOTNET_gcConcurrent"] = "0" },
        };
        using var process = Process.Start(start)!;
        process.WaitForExit();
    }

    private static int Read(string file)
    {
        var first = Open(file);
        var second = Open(file);
        Console.WriteLine(
            $"{first.Open,6:0} {first.Read,6:0} {first.Fold,6:0} {first.Open + first.Read + first.Fold,6:0} {first.Processor,9:0} {second.Open + second.Read + second.Fold,6:0}");
        return 0;
    }

    private static (double Open, double Read, double Fold, double Processor) Open(string file)
    {
        var busy = Environment.CpuUsage.TotalTime;
        var watch = Stopwatch.StartNew();
        using var logbook = LogbookStore.Open(file, TimeProvider.System, RandomNumberGenerator.Create(), create: false).Value;
        var open = watch.Elapsed.TotalMilliseconds;
        var entries = logbook.Read(Car).Select(kept => kept.Entry).ToList();
        var read = watch.Elapsed.TotalMilliseconds;
        var history = CarHistory.Of(Car, entries);
        if (history.Lines.Count != entries.Count || history.Car.Structure.Parts.Count == 0)
            throw new InvalidOperationException("The log did not come back whole.");
        return (open, read - open, watch.Elapsed.TotalMilliseconds - read, (Environment.CpuUsage.TotalTime - busy).TotalMilliseconds);
    }
}
