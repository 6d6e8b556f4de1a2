using System.CommandLine;
using System.Diagnostics;
using Refettle.Bench.Forecasts;
using Refettle.Forecast;

namespace Refettle.Bench.Verbs;

/// <summary><c>forecast</c>: futures a second, against the same simulation in NumPy; fails when their
/// results differ by more than chance.</summary>
internal static class Forecast
{
    private const int Cap = 300 * 24 * 60;
    private const double MostErrors = 4.5;

    public static int Run(string[] args)
    {
        var sizes = new Option<int[]>("--sizes") { DefaultValueFactory = _ => [200, 400, 600], AllowMultipleArgumentsPerToken = true };
        var futures = new Option<int>("--futures") { DefaultValueFactory = _ => 200_000 };
        var peer = new Option<int>("--peer-futures") { DefaultValueFactory = _ => 20_000, Description = "0 leaves the peer out." };
        var chunk = new Option<int>("--chunk") { DefaultValueFactory = _ => 2_000, Description = "Futures that the peer plays at a time." };
        var store = new Option<string?>("--store") { Description = "A store with a car to ask of besides, such as refettle demo makes." };
        var car = new Option<string>("--car") { DefaultValueFactory = _ => "heron-22" };
        var part = new Option<string>("--part")
        { DefaultValueFactory = _ => "rear-axle", Description = "What is to come free, beside the chosen jobs." };
        var content = new Option<string>("--content") { DefaultValueFactory = _ => ".", Description = "The folder that holds ladders." };
        var command = new RootCommand { sizes, futures, peer, chunk, store, car, part, content };
        command.SetAction(parsed => All(
            [
                .. parsed.GetRequiredValue(sizes).Where(size => size > 0)
                    .Select(size => GarageProject.Ask(size, 1, parsed.GetValue(futures))),
                .. parsed.GetValue(store) is { } path
                    ? [CarProject.Ask(path, parsed.GetRequiredValue(car), parsed.GetRequiredValue(part), parsed.GetRequiredValue(content),
                        parsed.GetValue(futures))]
                    : Array.Empty<ForecastQuestion>(),
            ], parsed.GetValue(peer), parsed.GetValue(chunk)));
        return command.Parse(args).Invoke();
    }

    private static int All(ForecastQuestion[] questions, int peerFutures, int chunk)
    {
        Console.WriteLine(
            "| activities | futures/s | futures/s of two cores' time | NumPy futures/s | NumPy, of one core's time | ratio | of processor time |\n|---|---|---|---|---|---|---|");
        var faults = questions.SelectMany(question => Row(question, peerFutures, chunk).ToList()).ToList();
        Console.WriteLine($"\nOne run; a tenth of the futures before each row warms up. {Machine.Line}.");
        faults.ForEach(fault => Console.WriteLine($"- CONTRADICTION: {fault}"));
        return faults.Count == 0 ? 0 : 1;
    }

    private static IEnumerable<string> Row(ForecastQuestion question, int peerFutures, int chunk)
    {
        Forecaster.Finishes(question with { Futures = question.Futures / 10 });
        var (clock, processor) = (Stopwatch.StartNew(), Process.GetCurrentProcess().TotalProcessorTime);
        var finishes = Forecaster.Finishes(question).Value;
        var (wall, used) = (question.Futures / clock.Elapsed.TotalSeconds,
            question.Futures / (Process.GetCurrentProcess().TotalProcessorTime - processor).TotalSeconds);
        var peer = peerFutures > 0 ? NumPyPeer.Play(question, peerFutures, chunk, Cap) : null;
        Console.WriteLine(
            $"| {question.Project.Activities.Count} | {wall:0} | {2 * used:0} | {peer?.Futures / peer?.Seconds:0} | {peer?.Futures / peer?.Cpu:0} | "
            + $"{wall / (peer?.Futures / peer?.Seconds):0.0} × | {2 * used / (peer?.Futures / peer?.Cpu):0.0} × |");
        return peer is null ? [] : Differences(question, finishes, peer);
    }

    private static IEnumerable<string> Differences(ForecastQuestion question, int[] finishes, PeerTally peer)
    {
        var own = Array.ConvertAll(finishes, finish => (double)Math.Min(finish, Cap));
        var mean = Estimate.OfMean(own);
        var peerError = peer.Deviation / Math.Sqrt(peer.Futures);
        (string What, Estimate Own, Estimate Peer)[] figures =
        [
            ("mean finish", mean, new(peer.Mean, peerError)),
            ("chance of the date", Estimate.OfChance(finishes.Count(finish => finish <= question.Date), finishes.Length),
                Estimate.OfChance(peer.ByDate, peer.Futures)),
            ("unfinished", Estimate.OfChance(finishes.Count(finish => finish == Forecaster.NotFinished), finishes.Length),
                Estimate.OfChance(peer.Unfinished, peer.Futures)),
        ];
        foreach (var (what, ours, theirs) in figures)
        {
            var errors = (ours.Value - theirs.Value) / Math.Sqrt(ours.StandardError * ours.StandardError
                + theirs.StandardError * theirs.StandardError);
            Console.Error.WriteLine($"{what}: {ours}, NumPy {theirs}, {errors:0.0} standard errors apart");
            if (Math.Abs(errors) > MostErrors)
                yield return $"{question.Project.Activities.Count} activities, {what}: {ours}, NumPy {theirs}";
        }
    }
}
