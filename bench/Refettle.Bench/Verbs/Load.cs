using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Server;
using Refettle.Storage;
using Refettle.Web.Garage;

namespace Refettle.Bench.Verbs;

/// <summary>Many devices that write at once: <c>load [SECONDS]</c>, 60 when not said. 20 devices send 200 entries a second together, over
/// 127.0.0.1, to a server with its store on disk; in the same run a plain SQLite file takes as many durable commits. Server and
/// devices share the machine and the process. Exits with 1 when the slowest hundredth waited 100 ms or more, or an
/// acknowledged entry is missing.</summary>
internal static class Load
{
    private const int Devices = 20;
    private const int EachSecond = 10;
    private const double Allowed = 100;

    public static int Run(string[] arguments) =>
        RunAsync(arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 60).GetAwaiter().GetResult();

    private static async Task<int> RunAsync(int seconds)
    {
        var folder = Directory.CreateTempSubdirectory("refettle-load-");
        try
        {
            using var logbook =
                LogbookStore.Open(Path.Combine(folder.FullName, "store"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
            await using var server = RefettleHost.Build(new() { Logbook = logbook });
            await server.StartAsync();
            var address = new Uri(server.Urls.First());
            await Task.WhenAll(Enumerable.Range(0, Devices).Select(device => SendAsync(address, $"warm-{device}", 1)));
            var times = (await Task.WhenAll(Enumerable.Range(0, Devices).Select(device => SendAsync(address, $"device-{device}", seconds))))
                .SelectMany(each => each).Order().ToList();
            var kept = logbook.Read("heron").Count(one => one.Entry.Device.StartsWith("device-", StringComparison.Ordinal));
            return Told(times, kept, Commits(Path.Combine(folder.FullName, "plain"), 500));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static int Told(List<double> times, int kept, List<double> commits)
    {
        using var process = Process.GetCurrentProcess();
        var (median, slow) = (At(times, 0.5), At(times, 0.99));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{times.Count} entries acknowledged, {kept} kept; acknowledged after {median:0.0} ms (median), {slow:0.0} ms (p99), {times[^1]:0.0} ms (slowest)"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"one durable commit of plain SQLite: {At(commits, 0.5):0.0} ms (median), {At(commits, 0.99):0.0} ms (p99); ratio of medians {median / At(commits, 0.5):0.0}"));
        Console.WriteLine($"most memory: {process.PeakWorkingSet64 / 1_000_000} MB");
        return slow < Allowed && kept == times.Count ? 0 : 1;
    }

    private static double At(List<double> sorted, double share) => sorted[(int)((sorted.Count - 1) * share)];

    /// <summary>One device with its own chain and a steady hand.</summary>
    /// <returns>Milliseconds from asking to the acknowledgement, one for each entry.</returns>
    private static async Task<List<double>> SendAsync(Uri address, string device, int seconds)
    {
        using var http = new HttpClient { BaseAddress = address };
        http.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        var writer = new LogWriter(device, TimeProvider.System, RandomNumberGenerator.Create());
        var (end, times, due) = (new LogEnd(null, []), new List<double>(), Stopwatch.StartNew());
        for (var i = 0; i < seconds * EachSecond; i++)
        {
            var wait = TimeSpan.FromSeconds((double)i / EachSecond) - due.Elapsed;
            if (wait > TimeSpan.Zero)
                await Task.Delay(wait);
            var entry = writer.Next("heron", end, new Noted($"note {i}", null));
            var started = Stopwatch.GetTimestamp();
            using var answer = await http.PostAsJsonAsync("api/cars/heron/entries", new[] { entry }, ExchangeJson.Options);
            answer.EnsureSuccessStatusCode();
            times.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
            end = new(entry, []);
        }

        return times;
    }

    private static List<double> Commits(string path, int count)
    {
        using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        Execute(connection, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE Notes (Text TEXT)");
        var times = new List<double>();
        for (var i = 0; i < count; i++)
        {
            var started = Stopwatch.GetTimestamp();
            Execute(connection, "INSERT INTO Notes VALUES ('note')");
            times.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
        }

        times.Sort();
        return times;
    }

    private static void Execute(Microsoft.Data.Sqlite.SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
