namespace Refettle.Sheets.Reading;

/// <summary>Reads sub-assemblies.</summary>
internal static class UnitReader
{
    public static SubAssembly Read(string id, Fields fields) => new()
    {
        Id = id,
        Name = fields.Text("name") ?? PartReader.NameFrom(id),
        Members = fields.Identifiers("members"),
        Roles = fields.Identifiers("roles"),
        Kit = fields.Text("kit"),
        Out = PartReader.Out(fields.Below("out"), fields.Context.Given, out var prop),
        Prop = prop,
    };
}
