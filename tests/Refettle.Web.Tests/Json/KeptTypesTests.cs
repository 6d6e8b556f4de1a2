using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Refettle.Web.Tests.Json;

/// <summary>The published pages are trimmed: what is read or written as JSON, by reflection, is named in a
/// file, and this holds it complete.</summary>
public sealed class KeptTypesTests
{
    [Fact]
    public void The_list_of_types_that_trimming_keeps_is_what_the_pages_read_and_write()
    {
        var file = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "..", "src", "Refettle.Web", "JsonTypes.xml"));
        var wanted = Wanted().ToString().ReplaceLineEndings("\n") + "\n";
        if (Environment.GetEnvironmentVariable("REFETTLE_WRITE") is not null)
            File.WriteAllText(file, wanted);
        var there = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        Assert.True(wanted == there,
            $"{file} is not up to date: REFETTLE_WRITE=1 dotnet test tests/Refettle.Web.Tests --filter KeptTypes writes it. Missing or too much: "
            + string.Join(' ', wanted.Split('\n').Except(there.Split('\n')).Concat(there.Split('\n').Except(wanted.Split('\n')))));
    }

    private static XElement Wanted() => new("linker",
        PageJson.Types.Select(type => type.IsGenericType ? type.GetGenericTypeDefinition() : type)
            .Where(type => !type.IsArray && !type.IsGenericParameter && type.Assembly.GetName().Name is "Refettle" or "Refettle.Further")
            .Distinct()
            .Append(typeof(ExchangeJson).GetNestedType("ListConverter`1", BindingFlags.NonPublic)!)
            .GroupBy(type => type.Assembly.GetName().Name!).OrderBy(types => types.Key, StringComparer.Ordinal)
            .Select(types => new XElement("assembly", new XAttribute("fullname", types.Key), types.Select(Kept))));

    /// <summary>Whole: of members named one by one the parameters would lose their names, by which records are made.</summary>
    private static XElement Kept(Type type) =>
        new("type", new XAttribute("fullname", type.FullName!.Replace('+', '/')), new XAttribute("preserve", "all"));

    private static string Here([CallerFilePath] string here = "") => here;
}
