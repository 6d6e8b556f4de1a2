namespace Refettle.Stuck.OpenUp;

/// <summary>The chances of grade and places, before anything more is tried and after.</summary>
internal sealed class Beliefs
{
    private readonly double[] _grades;
    private readonly double[][][] _places;

    public Beliefs(OpenUpQuestion question)
    {
        _places = [.. question.Places.Select(place => place.Levels.Select(levels => levels.ToArray()).ToArray())];
        _grades = [.. question.Grades];
        var all = Weight(Enumerable.Repeat(Ones, _places.Length).ToArray());
        _grades = Array.ConvertAll(_grades, grade => grade / all);
    }

    public static double[] Ones { get; } = [1, 1, 1, 1, 1];

    public int Places => _places.Length;

    /// <summary>The chance of what was seen.</summary>
    /// <param name="seen">For each place the chance of what was seen there, by the place's level.</param>
    public double Weight(double[][] seen)
    {
        var weight = 0.0;
        for (var grade = 0; grade < _grades.Length; grade++)
        {
            var one = _grades[grade];
            for (var place = 0; place < _places.Length; place++)
                one *= Dot(_places[place][grade], seen[place]);
            weight += one;
        }

        return weight;
    }

    /// <summary>For each place the chances of its levels together with what was seen: each row adds up to <see cref="Weight"/>.</summary>
    public double[][] Joint(double[][] seen)
    {
        var joint = new double[_places.Length][];
        for (var place = 0; place < _places.Length; place++)
            joint[place] = new double[SeizureModel.Levels];
        for (var grade = 0; grade < _grades.Length; grade++)
        {
            for (var place = 0; place < _places.Length; place++)
            {
                var others = _grades[grade];
                for (var other = 0; other < _places.Length; other++)
                    others *= other == place ? 1 : Dot(_places[other][grade], seen[other]);
                for (var level = 0; level < SeizureModel.Levels; level++)
                    joint[place][level] += others * _places[place][grade][level] * seen[place][level];
            }
        }

        return joint;
    }

    /// <summary>Draws the level of every place.</summary>
    public int[] Draw(Random random)
    {
        var weights = new double[_grades.Length];
        for (var grade = 0; grade < weights.Length; grade++)
            weights[grade] = _places.Aggregate(_grades[grade], (product, place) => product * place[grade].Sum());
        var drawn = Pick(weights, random);
        return Array.ConvertAll(_places, place => Pick(place[drawn], random));
    }

    private static int Pick(double[] weights, Random random)
    {
        var mark = random.NextDouble() * weights.Sum();
        for (var i = 0; i < weights.Length - 1; i++)
        {
            if ((mark -= weights[i]) < 0)
                return i;
        }

        return weights.Length - 1;
    }

    private static double Dot(double[] left, double[] right)
    {
        var sum = 0.0;
        for (var level = 0; level < left.Length; level++)
            sum += left[level] * right[level];
        return sum;
    }
}
