using System.CommandLine;
using Refettle.Bench;
using Refettle.Cli.Views;
using Refettle.Judging;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class FindVerb
{
    public static Command Make(Desk desk)
    {
        var thing = new Argument<string>("thing") { Description = "A part, joint or space." };
        var word = new Argument<string?>("word")
        { Description = "Its condition, in a word of its scale; nothing to see what can be said.", Arity = ArgumentArity.ZeroOrOne };
        var scale = new Option<string?>("--as")
        { Description = "The scale, where its name does not tell: bush, seal, rust …", HelpName = "scale" };
        var measured = new Option<string?>("--measured") { Description = "What was measured: 'axial play'.", HelpName = "what" };
        var value = new Option<string[]>("--value")
        {
            Description = "The reading with its unit, once for each repeat: 0.42mm.",
            HelpName = "value",
            AllowMultipleArgumentsPerToken = true
        };
        var instrument = new Option<string?>("--with") { Description = "The instrument.", HelpName = "instrument" };
        var step = new Option<string?>("--step") { Description = "The smallest step that it shows: 0.01mm.", HelpName = "value" };
        var photos = new Option<string[]>("--photo")
        { Description = "Photos of it, by their hash.", HelpName = "hash", AllowMultipleArgumentsPerToken = true };
        var note = new Option<string?>("--note") { Description = "A line in words." };
        return new Command("find", "Records what was found of a part, joint or space; without a word, what can be said of it.") { thing,
            word, scale, measured, value, instrument, step, photos, note }
            .Answers(desk,
                parsed => desk.WithCar(parsed, open => Reply.To(Findable.Of(open.Car.Structure, parsed.GetRequiredValue(thing)), of =>
                parsed.GetValue(word) is null && parsed.GetValue(measured) is null
                    ? Shown(open.Car, of)
                    : Reply.To(ScaleOf(open.Car, of, parsed.GetValue(scale), parsed.GetValue(word), parsed.GetValue(measured)), chosen =>
                        Reply.To(ReadingOf(parsed.GetValue(measured), parsed.GetValue(value) ?? [], parsed.GetValue(step),
                            parsed.GetValue(instrument)), reading =>
                            Record(desk, open, new()
                            {
                                Of = of,
                                Scale = chosen,
                                Word = parsed.GetValue(word),
                                Reading = reading.Value,
                                Photos = (parsed.GetValue(photos) ?? []).ToValueList(),
                                Note = parsed.GetValue(note),
                            }))))));
    }

    private static Reply Record(Desk desk, OpenCar open, Finding finding) =>
        finding.Reading is { } reading && ReadingCheck.Of(open.Car, finding.Of, reading) is { Count: > 0 } faults
        ? Reply.Bad(faults)
        : desk.Record(open, [new Found(finding)], now => Discovered.With(desk, open, now, Shown(now.Car, finding.Of)));

    private static Reply Shown(Car car, string thing)
    {
        var condition = Condition.Of(car, thing);
        var scales = Findable.Scales(car.Structure, thing);
        return new(FindingView.Of(car, thing, condition, scales), new
        {
            thing,
            worst = condition.Worst,
            unsound = thing.StartsWith("part ", StringComparison.Ordinal) && car.Unsound.Contains(thing["part ".Length..]),
            findings = condition.Newest,
            measured = condition.Measured,
            limits = car.Limits.Where(limit => limit.Of == thing),
            scales,
        });
    }

    private static Result<string> ScaleOf(Car car, string thing, string? asked, string? word, string? measured)
    {
        if (asked is not null)
            return ConditionScales.Find(asked) is null
                ? Result<string>.Bad(new Fault("--as", $"there is no scale {asked}",
                    NearNames.Ask(asked, ConditionScales.All.Select(one => one.Id),
                        $"There are {string.Join(", ", ConditionScales.All.Select(one => one.Id))}.")))
                : Result<string>.Good(asked);
        var scales = Findable.Scales(car.Structure, thing);
        var fitting = scales.FirstOrDefault(one => word is null
            ? one.Tests.Any(test => test.What == measured)
            : one.Find(word) is not null) ?? (word is null ? scales[0] : null);
        return fitting is not null
            ? Result<string>.Good(fitting.Id)
            : Result<string>.Bad(new Fault(thing, $"\"{word}\" is no word for it",
                $"Say one of: {string.Join("; ", scales.Select(one => $"{one.Name}: {string.Join(", ", one.Words.Select(known => known.Word))}"))}. Or name a scale with --as."));
    }

    private static Result<Maybe> ReadingOf(string? what, string[] values, string? step, string? instrument)
    {
        if (what is null)
            return values.Length == 0
                ? Result<Maybe>.Good(new(null))
                : Result<Maybe>.Bad(new Fault("--value", "it is not said what was measured", "Add --measured 'axial play'."));
        if (values.Length == 0)
            return Result<Maybe>.Bad(new Fault("--measured", "there is no value", "Add --value 0.42mm, once for each repeat."));
        var read = values.Select(value => Measure.Read("--value", value, null))
            .Concat(step is null ? [] : [Measure.Read("--step", step, null)]).ToList();
        if (read.SelectMany(one => one.Faults).ToList() is { Count: > 0 } faults)
            return Result<Maybe>.Bad(faults);
        var unit = read[0].Value.Unit;
        if (read.Any(one => one.Value.Unit.Dimension != unit.Dimension))
            return Result<Maybe>.Bad(new Fault("--value", "the units do not measure the same", "Give all in units of one kind."));
        var figures = read.Select(one => (decimal)one.Value.In(unit)).ToList();
        return Result<Maybe>.Good(
            new(new(what, figures.Take(values.Length).ToValueList(), unit.Symbol, instrument, step is null ? null : figures[^1])));
    }

    /// <summary>A reading or none.</summary>
    private sealed record Maybe(MeasuredValue? Value);
}
