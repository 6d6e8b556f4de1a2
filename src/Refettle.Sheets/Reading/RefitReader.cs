namespace Refettle.Sheets.Reading;

/// <summary>Reads refit ways, below <c>refit</c>.</summary>
internal static class RefitReader
{
    /// <summary>Null where the way open or out is turned round.</summary>
    public static RefitWay? Read(Fields above)
    {
        if (above.Below("refit") is not { } fields)
            return null;
        if (!fields.Has("takes"))
            fields.Missing("takes", "12 min");
        var way = new RefitWay
        {
            Tool = fields.Text("tool") ?? "hands",
            Takes = fields.Minutes("takes") ?? Minutes.Zero,
            Clear = fields.Facts("clear"),
            Posture = fields.Text("posture"),
            Cautions = fields.Texts("cautions"),
            Danger = WayReader.Dangers(fields),
            Origin = fields.Word("origin", fields.Context.Given),
        };
        fields.Done();
        return way;
    }
}
