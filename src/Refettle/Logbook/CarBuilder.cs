namespace Refettle.Logbook;

/// <summary>The car while its log is folded; mutable, so that a long log folds fast.</summary>
internal sealed class CarBuilder(string id)
{
    private readonly StructureBuilder _structure = new();
    private readonly WorkDone _work = new();
    private readonly CalendarBuilder _calendar = new();
    private readonly HashSet<string> _unsound = [];
    private readonly List<Try> _tries = [];
    private readonly PositionNumbers _numbers = new();
    private readonly WantBook _wants = new(id);
    private readonly JobBook _jobs = new();
    private readonly BagShelf _bags = new();
    private readonly PhotoShelf _photos = new();
    private readonly JudgingBook _judging = new();
    private readonly CoatingBook _coating = new();
    private CarOpened? _opened;
    private Settings _settings = Settings.Standard;

    /// <summary>Applies a happening, or says why it does not fit.</summary>
    public Applied Apply(Happening happening) =>
        DayCheck.Of(happening).FirstOrDefault() is { } fault ? Applied.Not($"{fault.Place}: {fault.Found}") : ApplyFitting(happening);

    private Applied ApplyFitting(Happening happening)
    {
        switch (happening)
        {
            case CarOpened opened:
                _opened = opened;
                return Applied.Fully;
            case StructureAdded added:
                _structure.Add(added.Added, added.Tied);
                return Applied.Fully;
            case StructureRemoved removed:
                return Remove(removed);
            case SettingsChosen chosen:
                _settings = chosen.Settings;
                return Applied.Fully;
            case SoundnessJudged judged:
                return Judge(judged);
            case Found found:
                return See(found);
            case Tried tried:
                return Note(tried.Try);
            case StockHappening stock:
                return Keep(stock);
            default:
                return Work(happening);
        }
    }

    /// <summary>The car as it stands, with references to unknown things left out and reported.</summary>
    public (Car Car, ValueList<Fault> Faults) Build()
    {
        var faults = new List<Fault>();
        var structure = _structure.Build(faults);
        return (new()
        {
            Id = id,
            Name = _opened?.Name ?? id,
            Year = _opened?.Year,
            Currency = _opened?.Currency ?? "EUR",
            Structure = structure,
            Done = _work.Facts(structure),
            Disturbed = _work.Disturbed.Of(structure),
            Stance = Stance(structure.States.ToDictionary(state => state.Id)),
            Unsound = _unsound.Order(StringComparer.Ordinal).ToValueList(),
            Tries = _tries.ToValueList(),
            Numbers = _numbers.All(structure),
            Wants = _wants.All(structure),
            Jobs = _jobs.Jobs(structure, faults),
            JobsDone = _jobs.Done,
            Scope = _jobs.Scope,
            Means = _jobs.Means,
            Bags = _bags.Bags(structure),
            Photos = _photos.Photos(structure),
            Findings = _judging.Findings,
            Limits = LimitsInForce.Of(structure, _judging.Limits),
            Estimates = _judging.Estimates,
            Verdicts = _judging.Verdicts(structure),
            Baseline = _judging.Baseline,
            Coating = _coating.All,
            IsAlignmentFound = _judging.IsAlignmentFound,
            Soaking = _judging.Soaking,
            Reach = _judging.Reach,
            LeaveForMissing = _judging.Leave,
            Settings = _settings,
            Calendar = _calendar.Build(),
        }, faults.ToValueList());
    }

    private Applied Work(Happening happening)
    {
        var before = _work.Changes;
        if (ApplyWork(happening) is { } refusal)
            return Applied.Not(refusal);
        return happening is StepDone or StepReversed && _work.Changes == before ? Applied.Nothing : Applied.Fully;
    }

    private string? ApplyWork(Happening happening)
    {
        if (happening is TaskMarked marked)
            _work.Disturbed.Mark(marked.Mark);
        else if (happening is JointTightened tightened)
            _work.Disturbed.Tighten(tightened, Stance(_structure.States));
        return Refusal(happening);
    }

    private string? Refusal(Happening happening) => happening switch
    {
        StepDone done => _work.Do(done.Fact, _structure),
        StepReversed reversed => _work.Reverse(reversed.Fact, _structure),
        StanceTaken taken => _work.Take(taken.Stance, _structure),
        PhotoTaken taken => _photos.Take(taken.Photo),
        _ => _jobs.Apply(happening) ?? _calendar.Apply(happening) ?? _bags.Apply(happening)
            ?? _judging.Apply(happening, _structure) ?? _coating.Apply(happening, _structure),
    };

    private Applied Keep(StockHappening stock)
    {
        var applied = _numbers.Apply(stock, _structure);
        if (applied.Refusal is null)
            _wants.Apply(stock);
        return applied;
    }

    private Applied Judge(SoundnessJudged judged)
    {
        if (!_structure.Parts.ContainsKey(judged.Part))
            return Applied.Not($"the car has no part {judged.Part}");
        _ = judged.Sound ? _unsound.Remove(judged.Part) : _unsound.Add(judged.Part);
        return Applied.Fully;
    }

    /// <summary>A part follows what is newest of it: a structural finding, or the owner's own word.</summary>
    private Applied See(Found found)
    {
        if (found.Finding.Of is not ['p', 'a', 'r', 't', ' ', .. var part])
            return _judging.Apply(found, _structure) is { } refused ? Applied.Not(refused) : Applied.Fully;
        var before = _judging.IsUnsound(part);
        if (_judging.Apply(found, _structure) is { } refusal)
            return Applied.Not(refusal);
        if (_judging.IsUnsound(part) is var now && now != before)
            _ = now ? _unsound.Add(part) : _unsound.Remove(part);
        return Applied.Fully;
    }

    private Applied Note(Try attempt)
    {
        if (!_structure.Joints.ContainsKey(attempt.Joint))
            return Applied.Not($"the car has no joint {attempt.Joint}");
        _tries.Add(attempt);
        _judging.Tried(attempt);
        return Applied.Fully;
    }

    private Applied Remove(StructureRemoved removed)
    {
        var things = new List<Thing>();
        foreach (var text in removed.Things)
        {
            if (!Thing.TryParse(text, out var thing))
                return Applied.Not($"\"{text}\" is not the name of a thing");
            things.Add(thing);
        }

        var gone = _structure.Remove(things);
        _work.Forget(gone);
        _tries.RemoveAll(attempt => !_structure.Joints.ContainsKey(attempt.Joint));
        _unsound.RemoveWhere(part => !_structure.Parts.ContainsKey(part));
        _numbers.Forget(_structure);
        _wants.Forget(_structure);
        _judging.Forget(_structure);
        _coating.Forget(_structure);
        return new(null, gone.Except(things).Select(thing => thing.ToString()).ToValueList());
    }

    /// <summary>The stance last taken, or on its wheels; null when the car has no such stance.</summary>
    private string? Stance(Dictionary<string, State> states) =>
        new[] { _work.Stance,
            Car.OnWheels }.FirstOrDefault(stance => stance is not null && states.TryGetValue(stance, out var state) && state.IsStance);
}
