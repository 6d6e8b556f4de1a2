using System.Text.Json;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Sheets;
using Refettle.Solvers;

namespace Refettle.Cli.Tests;

/// <summary>The cars of <c>samples/</c>, described once from their commands.</summary>
public class DemoCars : IDisposable
{
    private readonly Bench _bench = new(() => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())));

    public DemoCars()
    {
        foreach (var script in Directory.GetFiles(Path.Combine(_bench.Around.Content, "samples"), "*.commands")
            .OrderDescending(StringComparer.Ordinal))
            Assert.True(_bench.Run("script", script) == ExitCode.Good, _bench.Error);
    }

    public Structure Estate => Exported("heron-22");

    public Structure Saloon => Exported("heron-18");

    /// <summary>The estate's answer, as it stands.</summary>
    public JsonElement Ask(params string[] words) => _bench.Json([.. words, "--car", "heron-22"]);

    /// <summary>What the estate's answer says to a person.</summary>
    public string Tell(params string[] words) => _bench.Out([.. words, "--car", "heron-22"]);

    /// <summary>What was said beside the last answer.</summary>
    public string Aside => _bench.Error;

    /// <summary>The answer of an estate at which nothing was done yet.</summary>
    public JsonElement AskWhole(params string[] words) => _bench.Json([.. words, "--sheet", Sheet("heron-22")]);

    /// <summary>The facts of a plan's steps, in order.</summary>
    public static string[] Facts(JsonElement plan) =>
        [.. plan.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("fact").GetString()!)];

    public void Dispose()
    {
        _bench.Dispose();
        GC.SuppressFinalize(this);
    }

    private string Sheet(string car)
    {
        var file = _bench.File($"{car}.yaml", "");
        Assert.True(_bench.Run("export", file, "--car", car) == ExitCode.Good, _bench.Error);
        return file;
    }

    private Structure Exported(string car)
    {
        var file = Sheet(car);
        var sheet = SheetReader.Read(File.ReadAllBytes(file), file);
        return sheet.IsGood ? sheet.Value.Structure : throw new InvalidDataException(string.Join('\n', sheet.Faults));
    }
}

/// <summary>The same with no job chosen at the estate: the goals are those that are asked for.</summary>
public sealed class UnchosenCars : DemoCars
{
    public UnchosenCars() => Ask("choose");
}
