namespace Refettle.Sheets.Reading;

/// <summary>Reads zones.</summary>
internal static class ZoneReader
{
    public static Zone Read(string id, Fields fields) => new()
    {
        Id = id,
        Name = fields.Text("name") ?? PartReader.NameFrom(id),
        Exposure = fields.Whole("exposure") ?? 1,
        Posture = fields.Text("posture") ?? "standing",
        Near = fields.Identifiers("near"),
    };
}
