using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of joints, states, and their ways.</summary>
internal static class WayEdits
{
    /// <summary>The keys of a joint; those of a way go to its only way.</summary>
    public static Result<Structure> Joint(Structure car, string id, ValueList<KeyValue> values, bool isNew)
    {
        var subject = new Subject<Joint>("joint", id, car.Joints, joint => joint.Id);
        return HandEdit.Wrapped(Edited(subject, values, isNew, JointChanges.OfJoint,
            (old, given) => JointReader.Read(id, Kept(given, old).Refit(old?.Refit).Fields()),
            joint => joint.Ways, (joint, ways) => joint with { Ways = ways }), joint => new() { Joints = [joint] });
    }

    public static Result<Structure> State(Structure car, string id, ValueList<KeyValue> values, bool isNew)
    {
        var subject = new Subject<State>("state", id, car.States, state => state.Id);
        return HandEdit.Wrapped(Edited(subject, values, isNew, OtherChanges.OfState, (_, given) => StateReader.Read(id, given.Fields()),
            state => state.Ways, (state, ways) => state with { Ways = ways }), state => new() { States = [state] });
    }

    /// <summary>One way, named <c>joint/way</c> or <c>state/way</c>.</summary>
    public static Result<Structure> Way(Structure car, string id, ValueList<KeyValue> values, bool isNew)
    {
        var cut = id.LastIndexOf('/');
        var (owner, way) = cut < 0 ? (id, "") : (id[..cut], id[(cut + 1)..]);
        if (car.Joints.FirstOrDefault(joint => joint.Id == owner) is { } joint)
            return HandEdit.Wrapped(Ways($"joint {owner}", joint.Ways, way, values, isNew),
                ways => new() { Joints = [joint with { Ways = ways }] });
        if (car.States.FirstOrDefault(state => state.Id == owner) is { } state)
            return HandEdit.Wrapped(Ways($"state {owner}", state.Ways, way, values, isNew),
                ways => new() { States = [state with { Ways = ways }] });
        var known = car.Joints.Select(known => known.Id).Concat(car.States.Select(known => known.Id));
        return Result<Structure>.Bad(
            new Fault($"way {id}", $"there is no joint or state {owner}", NearNames.Ask(owner, known, "Write it as JOINT/WAY.")));
    }

    private static Result<T> Edited<T>(Subject<T> subject, ValueList<KeyValue> values, bool isNew, ChangeTable<T> table,
        Func<T?, Given, T> read, Func<T, ValueList<Way>> waysOf, Func<T, ValueList<Way>, T> withWays)
        where T : class
    {
        var both = new ChangeTable<T>(new(table.Keys), [.. table.Lists, .. JointChanges.OfWay.Lists]);
        foreach (var key in JointChanges.OfWay.Keys.Keys)
            both.Keys.TryAdd(key, (old, _, _) => old);
        var ofWay = isNew
            ? []
            : values.Where(value => !table.Keys.ContainsKey(value.Key) && JointChanges.OfWay.Keys.ContainsKey(value.Key)).ToValueList();
        var edited = HandEdit.Edited(subject, values.Except(ofWay).ToValueList(), isNew, both, read);
        if (!edited.IsGood || ofWay.Count == 0)
            return edited;
        var ways = waysOf(edited.Value);
        if (ways.Count != 1)
            return Result<T>.Bad(new Fault(subject.Place, $"it has {ways.Count} ways, so {ofWay[0].Key} could be of any",
                $"Name one: set way {subject.Id}/{(ways.Count > 0 ? ways[0].Id : "WAY")} …"));
        var changed = Ways(subject.Place, ways, ways[0].Id, ofWay, isNew: false);
        return changed.IsGood ? Result<T>.Good(withWays(edited.Value, changed.Value)) : Result<T>.Bad(changed.Faults);
    }

    private static Result<ValueList<Way>> Ways(string owner, ValueList<Way> ways, string id, ValueList<KeyValue> values, bool isNew)
    {
        var subject = new Subject<Way>("way", id, ways, way => way.Id);
        var edited = HandEdit.Edited(subject, values, isNew, JointChanges.OfWay,
            (old, given) => WayReader.Ways(Kept(given, old, id).Fields())![0]);
        return !edited.IsGood
            ? Result<ValueList<Way>>.Bad(edited.Faults.Select(fault => fault with { Place = $"{owner}, {fault.Place}" }))
            : Result<ValueList<Way>>.Good(isNew
                ? [.. ways, edited.Value]
                : ways.Select(way => way.Id == id ? edited.Value : way).ToValueList());
    }

    /// <summary>What the reader insists on, as it is.</summary>
    private static Given Kept(Given given, Joint? old) => old is null
        ? given
        : given.KeepingOne("kind", EnumWords<JointKind>.Of(old.Kind)).Keeping("holds", old.Holds);

    private static Given Kept(Given given, Way? old, string id) => old is null
        ? given.KeepingOne("id", id)
        : given.KeepingOne("id", id).KeepingOne("open", $"{old.Open.Value} min").KeepingOne("close", $"{old.Close.Value} min");
}
