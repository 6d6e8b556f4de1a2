using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>Changes of jobs and of what the owner has to spend, key by key.</summary>
public static class JobEdit
{
    private static readonly ChangeTable<Job> _job = new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["wish"] = (old, given, _) => old with { Wish = given.Wish },
            ["goals"] = (old, given, adds) => old with { Goals = Lists.Of(old.Goals, given.Goals, adds) },
            ["with"] = (old, given, adds) => old with { With = Lists.Of(old.With, given.With, adds) },
            ["worth"] = (old, given, _) => old with { Worth = given.Worth },
            ["work"] = (old, given, _) => old with { Work = given.Work, Origin = given.Origin },
            ["parts"] = (old, given, _) => old with { Parts = given.Parts, Origin = given.Origin },
            ["waits"] = (old, given, adds) => old with { Waits = Lists.Of(old.Waits, given.Waits, adds) },
            ["origin"] = (old, given, _) => old with { Origin = given.Origin },
        },
        ["goals", "with", "waits"]);

    private static readonly ChangeTable<Means> _means = new(
        new()
        {
            ["budget"] = (old, given, _) => old with { Budget = given.Budget },
            ["hours"] = (old, given, _) => old with { Hours = given.Hours },
            ["by"] = (old, given, _) => old with { By = given.By },
            ["per-point"] = (old, given, _) => old with { PerPoint = given.PerPoint },
        },
        []);

    /// <summary>A job with some keys changed, or a new one; or all faults of the keys and values.</summary>
    public static Result<Job> Of(Job job, ValueList<KeyValue> values) =>
        Edited($"job {job.Id}", job, values, _job, fields => JobReader.Read(job.Id, fields));

    /// <summary>What the owner has to spend, with some changed; a key without value lifts that limit.</summary>
    public static Result<Means> Of(Means means, ValueList<KeyValue> values) => Edited("means", means, values, _means, Read);

    private static Means Read(Fields fields) =>
        new(fields.Money("budget"), fields.Minutes("hours"), Day(fields), fields.Money("per-point"));

    private static DateOnly? Day(Fields fields)
    {
        var text = fields.Text("by");
        if (text is null || DateOnly.TryParseExact(text, "yyyy-MM-dd", out var day))
            return text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd");
        fields.Fault(fields.Take("by")!, $"by is \"{text}\"", "Write a day like 2027-05-08");
        return null;
    }

    private static Result<T> Edited<T>(string place, T old, ValueList<KeyValue> values, ChangeTable<T> table, Func<Fields, T> read)
    {
        var wrong = table.Faults(place, values).ToList();
        if (wrong.Count > 0)
            return Result<T>.Bad(wrong);
        var given = new Given(place).With(values, table.Lists);
        var changed = read(given.Fields());
        return given.IsGood ? Result<T>.Good(table.Apply(old, changed, values)) : Result<T>.Bad(given.Faults);
    }
}
