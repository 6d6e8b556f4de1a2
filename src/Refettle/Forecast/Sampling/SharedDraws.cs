namespace Refettle.Forecast.Sampling;

/// <summary>What all activities of one future share, drawn for a block of futures: the user's overrun and the hidden levels.</summary>
internal sealed class SharedDraws
{
    private readonly ulong[] _bits;
    private readonly SharedSources _sources;

    public SharedDraws(SharedSources sources, int block)
    {
        _sources = sources;
        _bits = new ulong[block];
        (Middle, Spread) = (new float[block], new float[block]);
        Levels = [.. sources.Levels.Select(_ => new byte[block])];
    }

    /// <summary>Mean of the logarithm of actual over planned.</summary>
    public float[] Middle { get; }

    /// <summary>Its deviation from task to task.</summary>
    public float[] Spread { get; }

    public byte[][] Levels { get; }

    public void Fill(long first)
    {
        if (_sources.UsesOverrun)
            FillOverrun(first);
        for (var level = 0; level < Levels.Length; level++)
            FillLevel(_sources.Levels[level], Levels[level], first);
    }

    private void FillOverrun(long first)
    {
        var belief = _sources.Overrun;
        Streams.Fill(_bits, _sources.SpreadStream, first);
        for (var i = 0; i < _bits.Length; i++)
            Spread[i] = (float)Math.Sqrt(belief.Scale) * _sources.Deviation.At(_bits[i]);
        Streams.Fill(_bits, _sources.MiddleStream, first);
        var share = (float)(1 / Math.Sqrt(belief.Weight));
        for (var i = 0; i < _bits.Length; i++)
            Middle[i] = (float)belief.Mean + Spread[i] * share * _sources.Normal.At(_bits[i]);
    }

    private void FillLevel(LevelSource source, byte[] levels, long first)
    {
        Streams.Fill(_bits, source.Stream, first);
        for (var i = 0; i < _bits.Length; i++)
            levels[i] = (byte)source.ByParent[source.Parent < 0 ? 0 : Levels[source.Parent][i]].At(_bits[i]);
    }
}

/// <summary>Where the shared draws come from.</summary>
internal sealed class SharedSources
{
    public SharedSources(ForecastQuestion question, TableShelf tables)
    {
        Overrun = question.Overrun;
        UsesOverrun = question.Uncertainties.Any(Uses);
        (Normal, Deviation) = (tables.Normal, tables.Deviation(Overrun.Shape));
        SpreadStream = Streams.Of(question.Seed, "overrun spread");
        MiddleStream = Streams.Of(question.Seed, "overrun middle");
        var names = question.Levels.Select(level => level.Id).ToList();
        Levels = [.. question.Levels.Select(level => new LevelSource(
            level.Parent is null ? -1 : names.IndexOf(level.Parent),
            Streams.Of(question.Seed, $"level {level.Id}"),
            [.. level.Chances.Select(row => new Steps(row.Select((chance, place) => new DurationChance(place, chance))))]))];
    }

    public OverrunBelief Overrun { get; }

    public bool UsesOverrun { get; }

    public QuantileTable Normal { get; }

    public QuantileTable Deviation { get; }

    public ulong SpreadStream { get; }

    public ulong MiddleStream { get; }

    public LevelSource[] Levels { get; }

    private static bool Uses(Uncertainty uncertainty) => uncertainty switch
    {
        OwnPace => true,
        Perhaps perhaps => Uses(perhaps.When),
        Eased eased => Uses(eased.Of),
        _ => false,
    };
}

/// <summary>A hidden level ready to be drawn; parent below 0 when it stands alone.</summary>
internal sealed record LevelSource(int Parent, ulong Stream, Steps[] ByParent);
