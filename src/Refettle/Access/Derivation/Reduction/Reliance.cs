namespace Refettle.Access.Derivation.Reduction;

/// <summary>Finds what cannot be derived without a fact, touching only what leans on it.</summary>
/// <remarks>Every fact keeps one derivation. Taking a fact away loses all whose derivation uses it; what another way still supports is then
/// derived again (delete and rederive: Gupta, Mumick, Subrahmanian, Maintaining views incrementally, SIGMOD 1993).</remarks>
internal sealed class Reliance
{
    private readonly DerivationProblem _problem;
    private readonly int[] _wayOf;
    private readonly int[] _lostIn;
    private readonly int[] _countedIn;
    private readonly int[] _missing;
    private readonly List<int> _lost = [];
    private readonly Stack<int> _again = new();
    private int _round;

    /// <param name="problem">A problem whose facts can all be derived.</param>
    /// <param name="alone">A derivation of each fact.</param>
    public Reliance(DerivationProblem problem, CheapestAlone alone)
    {
        _problem = problem;
        _wayOf = alone.Way;
        _lostIn = new int[problem.FactCount];
        _countedIn = new int[problem.WayCount];
        _missing = new int[problem.WayCount];
    }

    /// <summary>Facts looked at so far: a measure of the work done.</summary>
    public long Work { get; private set; }

    /// <summary>Takes a fact away. <see cref="IsLost"/> then tells what goes with it, until the next call.</summary>
    public void Without(int fact)
    {
        _round++;
        _lost.Clear();
        Lose(fact);
        for (var next = 0; next < _lost.Count; next++)
        {
            foreach (var way in _problem.UsersOf(_lost[next]))
            {
                if (_wayOf[_problem.FactOf[way]] == way)
                    Lose(_problem.FactOf[way]);
            }
        }

        Work += _lost.Count;
        DeriveAgain(fact);
    }

    /// <summary>Whether a fact cannot be derived without the one taken away last (itself included).</summary>
    public bool IsLost(int fact) => _lostIn[fact] == _round;

    private void Lose(int fact)
    {
        if (_lostIn[fact] == _round)
            return;
        _lostIn[fact] = _round;
        _lost.Add(fact);
    }

    private void DeriveAgain(int without)
    {
        foreach (var fact in _lost)
        {
            if (fact == without)
                continue;
            foreach (var way in _problem.WaysOf(fact))
            {
                _countedIn[way] = _round;
                _missing[way] = 0;
                foreach (var need in _problem.Needs[way])
                    _missing[way] += _lostIn[need] == _round ? 1 : 0;
                if (_missing[way] == 0)
                    _again.Push(fact);
            }
        }

        while (_again.TryPop(out var fact))
        {
            if (_lostIn[fact] != _round)
                continue;
            _lostIn[fact] = 0;
            foreach (var way in _problem.UsersOf(fact))
            {
                if (_countedIn[way] == _round && --_missing[way] == 0)
                    _again.Push(_problem.FactOf[way]);
            }
        }
    }
}
