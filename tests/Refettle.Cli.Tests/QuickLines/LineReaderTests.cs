using CsCheck;
using Refettle.Logbook;
using Refettle.QuickLine;
using Xunit.Abstractions;

namespace Refettle.Cli.Tests.QuickLines;

/// <summary>What a line is understood as, on the demo estate of 597 parts and 984 joints. The lines
/// were written down before there was a matcher (see the history of the two files); a third of them was
/// never looked at while it was tuned.</summary>
public sealed class LineReaderTests(DemoCars cars, ITestOutputHelper output) : IClassFixture<DemoCars>
{
    private readonly Structure _estate = cars.Estate;

    [Fact]
    public void The_lines_are_many_and_none_is_in_both_files()
    {
        var (tuned, apart) = (SaidLine.Of(SaidLine.ToTuneBy), SaidLine.Of(SaidLine.KeptApart));
        Assert.True(tuned.Length + apart.Length >= 300 && apart.Length * 3 >= tuned.Length + apart.Length - 2,
            $"{tuned.Length} + {apart.Length}");
        Assert.Empty(tuned.Select(line => line.Line).Intersect(apart.Select(line => line.Line)));
        var known = _estate.Parts.Select(part => $"part {part.Id}").Concat(_estate.Joints.Select(joint => $"joint {joint.Id}")).ToHashSet();
        var named = tuned.Concat(apart).SelectMany(line => line.Right)
            .Where(thing => thing.StartsWith("part ", StringComparison.Ordinal) || thing.StartsWith("joint ", StringComparison.Ordinal));
        Assert.Superset(named.ToHashSet(), known);
    }

    [Theory]
    [InlineData(SaidLine.ToTuneBy)]
    [InlineData(SaidLine.KeptApart)]
    public void At_least_95_of_100_lines_are_about_the_right_thing(string file)
    {
        var reader = new LineReader(_estate);
        var lines = SaidLine.Of(file).Select(line => (line, Answer: reader.Read(line.Line))).ToList();
        var right = lines.Count(line => line.line.Right.Contains(Thing(line.Answer)));
        var kind = lines.Count(line => line.line.Kind == Kind(line.Answer.Best.Kind));
        var among = lines.Count(line => line.Answer.Readings.Any(reading => line.line.Right.Contains(reading.About ?? "car")));
        output.WriteLine(
            $"{file}: {lines.Count} lines; right thing {right} ({100.0 * right / lines.Count:0.0} %), right kind {kind} ({100.0 * kind / lines.Count:0.0} %), right thing among what is offered {among}");
        Assert.True(right >= 0.95 * lines.Count, $"{right} of {lines.Count}");
    }

    [Fact]
    public void Every_answer_can_be_kept()
    {
        var history = new CarHistory(new() { Id = "x", Name = "x", Structure = _estate }, [], []);
        var reader = new LineReader(_estate);
        foreach (var line in SaidLine.Of(SaidLine.ToTuneBy).Concat(SaidLine.Of(SaidLine.KeptApart)))
        {
            var answer = reader.Read(line.Line);
            Assert.Empty(LineCheck.Of(history, answer));
            var refused = Telling.Of(history.Car, answer, answer.Best).SelectMany(told => HappeningCheck.Of(history, told))
                .Where(fault => fault.Severity == Severity.Error && !fault.Found.Contains("no such bag", StringComparison.Ordinal));
            Assert.Empty(refused.Select(fault => $"{line.Line}: {fault}"));
        }
    }

    [Fact]
    public void Whatever_is_said_is_understood_at_least_as_a_note()
    {
        var history = new CarHistory(new() { Id = "x", Name = "x", Structure = _estate }, [], []);
        var reader = new LineReader(_estate);
        var words = SaidLine.Of(SaidLine.ToTuneBy).SelectMany(line => line.Line.Split(' ')).Distinct().ToArray();
        var said = Gen.OneOf(Gen.String[0, 80],
            Gen.Int[0, words.Length - 1].Select(place => words[place]).Array[0, 12].Select(some => string.Join(' ', some)));
        said.Sample(line => LineCheck.Of(history, reader.Read(line)).Count == 0, iter: 500);
    }

    [Fact]
    public void The_other_side_of_the_car_is_understood_as_the_other_side()
    {
        var reader = new LineReader(_estate);
        foreach (var line in SaidLine.Of(SaidLine.ToTuneBy)
            .Where(line => line.Right.Length == 1 && reader.Read(line.Line).Best.About == line.Right[0]))
        {
            var (mirrored, right) = (Mirror(line.Line), MirrorThing(line.Right[0]));
            if (mirrored != line.Line && right != line.Right[0])
                Assert.True(right == reader.Read(mirrored).Best.About, $"{mirrored}: {reader.Read(mirrored).Best.About}, not {right}");
        }
    }

    private static string Thing(LineAnswer answer) => answer.Best.About ?? "car";

    private static string Kind(LineKind kind) => kind switch
    {
        LineKind.Tightened => "torque",
        LineKind.BagPacked => "bag",
        LineKind.BagMoved => "bag-moved",
        LineKind.BagEmptied => "bag-emptied",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static readonly Dictionary<string, string> OtherSide =
        new[] { ("left", "right"), ("fl", "fr"), ("rl", "rr") }.SelectMany(pair => new[] { pair, (pair.Item2, pair.Item1) })
            .ToDictionary(pair => pair.Item1, pair => pair.Item2);

    private static string Mirror(string line) => string.Join(' ', line.Split(' ').Select(word => OtherSide.GetValueOrDefault(word, word)));

    private string MirrorThing(string thing)
    {
        var other = string.Join(' ', thing.Split(' ').Select(word => string.Join('-', word.Split('-').Select(Mirror))));
        return _estate.Parts.Any(part => $"part {part.Id}" == other) || _estate.Joints.Any(joint => $"joint {joint.Id}" == other)
            ? other
            : thing;
    }
}
