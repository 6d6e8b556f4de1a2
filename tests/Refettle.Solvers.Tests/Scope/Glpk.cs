using System.Diagnostics;
using System.Globalization;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>A test that is skipped where GLPK is missing.</summary>
public sealed class GlpkFactAttribute : FactAttribute
{
    public GlpkFactAttribute() => Skip = Glpk.IsInstalled ? null : "glpsol is missing: apt-get install glpk-utils";
}

/// <summary>glpsol, of Debian's package glpk-utils.</summary>
internal static class Glpk
{
    public static bool IsInstalled => OperatingSystem.IsLinux()
        && (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, "glpsol")));

    /// <summary>The optimum of a program in CPLEX LP format; null when it has no solution.</summary>
    public static double? Optimum(string program)
    {
        var folder = Directory.CreateTempSubdirectory("refettle-glpk-");
        try
        {
            var (model, solution) = (Path.Combine(folder.FullName, "model.lp"), Path.Combine(folder.FullName, "solution.txt"));
            File.WriteAllText(model, program);
            using var run = Process.Start(new ProcessStartInfo("glpsol", ["--lp", model, "--cuts", "--write", solution])
            { RedirectStandardOutput = true })!;
            var said = run.StandardOutput.ReadToEnd();
            run.WaitForExit();
            return Read(File.Exists(solution) ? File.ReadAllLines(solution) : [], said);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The line <c>s mip rows columns status objective</c>: o is an integer optimum, n and u mean that there is none.</summary>
    private static double? Read(string[] lines, string said)
    {
        var words = (lines.FirstOrDefault(line => line.StartsWith("s mip ", StringComparison.Ordinal)) ?? "")
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 6 && words[4] == "o")
            return double.Parse(words[5], CultureInfo.InvariantCulture);
        Assert.True(said.Contains("NO PRIMAL FEASIBLE", StringComparison.Ordinal) || said.Contains("NO FEASIBLE", StringComparison.Ordinal)
            || said.Contains("NO INTEGER FEASIBLE", StringComparison.Ordinal), said);
        return null;
    }
}
