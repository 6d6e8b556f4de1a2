namespace Refettle.Stuck.OpenUp;

/// <summary>The chances of grade and places, before anything more is tried and after.</summary>
internal sealed class Beliefs
{
    private readonly double[] _grades;
    private readonly LevelWeights[][] _places;
    private readonly double[] _weights;

    /// <summary>What stands for having seen nothing at a place.</summary>
    public static readonly LevelWeights Ones = new([1, 1, 1, 1, 1]);

    public Beliefs(OpenUpQuestion question)
    {
        _places = [.. question.Places.Select(place => place.Levels.Select(levels => new LevelWeights(levels)).ToArray())];
        _grades = [.. question.Grades];
        var all = Weights().Sum();
        _grades = Array.ConvertAll(_grades, grade => grade / all);
        _weights = Weights();
    }

    public int Places => _places.Length;

    /// <summary>For each place the chances of its levels, nothing more seen.</summary>
    public LevelWeights[] Now()
    {
        var now = new LevelWeights[Places];
        Joint(NothingSeen(), now);
        return now;
    }

    /// <summary>Stands for having seen nothing: 1 at every level of every place.</summary>
    public LevelWeights[] NothingSeen() => Enumerable.Repeat(Ones, Places).ToArray();

    /// <summary>For each place the chances of its levels together with what was seen: each adds up
    /// to the chance of what was seen.</summary>
    /// <param name="seen">For each place the chance of what was seen there, by the place's level.</param>
    /// <param name="joint">As many; what is asked for.</param>
    public void Joint(ReadOnlySpan<LevelWeights> seen, Span<LevelWeights> joint)
    {
        joint.Clear();
        Span<double> after = stackalloc double[Places + 1];
        for (var grade = 0; grade < _grades.Length; grade++)
        {
            after[Places] = 1;
            for (var place = Places - 1; place >= 0; place--)
                after[place] = after[place + 1] * _places[place][grade].Dot(seen[place]);
            var before = _grades[grade];
            for (var place = 0; place < Places; place++)
            {
                joint[place].Add(before * after[place + 1], _places[place][grade]);
                before *= _places[place][grade].Dot(seen[place]);
            }
        }

        for (var place = 0; place < Places; place++)
            joint[place] = joint[place].Times(seen[place]);
    }

    /// <summary>Draws the level of every place.</summary>
    public int[] Draw(Random random)
    {
        var grade = Pick(_weights, random);
        return Array.ConvertAll(_places, place => Pick(place[grade][..], random));
    }

    private double[] Weights() =>
        [.. _grades.Select((grade, number) => _places.Aggregate(grade, (product, place) => product * place[number].Sum()))];

    private static int Pick(ReadOnlySpan<double> weights, Random random)
    {
        var (sum, last) = (0.0, weights.Length - 1);
        foreach (var weight in weights)
            sum += weight;
        var mark = random.NextDouble() * sum;
        for (var i = 0; i < last; i++)
        {
            if ((mark -= weights[i]) < 0)
                return i;
        }

        return last;
    }
}
