using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of parts and sub-assemblies.</summary>
internal static class PartEdit
{
    public static Result<Structure> Of(Structure car, string id, ValueList<KeyValue> values, bool isNew) =>
        HandEdit.Wrapped(HandEdit.Edited(new Subject<Part>("part", id, car.Parts, part => part.Id), values, isNew, PartChanges.OfPart,
            (old, given) => Read(given.Refit(old?.Out.Refit), fields => PartReader.Read(id, fields, Zone.WholeCar))),
            part => new() { Parts = [part] });

    public static Result<Structure> Unit(Structure car, string id, ValueList<KeyValue> values, bool isNew) =>
        HandEdit.Wrapped(HandEdit.Edited(new Subject<SubAssembly>("sub-assembly", id, car.SubAssemblies, unit => unit.Id), values, isNew,
            PartChanges.OfUnit,
            (old, given) => Read(given.Refit(old?.Out.Refit), fields => UnitReader.Read(id, fields))),
            unit => new() { SubAssemblies = [unit] });

    private static T Read<T>(Given given, Func<Fields, T> read) => read(given.Below("out", PartChanges.OutKeys).Fields());
}
