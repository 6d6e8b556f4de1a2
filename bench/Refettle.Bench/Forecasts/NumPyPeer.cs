using System.Diagnostics;
using System.Text.Json;
using Refettle.Forecast;
using Refettle.Timeline;
using Activity = Refettle.Timeline.Activity;

namespace Refettle.Bench.Forecasts;

/// <summary>The simulation in NumPy (Debian package <c>python3-numpy</c>), run as a process; its start
/// and its reading are not counted.</summary>
internal static class NumPyPeer
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    /// <summary>Plays futures, so many at a time.</summary>
    /// <returns>Null when there is no NumPy.</returns>
    public static PeerTally? Play(ForecastQuestion question, int futures, int chunk, int cap)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, JsonSerializer.Serialize(Form(question, cap)));
            var start = new ProcessStartInfo("/usr/bin/python3",
                [Path.Combine(AppContext.BaseDirectory, "Forecasts", "forecast_peer.py"), file, $"{futures}", $"{chunk}"])
            { RedirectStandardOutput = true };
            using var process = Process.Start(start)!;
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? JsonSerializer.Deserialize<PeerTally>(output, Options) : null;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static object Form(ForecastQuestion question, int cap)
    {
        var project = question.Project;
        var position = question.Order.Select((place, i) => (place, i)).ToDictionary(pair => pair.place, pair => pair.i);
        var calendars = Calendars(project);
        var firstSpell = project.Resources.Select((_, r) => project.Resources.Take(r).Sum(before => before.Open?.Count ?? 0)).ToList();
        return new
        {
            date = question.Date,
            cap,
            capacity = project.Resources.Select(resource => resource.Capacity),
            overrun = new
            {
                mean = question.Overrun.Mean,
                weight = question.Overrun.Weight,
                shape = question.Overrun.Shape,
                scale = question.Overrun.Scale
            },
            levels = question.Levels.Select(level => new { id = level.Id, parent = level.Parent, chances = level.Chances }),
            missable = question.Missed
                .SelectMany(missed => project.Resources[missed.Resource].Open!.Select(
                    (_, i) => new double[] { firstSpell[missed.Resource] + i, missed.Chance })),
            calendars = calendars.Select(set => Calendar(project, set, firstSpell)),
            activities = question.Order.Select(place => new
            {
                draw = Draw(question.Uncertainties[place], project.Activities[place].Duration),
                earliest = project.Activities[place].Earliest,
                pace = project.Activities[place].Pace.ToString(),
                calendar = calendars.IndexOf(Set(project, project.Activities[place])),
                keeps = Keeps(project, project.Activities[place]),
                arcs = project.Lags.Where(lag => lag.After == place)
                    .Select(lag => new object[] { position[lag.Before], lag.Least, lag.Anchor == Anchor.Start }),
                demands = project.Activities[place].Demands.Select((units, r) => new[] { r, units }).Where(demand => demand[1] > 0),
            }),
        };
    }

    private static string Set(Project project, Activity activity) => activity.Pace == Pace.WallClock
        ? ""
        : string.Join(' ',
            Enumerable.Range(0, project.Resources.Count).Where(r => activity.Demands[r] > 0 && project.Resources[r].Open is not null));

    private static List<string> Calendars(Project project) =>
        [.. project.Activities.Select(activity => Set(project, activity)).Where(set => set.Length > 0).Distinct()];

    // A resource that only pausing work asks for counts as taken up to its next opening, as in the planner:
    // it changes no future, and saves both work.
    private static int Keeps(Project project, Activity activity) =>
        activity.Pace == Pace.Pausing && int.TryParse(Set(project, activity), out var only)
        && project.Activities.All(other => other.Demands[only] == 0 || other.Pace == Pace.Pausing) ? only : -1;

    private static object Calendar(Project project, string set, List<int> firstSpell)
    {
        var resources = set.Split(' ').Select(int.Parse).ToList();
        var windows = project.Resources[resources[0]].Open!.Select(
            (window, i) => (window, spells: new List<int> { firstSpell[resources[0]] + i })).ToList();
        foreach (var r in resources.Skip(1))
        {
            windows = [.. windows.SelectMany(one => project.Resources[r].Open!.Select((other, i) =>
                (new Window(Math.Max(one.window.Start, other.Start), Math.Min(one.window.End, other.End)),
                    new List<int>(one.spells) { firstSpell[r] + i }))).Where(common => common.Item1.Start < common.Item1.End)];
        }

        return new
        {
            windows = windows.Select(one => new[] { one.window.Start, one.window.End }),
            spells = windows.Select(one => one.spells)
        };
    }

    private static object Draw(Uncertainty uncertainty, int duration) => uncertainty switch
    {
        ThreePoint three => new { kind = "pert", points = new[] { three.Least, three.Likely, three.Most } },
        Promise promise => new { kind = "promise", median = promise.Promised * promise.Lateness.Factor, sigma = promise.Lateness.Sigma },
        LongTail tail => new { kind = "promise", median = tail.Median, sigma = tail.Sigma },
        OwnPace own => new { kind = "own", planned = own.Planned },
        ByLevel by =>
            new
            {
                kind = "level",
                level = by.Level,
                outcomes = by.Outcomes.Select(list => list.Select(one => new[] { one.Duration, one.Chance }))
            },
        Perhaps perhaps => new { kind = "perhaps", chance = perhaps.Chance, when = Draw(perhaps.When, duration) },
        _ => new { kind = "certain", duration },
    };
}

/// <summary>What the peer came to; mean and deviation of finishes cut off at the cap.</summary>
internal sealed record PeerTally(double Seconds, double Cpu, int Futures, int Unfinished, int ByDate, double Mean, double Deviation);
