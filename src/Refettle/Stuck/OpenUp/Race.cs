namespace Refettle.Stuck.OpenUp;

/// <summary>Tries sets of accesses on the same cars, drawn by chance, and leaves behind those that
/// clearly cost more than the best.</summary>
/// <param name="draw">Draws a car.</param>
/// <param name="most">How many cars those that come to the end are tried on; a sixteenth of them all are.</param>
internal sealed class Race(Func<Scenario> draw, int most)
{
    /// <summary>Standard errors of the difference beyond which a set clearly costs more.</summary>
    private const double Clearly = 4;

    /// <summary>Those that are so far behind on the way are left there; what is lost by it is within what chance leaves open.</summary>
    private const double Leaves = 2.5;

    private readonly List<Scenario> _scenarios = [];
    private readonly List<Runner> _ended = [];

    /// <summary>Those that came to the end: opening nothing, the best that opens something, and all
    /// that may be as good as the best.</summary>
    public ValueList<WeighedSet> Run(IEnumerable<Outlook> outlooks)
    {
        var runners = outlooks.Select(ahead => new Runner(ahead)).ToList();
        for (var draws = most / 16; ; draws *= 2)
        {
            runners.ForEach(runner => runner.To(ScenariosTo(draws)));
            var (best, opening) =
                (runners.MinBy(runner => runner.Total)!, runners.Where(runner => runner.Ahead.First != 0).MinBy(runner => runner.Total));
            if (draws >= most)
            {
                _ended.AddRange(runners);
                return Ended();
            }

            runners.RemoveAll(runner => runner.Ahead.First != 0 && runner != opening && runner.Behind(best) > Leaves);
        }
    }

    /// <summary>All that came to the end of a race so far, each judged beside the best of them: all ran on the same cars.</summary>
    public ValueList<WeighedSet> Ended()
    {
        var best = _ended.MinBy(runner => runner.Total)!;
        return _ended.Select(runner => runner.Weighed(runner.Behind(best) > Clearly)).ToValueList();
    }

    private List<Scenario> ScenariosTo(int draws)
    {
        while (_scenarios.Count < draws)
            _scenarios.Add(draw());
        return _scenarios;
    }

    private sealed class Runner(Outlook ahead)
    {
        private readonly List<double> _minutes = [];
        private readonly Expectation _sum = new();

        public Outlook Ahead => ahead;

        public double Total => ahead.Certain + _sum.Minutes;

        public void To(List<Scenario> scenarios)
        {
            foreach (var scenario in scenarios.Skip(_minutes.Count))
            {
                var (minutes, opens) = ahead.Of(scenario);
                _sum.Add(1, minutes, opens);
                _minutes.Add(minutes);
            }
        }

        /// <summary>By how many standard errors it costs more on the same cars.</summary>
        public double Behind(Runner best)
        {
            var (mean, squares) = (Total - best.Total, 0.0);
            for (var i = 0; i < _minutes.Count; i++)
                squares += Math.Pow(ahead.Certain + _minutes[i] - best.Ahead.Certain - best._minutes[i] - mean, 2);
            return mean <= 0 ? 0 : mean / Math.Max(1e-9, Math.Sqrt(squares / (_minutes.Count - 1) / _minutes.Count));
        }

        public WeighedSet Weighed(bool isDearer) => new(ahead.First, ahead.Certain, _sum, false, isDearer);
    }
}
