using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace Refettle.Architecture.Tests;

public sealed partial class CoreTests
{
    /// <summary>Which other folders of the core a folder may know, along the flow of the work. Every folder may
    /// know the root, which knows none.</summary>
    private static readonly Dictionary<string, string[]> MayKnow = new()
    {
        ["Logbook"] = ["Checks"],
        ["Kits"] = ["Checks", "Logbook"],
        ["Stuck"] = ["Access"],
        ["Judging"] = ["Logbook", "Access", "Stuck", "Bench", "Imaging"],
        ["Scope"] = ["Access", "Stuck"],
        ["Timeline"] = ["Access", "Stuck", "Scope", "Bench"],
        ["Coating"] = ["Access", "Bench", "Timeline"],
        ["Forecast"] = ["Logbook", "Access", "Stuck", "Scope", "Timeline"],
        ["Stock"] = ["Logbook", "Access", "Stuck", "Bench", "Timeline", "Forecast", "Coating"],
        ["Ledger"] = ["Logbook", "Access", "Stuck", "Scope", "Timeline", "Forecast", "Stock"],
        ["CloseUp"] = ["Logbook", "Access", "Bench", "Judging", "Timeline", "Stock"],
        ["Discovery"] = ["Logbook", "Kits", "Access", "Stuck", "Judging", "Scope", "Timeline", "Stock"],
        ["QuickLine"] = ["Logbook"],
        ["Bags"] = ["Logbook"],
        ["SaleFile"] = ["Logbook", "Access", "Judging", "Scope", "Timeline", "Stock", "CloseUp"],
    };

    [Fact]
    public void Folders_of_the_core_know_each_other_only_along_the_flow()
    {
        var types = new ArchLoader().LoadAssemblies(Core).Build().Types.Where(type => Folder(type) is not null).ToList();
        Assert.Contains(types, type => Folder(type) == "Access");
        Assert.Empty(types.SelectMany(type => type.Dependencies.Select(dependency => dependency.Target)
            .Where(target => target is not ArchUnitNET.Domain.GenericParameter && !IsAllowed(Folder(type)!, Folder(target)))
            .Select(target => $"{type.FullName} → {target.FullName}")).Distinct());
    }

    [Theory]
    [MemberData(nameof(CoreFiles))]
    public void The_core_touches_no_file_network_process_or_native_code(string core)
    {
        using var file = File.OpenRead(core);
        using var image = new PEReader(file);
        var metadata = image.GetMetadataReader();
        var used = metadata.TypeReferences.Select(metadata.GetTypeReference)
            .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}").ToList();
        Assert.Contains("System.Object", used);
        Assert.DoesNotContain(used, OutsideWorld().IsMatch);
        Assert.Equal(0, metadata.GetTableRowCount(TableIndex.ImplMap));
    }

    /// <summary>One tree of folders in two assemblies.</summary>
    private static System.Reflection.Assembly[] Core => [typeof(Car).Assembly, typeof(Timeline.TimelinePlanner).Assembly];

    public static TheoryData<string> CoreFiles => [.. Core.Select(assembly => assembly.Location)];

    /// <summary>The folder right below the root; empty for the root itself, null outside the core.</summary>
    private static string? Folder(IType type)
    {
        var name = type.Namespace?.FullName ?? "";
        return name == "Refettle" ? "" : name.StartsWith("Refettle.", StringComparison.Ordinal) ? name.Split('.')[1] : null;
    }

    private static bool IsAllowed(string from, string? to) =>
        to is null or "" || from == to || MayKnow.GetValueOrDefault(from, []).Contains(to);

    [GeneratedRegex(@"^System\.IO\.(File|Directory|Path|DriveInfo|FileSystem)|^System\.Net\.|^System\.Diagnostics\.Process|^System\.Console$|^System\.Threading\.Thread$|^Microsoft\.")]
    private static partial Regex OutsideWorld();
}
