using System.Diagnostics;
using Refettle.Sheets;

namespace Refettle.Bench.Verbs;

/// <summary>Times reading a car sheet of 10,000 parts (or as many as given), from its text to the checked structure.</summary>
internal static class SheetLoad
{
    private const int JointsPerPart = 2;

    public static int Run(string[] args)
    {
        var parts = args.Length > 0 ? int.Parse(args[0]) : 10_000;
        var text = SheetWriter.Write(new() { Name = "Large", Structure = Large(parts, new Random(1)) });
        Console.WriteLine($"{parts} parts, {parts * JointsPerPart} joints, {text.Length / 1e6:0.0} MB");
        for (var round = 0; round < 4; round++)
        {
            var (watch, worked) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
            var sheet = SheetReader.Read(text, "large.yaml");
            Console.WriteLine(
                $"read in {watch.Elapsed.TotalMilliseconds:0} ms, {(Environment.CpuUsage.TotalTime - worked).TotalMilliseconds:0} ms of processor{(round == 0 ? " (first, with compilation)" : "")}, {sheet.Faults.Count} faults");
        }

        return 0;
    }

    /// <summary>Parts that hang on earlier ones, with blockers that point to later ones: no circles.</summary>
    private static Structure Large(int parts, Random random) => new()
    {
        Parts = [Fixed, .. Enumerable.Range(1, parts - 1).Select(i => Part(i, parts, random))],
        Joints = [.. Enumerable.Range(0, parts * JointsPerPart).Select(i => Joint(i, 1 + (i % (parts - 1)), random))],
    };

    private static Part Fixed { get; } = new() { Id = "part-0", Name = "Body shell", Fixed = true };

    private static Part Part(int i, int parts, Random random) => new()
    {
        Id = $"part-{i}",
        Name = $"Part number {i}",
        Side = (Side)random.Next(3),
        Mass = new(random.Next(1, 400) / 10m),
        Hazards = [Hazard.Rubber],
        Out = new()
        {
            Off = new(random.Next(1, 9)),
            On = new(random.Next(1, 9)),
            Clear = i + 1 < parts ? [Fact.Off($"part-{random.Next(i + 1, parts)}")] : []
        },
    };

    private static Joint Joint(int i, int part, Random random) => new()
    {
        Id = $"joint-{i}",
        Kind = JointKind.Bolt,
        Holds = [$"part-{part}", $"part-{random.Next(part)}"],
        Count = random.Next(1, 5),
        Thread = "M8x1.25",
        Torque = new(25),
        Ways =
        [
            new() { Id = "socket", Tool = "13 mm socket", Open = new(random.Next(1, 9)), Close = new(random.Next(1, 9)),
                Origin = Origin.User },
            new() { Id = "cut", Tool = "cut-off wheel", Open = new(15), Close = new(10), Destroys = [$"part-{part}"],
                Cautions = ["Sparks. Eyes, ears, lungs."] },
        ],
    };
}
