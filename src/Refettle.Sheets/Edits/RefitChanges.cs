using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>The keys of a refit way among those of the joint, part or sub-assembly that goes back by
/// it. Empty minutes take it away.</summary>
internal static class RefitChanges
{
    private static readonly Dictionary<string, Change<RefitWay>> _keys = new()
    {
        ["tool"] = (old, given, _) => old with { Tool = given.Tool },
        ["takes"] = (old, given, _) => old with { Takes = given.Takes, Origin = given.Origin },
        ["clear"] = (old, given, adds) => old with { Clear = Lists.Of(old.Clear, given.Clear, adds) },
        ["posture"] = (old, given, _) => old with { Posture = given.Posture },
        ["cautions"] = (old, given, adds) => old with { Cautions = Lists.Of(old.Cautions, given.Cautions, adds) },
        ["danger"] = (old, given, adds) => old with { Danger = Lists.Of(old.Danger, given.Danger, adds) },
    };

    /// <summary>The table of a thing with these keys too.</summary>
    public static ChangeTable<T> With<T>(ChangeTable<T> table, Func<T, RefitWay?> of, Func<T, RefitWay?, T> with)
    {
        foreach (var (key, change) in _keys)
            table.Keys.Add($"{RefitKeys.Prefix}{key}",
                (old, given, adds) => with(old, of(given) is not { } read ? null : of(old) is { } way ? change(way, read, adds) : read));
        return table with
        { Lists = [.. table.Lists, .. new[] { "clear", "cautions", "danger" }.Select(key => $"{RefitKeys.Prefix}{key}")] };
    }
}
