using Refettle.Logbook;

namespace Refettle.Web.Words;

/// <summary>What an entry about bags or photos tells, in a line.</summary>
public static class CaptureWords
{
    /// <summary>Null when it is about something else.</summary>
    public static string? Of(Happening happening, CarLookup car) => happening switch
    {
        BagPacked packed => $"Bag {BagCode.Shown(packed.Code)}: {string.Join(", ", Packed(packed, car))}",
        BagMoved moved => $"Bag {BagCode.Shown(moved.Code)} moved: {moved.Place}",
        BagEmptied emptied => $"Bag {BagCode.Shown(emptied.Code)} emptied",
        PhotoTaken taken => $"Photo: {taken.Photo.Says ?? Things(taken.Photo.Of, car) ?? "the car"}",
        _ => null,
    };

    /// <summary><c>Rear axle, Bag 14</c>; null for none.</summary>
    public static string? Things(ValueList<string> things, CarLookup car) =>
        things.Count == 0 ? null : string.Join(", ", things.Select(thing => Thing(thing, car)));

    /// <summary><c>part rear-axle</c> in words.</summary>
    public static string Thing(string thing, CarLookup car) => thing.Split(' ') switch
    {
        ["bag", var code] => $"Bag {BagCode.Shown(code)}",
        ["joint", var joint] => car.Subject(Fact.Open(joint)),
        ["state", var state] => car.Subject(Fact.State(state)),
        ["space", var space] => car.Subject(Fact.Reach(space)),
        ["zone", var zone] => car.ZoneName(zone),
        [_, var part] => car.PartName(part),
        _ => thing,
    };

    private static IEnumerable<string> Packed(BagPacked packed, CarLookup car)
    {
        if (packed.Holds is { } holds)
            yield return holds;
        if (Things(packed.For, car) is { } things)
            yield return $"for {things}";
        if (packed.Place is { } place)
            yield return place;
    }
}
