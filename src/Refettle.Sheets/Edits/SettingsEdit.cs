using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of the owner's settings, key by key.</summary>
public static class SettingsEdit
{
    private static readonly ChangeTable<Settings> _table = new(
        new()
        {
            ["per-hour"] = (old, given, _) => old with { PerHour = given.PerHour },
            ["unique-off"] = (old, given, _) => old with { UniqueOff = given.UniqueOff },
            ["unknown-price"] = (old, given, _) => old with { UnknownPrice = given.UnknownPrice },
            ["lifted"] = (old, given, adds) => old with { Lifted = Lists.Of(old.Lifted, given.Lifted, adds) },
            ["prop-from"] = (old, given, _) => old with { PropFrom = given.PropFrom },
            ["tool-change"] = (old, given, _) => old with { ToolChange = given.ToolChange },
            ["place-change"] = (old, given, _) => old with { PlaceChange = given.PlaceChange },
            ["posture-change"] = (old, given, _) => old with { PostureChange = given.PostureChange },
        },
        ["lifted"]);

    /// <summary>The settings with some changed, or all faults of the keys and values.</summary>
    public static Result<Settings> Of(Settings settings, ValueList<KeyValue> values)
    {
        var wrong = _table.Faults("settings", values).Concat(Empty(settings, values)).ToList();
        if (wrong.Count > 0)
            return Result<Settings>.Bad(wrong);
        var given = new Given("settings").With(values, _table.Lists);
        var read = Read(given.Fields(), settings);
        return given.IsGood ? Result<Settings>.Good(_table.Apply(settings, read, values)) : Result<Settings>.Bad(given.Faults);
    }

    /// <summary>Each key with its value and what it means.</summary>
    public static IEnumerable<(string Key, string Value, string Means)> Rows(Settings settings, string currency) =>
    [
        ("per-hour", $"{settings.PerHour} {currency}", "what an hour of work is worth: turns what is destroyed into minutes"),
        ("unique-off", $"{settings.UniqueOff}", "added for each unique part that has to come off"),
        ("unknown-price", $"{settings.UnknownPrice} {currency}", "assumed for a destroyed part that has no price"),
        ("lifted", settings.Lifted.Count == 0 ? "none" : string.Join(", ", settings.Lifted),
            "unique parts that may be destroyed after all"),
        ("prop-from", $"{settings.PropFrom}", "parts of this mass or more are held up before their last joint opens"),
        ("tool-change", $"{settings.ToolChange}", "what a change of tool is worth in the order of steps"),
        ("place-change", $"{settings.PlaceChange}", "what a change of zone is worth in the order of steps"),
        ("posture-change", $"{settings.PostureChange}", "what a change of posture is worth in the order of steps"),
    ];

    /// <summary>Each of them counts, so none can be without a value but a list.</summary>
    private static IEnumerable<Fault> Empty(Settings settings, ValueList<KeyValue> values) =>
        from value in values
        where value.Value.Length == 0 && !_table.Lists.Contains(value.Key)
        from row in Rows(settings, "")
        where row.Key == value.Key
        select new Fault("settings", $"{value.Key} has no value", $"Say how much; it is {value.Key}={row.Value.Trim()} now.");

    private static Settings Read(Fields fields, Settings old) => new()
    {
        PerHour = fields.Money("per-hour") ?? old.PerHour,
        UniqueOff = fields.Minutes("unique-off") ?? old.UniqueOff,
        UnknownPrice = fields.Money("unknown-price") ?? old.UnknownPrice,
        Lifted = fields.Identifiers("lifted"),
        PropFrom = fields.Kilograms("prop-from") ?? old.PropFrom,
        ToolChange = fields.Minutes("tool-change") ?? old.ToolChange,
        PlaceChange = fields.Minutes("place-change") ?? old.PlaceChange,
        PostureChange = fields.Minutes("posture-change") ?? old.PostureChange,
    };
}
