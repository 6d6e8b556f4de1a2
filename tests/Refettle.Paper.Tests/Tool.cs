using System.Diagnostics;

namespace Refettle.Paper.Tests;

/// <summary>Programs of other people that look at what was made.</summary>
internal static class Tool
{
    public static bool IsThere(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, name)));

    public static string Run(string name, params string[] arguments)
    {
        using var process =
            Process.Start(new ProcessStartInfo(name, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"{name}: {said} {errors.Result}");
    }
}

/// <summary>A test that is skipped, by name, where a program is missing.</summary>
public sealed class ToolFactAttribute : FactAttribute
{
    public ToolFactAttribute(string tool) => Skip = Tool.IsThere(tool) ? null : $"{tool} is missing: see the packages in ./test";
}
