using System.CommandLine;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class LimitVerb
{
    private static readonly Dictionary<string, Origin> Whose = new()
    {
        ["maker"] = Origin.Maker,
        ["practice"] = Origin.CommonPractice,
        ["mine"] = Origin.User,
    };

    public static Command Make(Desk desk)
    {
        var thing = new Argument<string>("thing") { Description = "A part or joint." };
        var what = new Argument<string>("what") { Description = "What is measured: 'axial play'." };
        var least = new Option<string?>("--least") { Description = "The least that it may be, with its unit.", HelpName = "value" };
        var most = new Option<string?>("--most") { Description = "The most that it may be, with its unit.", HelpName = "value" };
        var whose = new Option<string>("--whose") { Description = $"Whose limit it is: {string.Join(", ", Whose.Keys)}.", Required = true };
        var source = new Option<string?>("--source") { Description = "Where it stands: a page of the manual." };
        return new Command("limit",
            "Records what a measured value may be, and whose word that is; the other end stays while it is the same word. No limit is built in.") { thing, what, least, most, whose, source }
            .Answers(desk,
                parsed => desk.WithCar(parsed, open => Reply.To(Findable.Of(open.Car.Structure, parsed.GetRequiredValue(thing)), of =>
                Reply.To(Ends(parsed.GetValue(least), parsed.GetValue(most)),
                    ends => Whose.TryGetValue(parsed.GetRequiredValue(whose), out var origin)
                    ? Record(desk, open,
                        new(of, parsed.GetRequiredValue(what), ends.Least, ends.Most, ends.Unit, origin, parsed.GetValue(source)))
                    : Reply.Bad([new("--whose", $"\"{parsed.GetValue(whose)}\" is nobody known",
                        $"Write {string.Join(", ", Whose.Keys)}.")])))));
    }

    private static Reply Record(Desk desk, OpenCar open, Limit said) => Reply.To(Joined(open.Car, said), limit =>
        desk.Record(open, [new LimitSet(limit)], now => Reply.Said($"{limit.Of}: {limit}.", new { car = now.Car.Id, limit })));

    /// <summary>With the end that stands and is not said anew. Two people's words are not put together, nor figures in two units.</summary>
    private static Result<Limit> Joined(Car car, Limit said)
    {
        var known = car.Limits
            .FirstOrDefault(one => one.Of == said.Of && string.Equals(one.What, said.What, StringComparison.OrdinalIgnoreCase));
        var rest = known is null
            ? null
            : known with { Lower = said.Lower is null ? known.Lower : null, Upper = said.Upper is null ? known.Upper : null };
        if (known is null || rest is { Lower: null, Upper: null })
            return Result<Limit>.Good(said);
        return known.Origin == said.Origin && known.Unit == said.Unit
            ? Result<Limit>.Good(said with
            { Lower = said.Lower ?? known.Lower, Upper = said.Upper ?? known.Upper, Source = said.Source ?? known.Source })
            : Result<Limit>.Bad(new Fault("limit", $"there is already {rest}, and it would be lost", "Give both ends, in one unit."));
    }

    private static Result<(decimal? Least, decimal? Most, string Unit)> Ends(string? least, string? most)
    {
        var read = new[] { least, most }.OfType<string>().Select(text => Measure.Read("limit", text, null)).ToList();
        if (read.Count == 0)
            return Result<(decimal?, decimal?, string)>.Bad(new Fault("limit", "neither end is given", "Give --least, --most or both."));
        if (read.SelectMany(one => one.Faults).ToList() is { Count: > 0 } faults)
            return Result<(decimal?, decimal?, string)>.Bad(faults);
        var unit = read[0].Value.Unit;
        if (read.Any(one => one.Value.Unit.Dimension != unit.Dimension))
            return Result<(decimal?, decimal?, string)>.Bad(
                new Fault("limit", "the two ends do not measure the same", "Give both in units of one kind."));
        decimal? first = least is null ? null : (decimal)read[0].Value.In(unit);
        decimal? last = most is null ? null : (decimal)read[^1].Value.In(unit);
        return Result<(decimal?, decimal?, string)>.Good((first, last, unit.Symbol));
    }
}
