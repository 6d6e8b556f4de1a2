using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Bench.Crash;

/// <summary>A process of its own that writes notes into a logbook without end, a photo with every third, and
/// says which ones were acknowledged.</summary>
internal sealed class NoteWriter : IDisposable
{
    public const string Car = "heron";

    /// <summary>The word by which a verb is asked to be the writer.</summary>
    public const string Verb = "write";

    private readonly Process _process;
    private const int NotesPerPhoto = 3;
    private const int LargestPhoto = 200_000;

    private readonly HashSet<Guid> _acknowledged = [];
    private readonly HashSet<string> _photos = [];

    public NoteWriter(string verb, string file, params IEnumerable<(string Name, string Value)> environment)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, [verb, Verb, file]) { RedirectStandardOutput = true };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, line) => Hear(line.Data);
        _process.BeginOutputReadLine();
    }

    /// <summary>The writer itself.</summary>
    public static int Run(string file)
    {
        using var logbook = LogbookStore.Open(file, TimeProvider.System, RandomNumberGenerator.Create()).Value;
        var random = new Random(Environment.ProcessId);
        for (var i = 0; ; i++)
        {
            var written = logbook.Write(Car, new Noted($"note {i.ToString(CultureInfo.InvariantCulture)}", null));
            Console.WriteLine(written.Value[0].Id);
            if (i % NotesPerPhoto == 0)
                Console.WriteLine(logbook.Photos.Keep(NoisePicture.Png(random, random.Next(LargestPhoto))).Value);
            Console.Out.Flush();
        }
    }

    /// <summary>The hashes of the photos that were acknowledged.</summary>
    public string[] Photos()
    {
        lock (_acknowledged)
            return [.. _photos];
    }

    public Guid[] Acknowledged()
    {
        lock (_acknowledged)
            return [.. _acknowledged];
    }

    public void WaitForOne()
    {
        while (Acknowledged().Length == 0 && !_process.HasExited)
            Thread.Sleep(10);
    }

    /// <summary>Whether it ended by itself, which it never should; that is told.</summary>
    public bool Ended()
    {
        if (_process.HasExited)
            Console.WriteLine("the writer ended by itself");
        return _process.HasExited;
    }

    public void Stop() => _ = Signal(_process.Id, 19);

    public void Continue() => _ = Signal(_process.Id, 18);

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            Kill();
        _process.Dispose();
    }

    private void Hear(string? line)
    {
        lock (_acknowledged)
        {
            if (Guid.TryParse(line, out var id))
                _acknowledged.Add(id);
            else if (line is not null && ContentHash.IsValid(line))
                _photos.Add(line);
        }
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Signal(int process, int signal);
}
