using System.Diagnostics;

namespace Refettle.Solvers.Tests.AnswerSets;

/// <summary>A test that is skipped where the answer set solver is missing.</summary>
public sealed class ClaspFactAttribute : FactAttribute
{
    public ClaspFactAttribute() => Skip = Clasp.IsInstalled ? null : "gringo and clasp are missing: apt-get install gringo clasp";
}

/// <summary>gringo and clasp (Debian packages of these names), one into the other.</summary>
internal static class Clasp
{
    public static bool IsInstalled => OperatingSystem.IsLinux() && IsOnPath("gringo") && IsOnPath("clasp");

    /// <summary>The least sum that a program minimizes; null when it has no answer set.</summary>
    public static long? Least(string program)
    {
        using var pipe = Process.Start(new ProcessStartInfo("sh", ["-c", "gringo - | clasp --outf=1 --opt-strategy=usc"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        var reading = pipe.StandardOutput.ReadToEndAsync();
        pipe.StandardInput.Write(program);
        pipe.StandardInput.Close();
        pipe.WaitForExit();
        var lines = reading.Result.Split('\n');
        if (lines.Contains("INCONSISTENT"))
            return null;
        Assert.True(lines.Contains("OPTIMUM"), $"clasp did not finish: {reading.Result}");
        return long.Parse(lines.Last(line => line.StartsWith("COST ", StringComparison.Ordinal))["COST ".Length..]);
    }

    private static bool IsOnPath(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, name)));
}
