using Refettle.Kits;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What adding kits brought.</summary>
internal static class AdditionView
{
    public static IRenderable Of(IEnumerable<KitAddition> additions) => new Rows(additions.SelectMany(Lines));

    private static IEnumerable<IRenderable> Lines(KitAddition addition)
    {
        var added = addition.Entry.Added;
        yield return new Text(
            $"{addition.Instance}: {Wording.Count(added.Parts.Count, "part")}, {Wording.Count(added.Joints.Count, "joint")}");
        var joined = addition.Joinings.Where(joining => joining.Part is not null).Select(joining => $"{joining.Hole.Name} = {joining.Part}")
            .ToList();
        if (joined.Count > 0)
            yield return new Text($"  joined: {string.Join(", ", joined)}");
        if (addition.Ties.Count > 0)
            yield return new Text($"  tied: {string.Join(", ", addition.Ties.Select(tie => $"{tie.End.Key()} = {tie.Part}"))}");
        foreach (var end in addition.Reminders)
            yield return new Text($"  loose: {end.Key()}: {end.Meanwhile}");
    }
}
