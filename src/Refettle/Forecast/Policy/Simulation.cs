using Refettle.Forecast.Sampling;

namespace Refettle.Forecast.Policy;

/// <summary>A question laid out for simulating, and its futures.</summary>
internal sealed class Simulation
{
    private const int Block = 64;

    private readonly ForecastQuestion _question;
    private readonly DurationSource _source;
    private readonly (int Spell, ulong Stream, ulong Below)[] _missable;
    private readonly (int Activity, int Least)[][] _watched;

    /// <param name="watched">Places of activities whose needs are to be recorded (<see cref="Tally.NeededBy"/>).</param>
    public Simulation(ForecastQuestion question, TableShelf tables, params int[] watched)
    {
        _question = question;
        Course = new(question.Project, question.Order);
        _watched = Array.ConvertAll(watched, Course.AfterOf);
        _source = new(question, tables);
        _missable = [.. Missable()];
    }

    public Course Course { get; }

    /// <summary>Plays all futures, on all cores where there are threads. The tally does not depend on how many.</summary>
    public Tally Run(CancellationToken cancel = default)
    {
        var tally = new Tally(_question.Futures, Course.Count, _question.Project.Lags.Count, _watched.Length);
        var blocks = (_question.Futures + Block - 1) / Block;
        if (OperatingSystem.IsBrowser())
        {
            var worker = new Worker(this, tally);
            for (var block = 0; block < blocks; block++)
                worker.Run(block);
            tally.Add(worker.Counts);
        }
        else
        {
            Parallel.For(0, blocks, new ParallelOptions { CancellationToken = cancel }, () => new Worker(this, tally),
                (block, _, worker) => worker.Run(block), worker => tally.Add(worker.Counts));
        }

        return tally;
    }

    /// <summary>One future in full.</summary>
    public PlayedFuture Play(int future)
    {
        var worker = new Worker(this, new(future + 1, Course.Count, _question.Project.Lags.Count, _watched.Length));
        return worker.Play(future);
    }

    /// <summary>The durations of one activity, by its place in the project, in all futures.</summary>
    public int[] Durations(int place)
    {
        var durations = new int[(_question.Futures + Block - 1) / Block * Block];
        var (shared, bits, drawn) = (new SharedDraws(_source.Shared, Block), new ulong[Block], new float[Block]);
        for (var first = 0; first < durations.Length; first += Block)
        {
            shared.Fill(first);
            _source.Fill(place, durations.AsSpan(first, Block), shared, bits, drawn, first);
        }

        return durations[.._question.Futures];
    }

    private IEnumerable<(int, ulong, ulong)> Missable()
    {
        for (var spell = 0; spell < Course.SpellOf.Length; spell++)
        {
            var (resource, start) = Course.SpellOf[spell];
            var chance = _question.Missed.Where(missed => missed.Resource == resource).Sum(missed => missed.Chance);
            if (chance > 0)
                yield return (spell, Streams.Of(_question.Seed, $"spell {_question.Project.Resources[resource].Id} {start}"),
                    chance >= 1 ? ulong.MaxValue : (ulong)(chance * Math.Pow(2, 64)));
        }
    }

    /// <summary>What one thread needs to play blocks of futures without making anything new.</summary>
    private sealed class Worker
    {
        private readonly Simulation _simulation;
        private readonly Tally _tally;
        private readonly SharedDraws _shared;
        private readonly FutureRun _run;
        private readonly ulong[] _bits = new ulong[Block];
        private readonly float[] _drawn = new float[Block];
        private readonly int[] _durations;
        private readonly bool[] _missed;
        private readonly ulong[] _spellBits;

        public Worker(Simulation simulation, Tally tally)
        {
            (_simulation, _tally) = (simulation, tally);
            _shared = new(simulation._source.Shared, Block);
            _run = new(simulation.Course);
            _durations = new int[simulation.Course.Count * Block];
            _missed = new bool[simulation.Course.SpellOf.Length];
            _spellBits = new ulong[simulation._missable.Length * Block];
            Counts = new(simulation.Course.Count, simulation._question.Project.Lags.Count);
        }

        public Counts Counts { get; }

        public Worker Run(int block)
        {
            Draw(block);
            var futures = Math.Min(Block, _tally.Finishes.Length - block * Block);
            for (var i = 0; i < futures; i++)
            {
                var future = block * Block + i;
                _tally.Finishes[future] = Play(i, out _);
                Counts.Add(_simulation.Course, _run);
                for (var watch = 0; watch < _simulation._watched.Length; watch++)
                    _tally.Watch(watch, future, _run, _simulation._watched[watch]);
            }

            return this;
        }

        public PlayedFuture Play(int future)
        {
            Draw(future / Block);
            var i = future % Block;
            Play(i, out var missed);
            var course = _simulation.Course;
            return new(
                InProject(course, place => _durations[place * Block + i]), InProject(course, place => _run.Starts[place]),
                InProject(course, place => _run.Finishes[place]), missed.ToArray().Select((isMissed, spell) => (isMissed, spell))
                    .Where(pair => pair.isMissed).Select(pair => course.SpellOf[pair.spell]).ToValueList());
        }

        private void Draw(int block)
        {
            var first = (long)block * Block;
            _shared.Fill(first);
            for (var i = 0; i < _simulation.Course.Count; i++)
                _simulation._source.Fill(_simulation.Course.Place[i], _durations.AsSpan(i * Block, Block), _shared, _bits, _drawn, first);
            for (var i = 0; i < _simulation._missable.Length; i++)
                Streams.Fill(_spellBits.AsSpan(i * Block, Block), _simulation._missable[i].Stream, first);
        }

        private int Play(int i, out ReadOnlySpan<bool> missed)
        {
            var missable = _simulation._missable;
            for (var spell = 0; spell < missable.Length; spell++)
                _missed[missable[spell].Spell] = _spellBits[spell * Block + i] < missable[spell].Below;
            if (missable.Length > 0)
                _run.Miss(_missed);
            missed = _missed;
            return _run.Play(_durations.AsSpan(i), Block);
        }

        private static ValueList<int> InProject(Course course, Func<int, int> value)
        {
            var values = new int[course.Count];
            for (var i = 0; i < course.Count; i++)
                values[course.Place[i]] = value(i);
            return values.ToValueList();
        }
    }
}
