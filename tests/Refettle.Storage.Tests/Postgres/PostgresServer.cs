using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Refettle.Storage.Tests.Postgres;

/// <summary>A PostgreSQL server of its own, from Debian's package, with its data in a folder that is thrown away. Each
/// test takes a database of its own.</summary>
public sealed class PostgresServer : IDisposable
{
    private const string Packaged = "/usr/lib/postgresql";
    private readonly string _folder = Directory.CreateTempSubdirectory("refettle-postgres-").FullName;
    private readonly int _port;
    private int _databases;

    public PostgresServer()
    {
        if (Programs is null)
            return;
        _port = FreePort();
        Run("chown", "postgres", _folder);
        AsPostgres("initdb", "-D", Data, "-A", "trust", "-U", "postgres", "--no-sync");
        AsPostgres("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(_folder, "log"), "-o",
            $"-p {_port} -k {_folder} -c listen_addresses=127.0.0.1", "start");
    }

    /// <summary>Where the newest server's programs are; null when there is none, or when this is not the super-user, who
    /// alone may start it as its own user.</summary>
    public static string? Programs { get; } = Environment.IsPrivilegedProcess && Directory.Exists(Packaged)
        ? Directory.GetDirectories(Packaged).Select(version => Path.Combine(version, "bin"))
            .Where(bin => File.Exists(Path.Combine(bin, "initdb"))).Max(StringComparer.Ordinal)
        : null;

    private string Data => Path.Combine(_folder, "data");

    /// <summary>A connection to an empty database.</summary>
    public string NewDatabase()
    {
        var name = $"garage{Interlocked.Increment(ref _databases)}";
        AsPostgres("createdb", "-h", "127.0.0.1", "-p", $"{_port}", name);
        return $"Host=127.0.0.1;Port={_port};Database={name};Username=postgres";
    }

    public void Dispose()
    {
        if (Programs is not null)
            AsPostgres("pg_ctl", "-D", Data, "-m", "immediate", "stop");
        Directory.Delete(_folder, recursive: true);
    }

    private static void AsPostgres(string program, params string[] words) =>
        Run("runuser", ["-u", "postgres", "--", Path.Combine(Programs!, program), .. words]);

    private static void Run(string program, params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, WorkingDirectory = "/" })!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} {string.Join(' ', words)} ended with {process.ExitCode}");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

/// <summary>Skipped by name where there is no PostgreSQL to start.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NeedsPostgresFactAttribute : FactAttribute
{
    public NeedsPostgresFactAttribute()
    {
        if (PostgresServer.Programs is null)
            Skip = "Needs PostgreSQL from Debian's package, started by the super-user.";
    }
}
