namespace Refettle.Stuck;

/// <summary>What is believed of every joint's seizure level after all tries so far.</summary>
/// <remarks>Exact: grade, zones and joints form a tree, so messages passed once up and once down give every posterior
/// (Pearl, Probabilistic Reasoning in Intelligent Systems, 1988).</remarks>
public sealed class SeizureBelief
{
    private readonly SeizureModel _model;
    private readonly Dictionary<string, double[]> _likelihood;
    private readonly Dictionary<(string Zone, int Exposure), double[]> _zoneEvidence = [];
    private readonly Dictionary<(string Zone, int Exposure), double[]> _toGrade = [];
    private readonly Func<string, (string Zone, int Exposure)> _placeOf;

    /// <param name="model">How rust spreads.</param>
    /// <param name="placeOf">The zone and exposure (0 to 4) of a joint.</param>
    /// <param name="attempts">All tries, of any joints.</param>
    public SeizureBelief(SeizureModel model, Func<string, (string Zone, int Exposure)> placeOf, IEnumerable<Attempt> attempts)
    {
        (_model, _placeOf) = (model, placeOf);
        _likelihood = attempts.GroupBy(attempt => attempt.Try.Joint).ToDictionary(group => group.Key, LikelihoodOf);
        foreach (var place in _likelihood.GroupBy(pair => placeOf(pair.Key)))
        {
            _zoneEvidence[place.Key] = Product(place.Select(pair => ToZone(pair.Value)));
            _toGrade[place.Key] = ToGrade(_zoneEvidence[place.Key], place.Key.Exposure);
        }
    }

    /// <summary>The chances of the car's grades.</summary>
    public double[] CarGrade() => Normal(Grade(except: null));

    /// <summary>The chances of a joint's levels, 0 to 4.</summary>
    public double[] Joint(string joint)
    {
        var place = _placeOf(joint);
        var grade = Grade(except: place);
        var own = _likelihood.GetValueOrDefault(joint);
        var zone = Enumerable.Range(0, SeizureModel.Levels).Select(level => FromGrade(grade, place.Exposure, level)).ToArray();
        if (_zoneEvidence.TryGetValue(place, out var evidence))
            zone = Times(zone, own is null ? evidence : Others(place, joint));
        var levels = new double[SeizureModel.Levels];
        for (var zoneLevel = 0; zoneLevel < SeizureModel.Levels; zoneLevel++)
        {
            var joints = _model.JointLevels(zoneLevel);
            for (var level = 0; level < SeizureModel.Levels; level++)
                levels[level] += zone[zoneLevel] * joints[level];
        }

        return Normal(own is null ? levels : Times(levels, own));
    }

    /// <summary>The weights of the car's grades by all tries but those in some places.</summary>
    public double[] GradesBut(IReadOnlyCollection<(string Zone, int Exposure)> places) =>
        Product(_toGrade.Where(pair => !places.Contains(pair.Key)).Select(pair => pair.Value).Prepend([.. _model.CarGrades]));

    /// <summary>For each grade the weights of a place's levels, all tries there taken in.</summary>
    public ValueList<ValueList<double>> LevelsAt((string Zone, int Exposure) place) => Enumerable.Range(0, SeizureModel.Levels)
        .Select(grade => _model.ZoneLevels(grade, place.Exposure))
        .Select(levels => (_zoneEvidence.TryGetValue(place, out var evidence) ? Times(levels, evidence) : levels).ToValueList())
        .ToValueList();

    /// <summary>For each level of its place the chances of a joint's own levels, its own tries taken in.</summary>
    public ValueList<ValueList<double>> LevelsOf(string joint) => Enumerable.Range(0, SeizureModel.Levels)
        .Select(_model.JointLevels)
        .Select(levels => Normal(_likelihood.TryGetValue(joint, out var own) ? Times(levels, own) : levels).ToValueList()).ToValueList();

    /// <summary>The zone and exposure of a joint.</summary>
    public (string Zone, int Exposure) PlaceOf(string joint) => _placeOf(joint);

    private double[] Others((string Zone, int Exposure) place, string joint) => Product(
        _likelihood.Where(pair => pair.Key != joint && _placeOf(pair.Key) == place).Select(pair => ToZone(pair.Value)));

    private static double[] LikelihoodOf(IEnumerable<Attempt> attempts) => Product(attempts
        .Select(attempt => Enumerable.Range(0, SeizureModel.Levels).Select(attempt.Likelihood).ToArray()));

    private double[] ToZone(double[] likelihood) => Enumerable.Range(0, SeizureModel.Levels)
        .Select(zoneLevel => Dot(_model.JointLevels(zoneLevel), likelihood)).ToArray();

    private double[] ToGrade(double[] evidence, int exposure) => Enumerable.Range(0, SeizureModel.Levels)
        .Select(grade => Dot(_model.ZoneLevels(grade, exposure), evidence)).ToArray();

    private double FromGrade(double[] grade, int exposure, int level) =>
        Enumerable.Range(0, SeizureModel.Levels).Sum(step => grade[step] * _model.ZoneLevels(step, exposure)[level]);

    private double[] Grade((string, int)? except) =>
        Product(_toGrade.Where(pair => pair.Key != except).Select(pair => pair.Value).Prepend([.. _model.CarGrades]));

    private static double[] Product(IEnumerable<double[]> factors) =>
        factors.Aggregate(Enumerable.Repeat(1.0, SeizureModel.Levels).ToArray(), (sofar, next) => Scaled(Times(sofar, next)));

    private static double[] Times(double[] left, double[] right) => left.Zip(right, (one, other) => one * other).ToArray();

    private static double Dot(double[] left, double[] right) => left.Zip(right, (one, other) => one * other).Sum();

    // Scaling keeps long logs from running into zero; only ratios matter.
    private static double[] Scaled(double[] values)
    {
        var most = values.Max();
        return most is 0 or > 1e-100 ? values : Array.ConvertAll(values, value => value / most);
    }

    private static double[] Normal(double[] values)
    {
        var sum = values.Sum();
        return sum > 0 ? Array.ConvertAll(values, value => value / sum) : Enumerable.Repeat(1.0 / values.Length, values.Length).ToArray();
    }
}
