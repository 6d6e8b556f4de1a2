namespace Refettle.Logbook;

/// <summary>The photos while a log is folded. What is told of one picture twice is put together.</summary>
internal sealed class PhotoShelf
{
    private readonly Dictionary<string, int> _places = [];
    private readonly List<Photo> _photos = [];

    public string? Take(Photo photo)
    {
        if (!ContentHash.IsValid(photo.Hash))
            return "its picture is not named by a hash";
        if (_places.TryAdd(photo.Hash, _photos.Count))
            _photos.Add(photo);
        else
            _photos[_places[photo.Hash]] = Joined(_photos[_places[photo.Hash]], photo);
        return null;
    }

    /// <summary>All photos; what they name and the car does not have is left out.</summary>
    public ValueList<Photo> Photos(Structure structure)
    {
        if (_photos.Count == 0)
            return [];
        var known = Pruning.Named(structure).Select(thing => thing.ToString()).ToHashSet();
        return _photos.Select(photo => photo.Of.All(Stays) ? photo : photo with { Of = photo.Of.Where(Stays).ToValueList() }).ToValueList();

        bool Stays(string thing) => known.Contains(thing) || thing.StartsWith("bag ", StringComparison.Ordinal);
    }

    private static Photo Joined(Photo first, Photo then) => then with
    {
        Of = first.Of.Union(then.Of).ToValueList(),
        Small = then.Small ?? first.Small,
        Original = then.Original ?? first.Original,
        Entry = then.Entry ?? first.Entry,
        Says = then.Says ?? first.Says,
        Sharpness = then.Sharpness ?? first.Sharpness,
    };
}
