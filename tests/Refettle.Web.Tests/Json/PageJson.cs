using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Json;

/// <summary>Every type that the pages read or write as JSON: what they ask, are told, keep and log,
/// and all that these are made of.</summary>
internal static class PageJson
{
    /// <summary>Methods that read or write the type they are called with.</summary>
    private static readonly string[] Doors =
        ["Serialize", "Deserialize", "ReadFromJsonAsync", "Parsed", "GetAsync", "PostAsync", "PutAsync", "AskAsync", "InvokeAsync"];

    private static readonly Assembly[] Ours =
        [typeof(ExchangeJson).Assembly, typeof(Refettle.Kits.Kit).Assembly, typeof(ServerApi).Assembly];

    /// <summary>In the order of their names.</summary>
    public static IReadOnlyList<Type> Types { get; } =
        [.. Closure([.. Ours.SelectMany(Called), .. Asked, .. Told]).OrderBy(type => type.FullName, StringComparer.Ordinal)];

    /// <summary>What entries are made of.</summary>
    public static IReadOnlyList<Type> Logged { get; } = [.. Closure(Told).OrderBy(type => type.FullName, StringComparer.Ordinal)];

    private static IEnumerable<Type> Asked =>
        typeof(ServerApi).GetMethods().SelectMany(method => method.GetParameters()).Select(parameter => parameter.ParameterType);

    private static IEnumerable<Type> Told => Ours[0].GetTypes().Where(type => type.IsSubclassOf(typeof(Happening)) && !type.IsAbstract);

    /// <summary>What the doors are called with, anywhere in an assembly: its metadata lists each such call once. A type
    /// that is open there counts as any.</summary>
    private static unsafe List<Type> Called(Assembly assembly)
    {
        Assert.True(assembly.TryGetRawMetadata(out var start, out var length));
        var metadata = new MetadataReader(start, length);
        Type[] any = [.. Enumerable.Repeat(typeof(object), 8)];
        return Enumerable.Range(1, metadata.GetTableRowCount(TableIndex.MethodSpec)).Select(MetadataTokens.MethodSpecificationHandle)
            .Where(call => Doors.Contains(NameOf(metadata, metadata.GetMethodSpecification(call).Method)))
            .SelectMany(call => assembly.ManifestModule.ResolveMethod(MetadataTokens.GetToken(call), any, any)!.GetGenericArguments())
            .ToList();
    }

    private static string NameOf(MetadataReader metadata, EntityHandle method) =>
        metadata.GetString(method.Kind == HandleKind.MethodDefinition
        ? metadata.GetMethodDefinition((MethodDefinitionHandle)method).Name
        : metadata.GetMemberReference((MemberReferenceHandle)method).Name);

    private static HashSet<Type> Closure(IEnumerable<Type> roots)
    {
        var seen = new HashSet<Type>();
        var open = new Stack<Type>(roots);
        while (open.TryPop(out var type))
        {
            if (type != typeof(object) && (type.IsGenericType || !type.IsInterface) && seen.Add(type))
                MadeOf(type).ToList().ForEach(open.Push);
        }

        return seen;
    }

    private static IEnumerable<Type> MadeOf(Type type) =>
    [
        .. type.IsArray ? [type.GetElementType()!] : type.GetGenericArguments(),
        .. Ours.Contains(type.Assembly) ? ExchangeJson.Options.GetTypeInfo(type).Properties.Select(property => property.PropertyType) : [],
    ];
}
