using System.Runtime.CompilerServices;

namespace Refettle.Stuck;

/// <summary>One figure for each seizure level, 0 to 4: chances, or chances times what was seen.</summary>
[InlineArray(SeizureModel.Levels)]
internal struct LevelWeights
{
    private double _first;

    public LevelWeights(IReadOnlyList<double> values)
    {
        for (var level = 0; level < SeizureModel.Levels; level++)
            this[level] = values[level];
    }

    public readonly double Sum() => this[0] + this[1] + this[2] + this[3] + this[4];

    /// <summary>The mean of figures, these being the chances.</summary>
    public readonly double Dot(in LevelWeights values) =>
        (this[0] * values[0]) + (this[1] * values[1]) + (this[2] * values[2]) + (this[3] * values[3]) + (this[4] * values[4]);

    /// <summary>Level by level.</summary>
    public readonly LevelWeights Times(in LevelWeights other)
    {
        var product = default(LevelWeights);
        product[0] = this[0] * other[0];
        product[1] = this[1] * other[1];
        product[2] = this[2] * other[2];
        product[3] = this[3] * other[3];
        product[4] = this[4] * other[4];
        return product;
    }

    /// <summary>Adds others times a factor, level by level.</summary>
    public void Add(double factor, in LevelWeights other)
    {
        this[0] += factor * other[0];
        this[1] += factor * other[1];
        this[2] += factor * other[2];
        this[3] += factor * other[3];
        this[4] += factor * other[4];
    }
}
