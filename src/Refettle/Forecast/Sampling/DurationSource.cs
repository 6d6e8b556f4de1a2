namespace Refettle.Forecast.Sampling;

/// <summary>The durations of all activities in a block of futures.</summary>
internal sealed class DurationSource
{
    private readonly ISampler[] _samplers;
    private readonly ulong[] _streams;

    public DurationSource(ForecastQuestion question, TableShelf tables)
    {
        Shared = new(question, tables);
        var levels = question.Levels.Select(level => level.Id).ToList();
        _streams = [.. question.Project.Activities.Select(activity => Streams.Of(question.Seed, activity.Id))];
        _samplers = [.. question.Uncertainties
            .Select((uncertainty, place) => Of(uncertainty, question.Project.Activities[place].Duration))];

        ISampler Of(Uncertainty uncertainty, int planned) => uncertainty switch
        {
            ThreePoint { Least: var least, Most: var most } three when most > least =>
                new TableSampler(tables.ThreePoint(three.Form, (three.Likely - least) / (most - least)), (float)least,
                    (float)(most - least)),
            ThreePoint three => new FixedSampler((float)three.Most),
            LongTail tail => new TableSampler(tables.LogNormal(tail.Sigma), 0, (float)tail.Median),
            Promise promise =>
                new TableSampler(tables.LogNormal(promise.Lateness.Sigma), 0, (float)(promise.Promised * promise.Lateness.Factor)),
            OwnPace own => new OwnPaceSampler(tables.Normal, (float)own.Planned),
            ByLevel by => new LevelSampler(levels.IndexOf(by.Level), [.. by.Outcomes.Select(outcomes => new Steps(outcomes))]),
            Perhaps { Chance: > 0 } perhaps => new PerhapsSampler(perhaps.Chance, Of(perhaps.When, planned)),
            Perhaps => new FixedSampler(0),
            Eased eased => new EasedSampler(Of(eased.Of, planned), (float)eased.Factor, (float)eased.Less),
            AnyCurve any => new TableSampler(new(any.Quantile), 0, 1),
            _ => new FixedSampler(planned),
        };
    }

    public SharedSources Shared { get; }

    /// <summary>Draws the durations of one activity, in whole units, 0 or more.</summary>
    public void Fill(int activity, Span<int> durations, SharedDraws shared, Span<ulong> bits, Span<float> drawn, long first)
    {
        if (_samplers[activity] is not FixedSampler)
            Streams.Fill(bits, _streams[activity], first);
        _samplers[activity].Fill(drawn, bits, shared);
        for (var i = 0; i < durations.Length; i++)
            durations[i] = (int)Math.Clamp(drawn[i] + 0.5f, 0f, LongestDuration);
    }

    /// <summary>Nothing takes longer than this many units: two years of minutes.</summary>
    public const float LongestDuration = 1_000_000;
}
