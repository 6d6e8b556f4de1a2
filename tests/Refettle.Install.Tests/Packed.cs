using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Refettle.Install.Tests;

/// <summary>The program file for this platform and the tool package, packed once as they are handed out, in a folder with
/// nothing else.</summary>
public sealed class Packed : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("refettle-install-").FullName;

    public Packed()
    {
        var platform = RuntimeInformation.RuntimeIdentifier;
        var made = Run("bash", Path.Combine(Checkout(), "pack"), platform, "tool");
        Assert.True(made.Code == 0, made.Said);
        File = Path.Combine(_folder, "refettle");
        System.IO.File.Move(Path.Combine(_folder, "packed", $"refettle-{platform}"), File);
    }

    public string File { get; }

    private string ToolFolder => Path.Combine(_folder, "tool");

    /// <summary>Runs it from a folder far from any checkout.</summary>
    public (int Code, string Said) Run(params string[] words) => Run(File, words);

    /// <summary>The tool package, installed beside it.</summary>
    public (int Code, string Said) Install() =>
        Run("dotnet", "tool", "install", "Refettle.Tool", "--tool-path", ToolFolder, "--source", Path.Combine(_folder, "packed"));

    public (int Code, string Said) RunTool(params string[] words) => Run(Path.Combine(ToolFolder, "refettle"), words);

    public Process Start(params string[] words) => Process.Start(Command(File, words))!;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private (int Code, string Said) Run(string program, params string[] words)
    {
        using var process = Process.Start(Command(program, words))!;
        var error = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd() + error.Result;
        process.WaitForExit();
        return (process.ExitCode, said);
    }

    private ProcessStartInfo Command(string program, string[] words)
    {
        var start = new ProcessStartInfo(program, words)
        { WorkingDirectory = _folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["REFETTLE_PACKED"] = Path.Combine(_folder, "packed");
        start.Environment["DOTNET_BUNDLE_EXTRACT_BASE_DIR"] = Path.Combine(_folder, "unpacked");
        start.Environment["REFETTLE_STORE"] = Path.Combine(_folder, "garage", "refettle.db");
        return start;
    }

    private static string Checkout([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
