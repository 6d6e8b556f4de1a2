using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Refettle.Install.Tests;

/// <summary>The demo in the pages of the program that is handed out.</summary>
public sealed partial class Served : IDisposable
{
    private readonly Packed _packed = new();
    private readonly Process _serving;

    public Served()
    {
        _serving = _packed.Start("demo", "--serve", "--port", "0");
        Address = new(AddressIn(_serving.StandardOutput));
    }

    public Uri Address { get; }

    /// <summary>Runs the program from a folder far from any checkout.</summary>
    public (int Code, string Said) Run(params string[] words) => _packed.Run(words);

    public (int Code, string Said) InstallTool() => _packed.Install();

    public (int Code, string Said) RunTool(params string[] words) => _packed.RunTool(words);

    public void Dispose()
    {
        _serving.Kill();
        _serving.WaitForExit();
        _serving.Dispose();
        _packed.Dispose();
    }

    private static string AddressIn(StreamReader output)
    {
        while (output.ReadLine() is { } line)
        {
            if (AnAddress().Match(line) is { Success: true } found)
                return found.Value;
        }

        throw new InvalidOperationException("It ended without serving.");
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex AnAddress();
}

/// <summary>Packing takes a while, so it is done once for all tests.</summary>
[CollectionDefinition(Name)]
public sealed class AsServed : ICollectionFixture<Served>
{
    public const string Name = "as served";
}
