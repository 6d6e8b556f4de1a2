using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of one thing by hand, key by key.</summary>
public static class HandEdit
{
    private static readonly string[] _kinds = ["part", "joint", "way", "state", "space", "sub-assembly", "zone"];

    /// <summary>The changed thing alone, as a structure; or all faults of the keys and values. What it refers to is
    /// for the structure's own check.</summary>
    /// <param name="car">The structure it is in.</param>
    /// <param name="kind"><c>part</c>, <c>joint</c>, <c>way</c>, <c>state</c>, <c>space</c>, <c>sub-assembly</c> or <c>zone</c>.</param>
    /// <param name="id">Its identifier; a way's is <c>joint/way</c> or <c>state/way</c>.</param>
    /// <param name="isNew">It is made; otherwise it has to be there.</param>
    public static Result<Structure> Of(Structure car, string kind, string id, ValueList<KeyValue> values, bool isNew) => kind switch
    {
        "part" => PartEdit.Of(car, id, values, isNew),
        "joint" => WayEdits.Joint(car, id, values, isNew),
        "way" => WayEdits.Way(car, id, values, isNew),
        "state" => WayEdits.State(car, id, values, isNew),
        "space" => OtherEdits.Space(car, id, values, isNew),
        "sub-assembly" => PartEdit.Unit(car, id, values, isNew),
        "zone" => OtherEdits.Zone(car, id, values, isNew),
        _ => Result<Structure>.Bad(
            new Fault(kind, "this is no kind of thing", NearNames.Ask(kind, _kinds, $"Write one of {string.Join(", ", _kinds)}."))),
    };

    /// <summary>Finds the thing, or a new one where that is asked for, and applies the keys to it.</summary>
    internal static Result<T> Edited<T>(
        Subject<T> subject, ValueList<KeyValue> values, bool isNew, ChangeTable<T> table, Func<T?, Given, T> read)
        where T : class
    {
        var found = subject.Find(isNew);
        if (!found.IsGood)
            return Result<T>.Bad(found.Faults);
        var wrong = table.Faults(subject.Place, values).ToList();
        if (wrong.Count > 0)
            return Result<T>.Bad(wrong);
        var given = new Given(subject.Place).With(values, table.Lists);
        var thing = read(found.Value, given);
        if (!given.IsGood)
            return Result<T>.Bad(given.Faults);
        return Result<T>.Good(found.Value is { } old ? table.Apply(old, thing, values) : thing);
    }

    internal static Result<Structure> Wrapped<T>(Result<T> edited, Func<T, Structure> wrap) =>
        edited.IsGood ? Result<Structure>.Good(wrap(edited.Value), edited.Faults) : Result<Structure>.Bad(edited.Faults);
}

/// <summary>The thing that is spoken of, among its like.</summary>
internal sealed record Subject<T>(string Kind, string Id, IEnumerable<T> All, Func<T, string> IdOf)
    where T : class
{
    public string Place => $"{Kind} {Id}";

    /// <summary>The thing; null for one that is to be made.</summary>
    public Result<T?> Find(bool isNew)
    {
        var old = All.FirstOrDefault(thing => IdOf(thing) == Id);
        return (isNew, old) switch
        {
            (true, not null) => Result<T?>.Bad(new Fault(Place, "there is one already", "Leave --new out to change it.")),
            (true, null) when !Identifier.IsValid(Id) =>
                Result<T?>.Bad(new Fault(Place, "this cannot be an identifier",
                    "Use small letters, digits, - and _, beginning with a letter or digit.")),
            (false, null) =>
                Result<T?>.Bad(
                    new Fault(Place, "there is none on this car", NearNames.Ask(Id, All.Select(IdOf), "Give --new to make it."))),
            _ => Result<T?>.Good(old),
        };
    }
}
