using Refettle.Timeline;

namespace Refettle.Peers.Projects;

/// <summary>Invented projects, repeatable by their seed.</summary>
public static class ProjectGenerator
{
    private const int Day = 1440;

    /// <summary>A restoration of so many activities in minutes: one person in the evenings and on Saturdays, a helper, a bench, a spray
    /// corner that is only open by day, cures and deliveries on the wall clock, recoat windows with both ends.</summary>
    public static Project Restoration(int count, int seed)
    {
        var random = new Random(seed);
        var days = 60 + count * 3;
        Resource[] resources =
        [
            new("person", 1,
                Enumerable.Range(0, days)
                    .Select(day => day % 7 == 5
                        ? new Window(day * Day + 540, day * Day + 1020)
                        : new Window(day * Day + 1140, day * Day + 1320)).ToValueList()),
            new("helper", 1,
                Enumerable.Range(0, days).Where(day => day % 7 == 5).Select(day => new Window(day * Day + 540, day * Day + 900))
                    .ToValueList()),
            new("bench", 1),
            new("spray corner", 1,
                Enumerable.Range(0, days).Where(day => random.Next(5) > 0).Select(day => new Window(day * Day + 600, day * Day + 1260))
                    .ToValueList()),
        ];
        var (activities, lags) = (new List<Activity>(), new List<Lag>());
        while (activities.Count < count)
            AddChain(activities, lags, random, Math.Min(count - activities.Count, 3 + random.Next(6)));
        return new([.. activities], [.. resources], [.. lags]);
    }

    private static void AddChain(List<Activity> activities, List<Lag> lags, Random random, int length)
    {
        for (var k = 0; k < length; k++)
        {
            var here = activities.Count;
            var kind = k == 0 ? 0 : random.Next(10);
            activities.Add(Make(here, kind, random));
            if (k > 0)
                lags.Add(kind == 5
                    ? new(here - 1, here, 60, 60 + 5 * Day)
                    : new(here - 1, here, random.Next(4) == 0 ? random.Next(600) : 0));
            if (here > length && random.Next(3) == 0)
                lags.Add(new(random.Next(Math.Max(0, here - 40), here - length + 1), here));
        }
    }

    private static Activity Make(int here, int kind, Random random)
    {
        var id = $"a{here}";
        return kind switch
        {
            < 4 => new(id, 10 + 5 * random.Next(30), [1, 0, 0, 0], Pace.Pausing),
            4 => new(id, 10 + 5 * random.Next(20), [1, 0, 1, 0], Pace.Pausing),
            5 => new(id, 15 + 5 * random.Next(12), [1, 0, 0, 1], Pace.Unbroken),
            6 => new(id, 10 + 5 * random.Next(12), [1, 1, 0, 0], Pace.Unbroken),
            7 => new(id, 10 + 5 * random.Next(20), [1, 0, 0, 0], Pace.Unbroken),
            8 => new(id, 60 * random.Next(1, 48), [0, 0, 0, 0]),
            _ => new(id, Day * random.Next(1, 10), [0, 0, 0, 0]),
        };
    }

    /// <summary>A small project with a little of everything, for exhaustive checks: times below about 40.</summary>
    public static Project Small(int count, int seed)
    {
        var random = new Random(seed);
        Resource[] resources =
            [new("r0", random.Next(1, 3)), new("r1", 1, Windows(random)), new("r2", 2, random.Next(2) == 0 ? null : Windows(random))];
        var activities = Enumerable.Range(0, count).Select(i => new Activity($"a{i}", random.Next(6) == 0 ? 0 : random.Next(1, 5),
            [random.Next(2), random.Next(2), random.Next(3)], (Pace)random.Next(3), random.Next(4) == 0 ? random.Next(6) : 0,
            random.Next(8) == 0 ? random.Next(12, 40) : null,
            random.Next(14) == 0 ? random.Next(20) : null)).ToList();
        var lags = new List<Lag>();
        for (var after = 1; after < count; after++)
        {
            for (var k = random.Next(3); k > 0; k--)
            {
                var (least, anchor) = (random.Next(-3, 4), (Anchor)random.Next(2));
                lags.Add(new(random.Next(after), after, least, random.Next(3) == 0 ? least + random.Next(5) : null, anchor));
            }
        }

        return new([.. activities], [.. resources], [.. lags]);
    }

    private static ValueList<Window> Windows(Random random)
    {
        var windows = new List<Window>();
        for (var time = random.Next(3); time < 60;)
        {
            var end = time + random.Next(2, 8);
            windows.Add(new(time, end));
            time = end + random.Next(1, 6);
        }

        return [.. windows];
    }
}
