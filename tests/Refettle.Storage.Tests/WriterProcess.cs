using System.Diagnostics;

namespace Refettle.Storage.Tests;

/// <summary>Another process that writes notes into a logbook and says which ones were acknowledged.</summary>
internal sealed class WriterProcess : IDisposable
{
    private readonly Process _process;
    private readonly List<Guid> _acknowledged = [];
    private readonly TaskCompletionSource _first = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private WriterProcess(string file, int count, string name)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "Refettle.Storage.Writer.dll");
        _process = Process.Start(new ProcessStartInfo("dotnet", ["exec", program, file, "heron", $"{count}", name])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _process.OutputDataReceived += (_, line) => Hear(line.Data);
        _process.BeginOutputReadLine();
    }

    public static WriterProcess Start(string file, int count, string name) => new(file, count, name);

    /// <summary>Waits until the process has had something acknowledged.</summary>
    public Task First => _first.Task;

    /// <summary>Waits for the end; what was acknowledged, and what the process complained of.</summary>
    public (IReadOnlyList<Guid> Acknowledged, string Complaint) Finish()
    {
        var complaint = _process.StandardError.ReadToEnd();
        _process.WaitForExit();
        return (_acknowledged, complaint);
    }

    /// <summary>SIGKILL: nothing of its own runs any more.</summary>
    public void Kill() => _process.Kill();

    public void Dispose() => _process.Dispose();

    private void Hear(string? line)
    {
        if (!Guid.TryParse(line, out var id))
            return;
        _acknowledged.Add(id);
        _first.TrySetResult();
    }
}
