namespace Refettle.Peers.Cars;

/// <summary>Makes jobs for generated cars out of chance, equal for equal shapes and seeds.</summary>
/// <remarks>All figures are whole, so that with an hour worth 60 minutes and money turn into each other without rounding.</remarks>
public static class JobGenerator
{
    public static ValueList<Job> Make(CarShape shape, int count, int seed)
    {
        var chance = new Random(seed);
        var goals = CarGenerator.Goals(shape, count);
        return Enumerable.Range(0, count).Select(number => Job(number, goals, chance)).ToValueList();
    }

    private static Job Job(int number, ValueList<Fact> goals, Random chance)
    {
        var likely = chance.Next(0, 900);
        return new()
        {
            Id = $"job{number}",
            Name = $"Job {number}",
            Wish = chance.Next(10) switch { 0 => Wish.Must, < 3 => Wish.Maybe, _ => Wish.Want },
            Goals = chance.Next(4) == 0 ? [goals[number], goals[chance.Next(goals.Count)]] : [goals[number]],
            With = number > 0 && chance.Next(5) == 0 ? [$"job{chance.Next(number)}"] : [],
            Worth = chance.Next(8) == 0 ? null : chance.Next(4) == 0
                ? new(likely / 20, likely / 10, likely, WorthUnit.Points, Origin.User)
                : new(likely / 2, likely, likely * 2, WorthUnit.Money, Origin.User),
            Work = new(chance.Next(0, 120)),
            Parts = new(chance.Next(0, 80)),
        };
    }
}
