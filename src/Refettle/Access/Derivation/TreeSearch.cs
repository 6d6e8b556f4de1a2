namespace Refettle.Access.Derivation;

/// <summary>Depth-first branch and bound over the ways of called-for facts: exact, and quick on small cores.</summary>
/// <param name="mostNodes">Gives up after so many nodes, with the best solution so far.</param>
public sealed class TreeSearch(long mostNodes = long.MaxValue) : IDerivationSolver
{
    public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default) =>
        new Search(problem, mostNodes, cancel).Run();

    private sealed class Search
    {
        // Dearer than any plan, and still far from overflow when many are added.
        private const long Unreachable = long.MaxValue >> 20;

        private readonly DerivationProblem _problem;
        private readonly CancellationToken _cancel;
        private readonly long[] _cheapest;
        private readonly int[] _wayOf;
        private readonly bool[] _isCalled;
        private readonly List<int> _called = [];
        private readonly CheapestAlone _alone;
        private long _nodesLeft;
        private long _best = long.MaxValue;
        private int[]? _bestWayOf;

        public Search(DerivationProblem problem, long mostNodes, CancellationToken cancel)
        {
            (_problem, _cancel, _nodesLeft) = (problem, cancel, mostNodes);
            _cheapest = new long[problem.FactCount];
            Array.Fill(_cheapest, Unreachable);
            for (var way = 0; way < problem.WayCount; way++)
                _cheapest[problem.FactOf[way]] = Math.Min(_cheapest[problem.FactOf[way]], problem.Cost[way]);
            _wayOf = new int[problem.FactCount];
            Array.Fill(_wayOf, -1);
            _isCalled = new bool[problem.FactCount];
            _alone = CheapestAlone.Of(problem);
        }

        public DerivationAnswer Run()
        {
            if (_problem.Goals.Any(goal => _alone.Way[goal] < 0))
                return DerivationAnswer.Impossible;
            Offer([.. _alone.Way]);
            var bound = 0L;
            foreach (var goal in _problem.Goals)
                bound += Call(goal);
            var rootBound = bound;
            Branch(bound);
            return new(_bestWayOf, _best, _nodesLeft < 0 ? rootBound : _best);
        }

        private void Branch(long bound)
        {
            if (bound >= _best)
                return;
            if (--_nodesLeft < 0 || ((_nodesLeft & 1023) == 0 && _cancel.IsCancellationRequested))
            {
                _nodesLeft = -1;
                return;
            }

            var fact = NextUndecided();
            if (fact < 0)
            {
                Offer(_wayOf);
                return;
            }

            foreach (var way in InOrderOfPromise(fact))
            {
                var calledBefore = _called.Count;
                _wayOf[fact] = way;
                var next = bound - _cheapest[fact] + _problem.Cost[way];
                foreach (var need in _problem.Needs[way])
                    next += Call(need);
                Branch(next);
                _wayOf[fact] = -1;
                Recall(calledBefore);
            }
        }

        /// <summary>The called fact whose ways differ most in cost; facts with one way first.</summary>
        private int NextUndecided()
        {
            var (chosen, widest) = (-1, long.MinValue);
            foreach (var fact in _called)
            {
                if (_wayOf[fact] >= 0)
                    continue;
                var ways = _problem.WaysOf(fact);
                if (ways.Length == 1)
                    return fact;
                var spread = Spread(ways);
                if (spread > widest)
                    (chosen, widest) = (fact, spread);
            }

            return chosen;
        }

        private long Spread(ReadOnlySpan<int> ways)
        {
            var (least, second) = (Unreachable, Unreachable);
            foreach (var way in ways)
            {
                var cost = Promise(way);
                if (cost < least)
                    (least, second) = (cost, least);
                else
                    second = Math.Min(second, cost);
            }

            return second - least;
        }

        private IEnumerable<int> InOrderOfPromise(int fact)
        {
            var ways = _problem.WaysOf(fact).ToArray();
            return ways.Length == 1 ? ways : ways.OrderBy(Promise);
        }

        private long Promise(int way)
        {
            var cost = _problem.Cost[way];
            foreach (var need in _problem.Needs[way])
            {
                if (!_isCalled[need])
                    cost += Math.Min(_alone.Cost[need], Unreachable);
            }

            return cost;
        }

        private long Call(int fact)
        {
            if (_isCalled[fact])
                return 0;
            _isCalled[fact] = true;
            _called.Add(fact);
            return _cheapest[fact];
        }

        private void Recall(int calledBefore)
        {
            for (var i = calledBefore; i < _called.Count; i++)
                _isCalled[_called[i]] = false;
            _called.RemoveRange(calledBefore, _called.Count - calledBefore);
        }

        private void Offer(int[] wayOf)
        {
            var supported = Closure.Supported(_problem, wayOf);
            if (supported is null)
                return;
            var cost = supported.Sum(fact => _problem.Cost[wayOf[fact]]);
            if (cost >= _best)
                return;
            _best = cost;
            _bestWayOf = new int[_problem.FactCount];
            Array.Fill(_bestWayOf, -1);
            foreach (var fact in supported)
                _bestWayOf[fact] = wayOf[fact];
        }
    }
}
