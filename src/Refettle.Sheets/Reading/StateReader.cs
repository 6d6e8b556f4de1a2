namespace Refettle.Sheets.Reading;

/// <summary>Reads states and stances.</summary>
internal static class StateReader
{
    public static State Read(string id, Fields fields) => new()
    {
        Id = id,
        Name = fields.Text("name") ?? PartReader.NameFrom(id),
        IsStance = fields.Flag("stance"),
        Ways = Ways(fields),
        Supports = fields.Identifiers("supports"),
        Drains = fields.Words<Hazard>("drains"),
        Kit = fields.Text("kit"),
    };

    /// <summary>Unlike a joint's, a state's ways have no default: nobody knows what it takes.</summary>
    private static ValueList<Way> Ways(Fields fields)
    {
        var origin = fields.Word("origin", fields.Context.Given);
        return (WayReader.Ways(fields) ?? []).Select(way => fields.Has("ways") ? way : way with { Origin = origin }).ToValueList();
    }
}
