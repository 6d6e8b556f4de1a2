namespace Refettle.Logbook;

/// <summary>Whether what is about bags and photos may be written into a car's log.</summary>
internal static class CaptureCheck
{
    private const int MostWords = 500;
    private const int MostPixels = 40_000;

    public static IEnumerable<Fault> Packed(Car car, BagPacked packed)
    {
        var place = $"bag {packed.Code}";
        if (!BagCode.IsValid(packed.Code))
            yield return new(place, "that is no code for a bag",
                $"Use up to {BagCode.MaxLength} small letters, digits and hyphens: 14, a7, rl-3.");
        if (string.IsNullOrWhiteSpace(packed.Holds) && packed.For.Count == 0 && string.IsNullOrWhiteSpace(packed.Place))
            yield return new(place, "nothing is said of it", "Say what is in it, what it belongs to, or where it lies.");
        foreach (var fault in Words(place, packed.Holds).Concat(Words(place, packed.Place)).Concat(Known(car.Structure, place, packed.For)))
            yield return fault;
    }

    public static IEnumerable<Fault> Moved(Car car, BagMoved moved) =>
        Bag(car, moved.Code).Concat(Words($"bag {moved.Code}", moved.Place))
            .Concat(string.IsNullOrWhiteSpace(moved.Place) ? [new($"bag {moved.Code}", "no place is said", "Say where it lies now.")] : []);

    public static IEnumerable<Fault> Emptied(Car car, BagEmptied emptied) => Bag(car, emptied.Code)
        .Concat(car.Bags.Any(bag => bag.Code == emptied.Code && bag.IsEmpty)
            ? [new Fault($"bag {emptied.Code}", "it is empty already", "Marking it again does no harm.") { Severity = Severity.Note }]
            : []);

    public static IEnumerable<Fault> Taken(CarHistory history, Photo photo)
    {
        var place = $"photo {photo.Hash}";
        if (new[] { photo.Hash, photo.Small, photo.Original }.Any(hash => hash is not null && !ContentHash.IsValid(hash)))
            yield return new(place, "it is not named by the hash of its bytes", "Take the SHA-256 of the file in small hexadecimal.");
        if (photo.Width is <= 0 or > MostPixels || photo.Height is <= 0 or > MostPixels)
            yield return new(place, $"it has {photo.Width} × {photo.Height} pixels", $"Give 1 to {MostPixels} each way.");
        if (photo.Entry is { } entry && history.Line(entry) is null)
            yield return new(place, $"this car's log has no entry {entry}", "Take the identifier from the log.");
        foreach (var fault in Words(place, photo.Says)
            .Concat(Known(history.Car.Structure, place, photo.Of.Where(of => !IsOfBag(history.Car, of)))))
            yield return fault;
    }

    private static bool IsOfBag(Car car, string of) => car.Bags.Any(bag => of == $"bag {bag.Code}");

    private static IEnumerable<Fault> Bag(Car car, string code) => car.Bags.Any(bag => bag.Code == code)
        ? []
        : [new($"bag {code}", "there is no such bag", NearNames.Ask(code, car.Bags.Select(bag => bag.Code), "Say first what is in it."))];

    private static IEnumerable<Fault> Words(string place, string? words) => words?.Length > MostWords
        ? [new(place, $"a line of {words.Length} characters", $"Keep it to {MostWords}, or make several.")]
        : [];

    private static IEnumerable<Fault> Known(Structure structure, string place, IEnumerable<string> things)
    {
        var known = Pruning.Named(structure).Select(thing => thing.ToString()).ToHashSet();
        return things.Where(thing => !known.Contains(thing))
            .Select(thing => new Fault(place, $"the car has no {thing}",
                NearNames.Ask(thing, known, "Write part x, joint x, space x …, as the list of the car names it.")));
    }
}
