using System.Xml.Linq;

namespace Refettle.Architecture.Tests;

public sealed class ProjectTests
{
    /// <summary>Which projects each project may know: the arrows of docs/architecture.md.</summary>
    private static readonly Dictionary<string, string[]> MayKnow = new()
    {
        ["Refettle"] = [],
        ["Refettle.Further"] = ["Refettle"],
        ["Refettle.Solvers"] = ["Refettle", "Refettle.Further"],
        ["Refettle.Storage"] = ["Refettle", "Refettle.Further"],
        ["Refettle.Sheets"] = ["Refettle", "Refettle.Further"],
        ["Refettle.Paper"] = ["Refettle", "Refettle.Further"],
        ["Refettle.Web"] = ["Refettle", "Refettle.Further"],
        ["Refettle.Server"] = ["Refettle", "Refettle.Further", "Refettle.Solvers", "Refettle.Storage", "Refettle.Sheets", "Refettle.Paper",
            "Refettle.Web"],
        ["Refettle.Cli"] = ["Refettle", "Refettle.Further", "Refettle.Solvers", "Refettle.Storage", "Refettle.Sheets", "Refettle.Paper",
            "Refettle.Server"],
    };

    private static IEnumerable<string> Projects =>
        Tree.TextFiles("src").Where(file => file.EndsWith(".csproj", StringComparison.Ordinal));

    [Fact]
    public void Projects_know_only_what_their_arrows_allow()
    {
        Assert.NotEmpty(Projects);
        Assert.Empty(Projects.SelectMany(project => References(project, "ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Replace('\\', '/')))
            .Where(known => !MayKnow[Path.GetFileNameWithoutExtension(project)].Contains(known))
            .Select(known => $"{Tree.Name(project)} → {known}")));
    }

    /// <summary>Packages of the core: managed code only, seen to run trimmed in the browser
    /// (docs/decisions/statistics-library.md).</summary>
    private static readonly string[] CorePackages = ["MathNet.Numerics", "NodaTime"];

    [Fact]
    public void The_core_uses_only_packages_that_run_in_the_browser() =>
        Assert.Empty(new[] { "Refettle",
            "Refettle.Further" }.SelectMany(core => References(Path.Combine(Tree.Root, $"src/{core}/{core}.csproj"), "PackageReference"))
            .Except(CorePackages));

    [Fact]
    public void Versions_of_packages_stand_in_one_file() =>
        Assert.Empty(Tree.TextFiles().Where(file => file.EndsWith(".csproj", StringComparison.Ordinal))
            .Where(file => XDocument.Load(file).Descendants("PackageReference").Any(package => package.Attribute("Version") is not null))
            .Select(Tree.Name));

    private static IEnumerable<string> References(string project, string kind) =>
        XDocument.Load(project).Descendants(kind).Select(reference => reference.Attribute("Include")!.Value);
}
