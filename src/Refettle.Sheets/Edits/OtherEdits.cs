using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of states, spaces and zones.</summary>
internal static class OtherEdits
{
    public static Result<Structure> Space(Structure car, string id, ValueList<KeyValue> values, bool isNew) =>
        HandEdit.Wrapped(
            HandEdit.Edited(new Subject<Space>("space", id, car.Spaces, space => space.Id), values, isNew, OtherChanges.OfSpace,
            (_, given) => SpaceReader.Read(id, given.Fields(), Refettle.Zone.WholeCar)), space => new() { Spaces = [space] });

    public static Result<Structure> Zone(Structure car, string id, ValueList<KeyValue> values, bool isNew) =>
        HandEdit.Wrapped(HandEdit.Edited(new Subject<Zone>("zone", id, car.Zones, zone => zone.Id), values, isNew, OtherChanges.OfZone,
            (_, given) => ZoneReader.Read(id, given.Fields())), zone => new() { Zones = [zone] });
}
