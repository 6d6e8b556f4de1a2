namespace Refettle.Sheets.Reading;

/// <summary>Reads spaces.</summary>
internal static class SpaceReader
{
    public static Space Read(string id, Fields fields, string zone) => new()
    {
        Id = id,
        Name = fields.Text("name") ?? PartReader.NameFrom(id),
        Zone = fields.Identifier("zone", zone),
        ClosedBy = fields.Identifiers("closed-by"),
        Kit = fields.Text("kit"),
        Limits = LimitReader.Limits(fields),
    };
}
