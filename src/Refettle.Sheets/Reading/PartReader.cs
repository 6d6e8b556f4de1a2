namespace Refettle.Sheets.Reading;

/// <summary>Reads parts and ways out.</summary>
internal static class PartReader
{
    public static Part Read(string id, Fields fields, string zone)
    {
        var origin = fields.Word("origin", fields.Context.Given);
        return new()
        {
            Id = id,
            Name = fields.Text("name") ?? NameFrom(id),
            Zone = fields.Identifier("zone", zone),
            Side = fields.Word("side", Side.None),
            Count = fields.Whole("count") ?? 1,
            Scarcity = fields.Word("scarcity", Scarcity.Stocked),
            Mass = fields.Kilograms("mass"),
            Price = fields.Money("price"),
            Hazards = fields.Words<Hazard>("hazards"),
            Duties = fields.Words<Duty>("duties"),
            Roles = fields.Identifiers("roles"),
            Fixed = fields.Flag("fixed"),
            Kit = fields.Text("kit"),
            Limits = LimitReader.Limits(fields),
            Out = Out(fields.Below("out"), origin, out var prop),
            Prop = prop,
            Origin = origin,
        };
    }

    /// <summary>Reads how a thing leaves the car; without the keys it leaves at once.</summary>
    public static WayOut Out(Fields? fields, Origin origin, out string? prop)
    {
        prop = fields?.Text("prop");
        if (fields is null)
            return WayOut.AtOnce;
        var way = new WayOut
        {
            Off = fields.Minutes("off") ?? Minutes.Zero,
            On = fields.Minutes("on") ?? Minutes.Zero,
            Clear = fields.Facts("clear"),
            Tool = fields.Text("tool"),
            Refit = RefitReader.Read(fields),
            Cautions = fields.Texts("cautions"),
            Origin = fields.Word("origin", fields.Has("off") || fields.Has("on") ? origin : Origin.Default),
        };
        fields.Done();
        return way;
    }

    /// <summary>A name made from an identifier: <c>rear-axle</c> gives <c>Rear axle</c>, <c>{p}hub</c> gives <c>{Side} hub</c>.</summary>
    public static string NameFrom(string id)
    {
        var words = id.Replace("{p}", "{Side} ", StringComparison.Ordinal).Replace('-', ' ').Trim();
        return words.Length == 0 ? id : char.ToUpperInvariant(words[0]) + words[1..];
    }
}
