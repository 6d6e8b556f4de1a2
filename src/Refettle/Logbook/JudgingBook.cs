namespace Refettle.Logbook;

/// <summary>Findings, limits, verdicts and what is said of stuck joints, while a log is folded.</summary>
internal sealed class JudgingBook
{
    private readonly List<Finding> _findings = [];
    private readonly Dictionary<(string, string), Limit> _limits = [];
    private readonly Dictionary<string, Verdict> _verdicts = [];
    private readonly Dictionary<string, PartEstimate> _estimates = [];
    private readonly Dictionary<string, BaselineAnswer> _baseline = [];
    private readonly Dictionary<string, Soaking> _soaking = [];
    private readonly Dictionary<(string, string), ToolReach> _reach = [];
    private readonly Dictionary<(string, string), LeaveForMissing> _leave = [];

    public ValueList<Verdict> Verdicts(Structure structure) =>
        _verdicts.Values.Where(verdict => structure.Parts.Any(part => part.Id == verdict.Part))
        .OrderBy(verdict => verdict.Part, StringComparer.Ordinal).ToValueList();

    public ValueList<PartEstimate> Estimates => _estimates.Values.OrderBy(estimate => estimate.Part, StringComparer.Ordinal).ToValueList();

    public bool IsAlignmentFound { get; private set; }

    public ValueList<BaselineAnswer> Baseline => _baseline.Values.OrderBy(answer => answer.Item, StringComparer.Ordinal).ToValueList();

    public ValueList<Soaking> Soaking => _soaking.Values.OrderBy(soaking => soaking.Joint, StringComparer.Ordinal).ToValueList();

    public ValueList<ToolReach> Reach =>
        _reach.Values.OrderBy(reach => reach.Joint, StringComparer.Ordinal).ThenBy(reach => reach.Rung, StringComparer.Ordinal)
            .ToValueList();

    public ValueList<LeaveForMissing> Leave =>
        _leave.Values.OrderBy(leave => leave.Joint, StringComparer.Ordinal).ThenBy(leave => leave.Rung, StringComparer.Ordinal)
            .ToValueList();

    public ValueList<Finding> Findings => _findings.ToValueList();

    public ValueList<Limit> Limits =>
        _limits.Values.OrderBy(limit => limit.Of, StringComparer.Ordinal).ThenBy(limit => limit.What, StringComparer.Ordinal).ToValueList();

    /// <summary>Applies what is about judging, or says why it does not fit; other happenings pass.</summary>
    public string? Apply(Happening happening, StructureBuilder car)
    {
        switch (happening)
        {
            case Found found:
                return Keep(found.Finding.Of, car, () => _findings.Add(found.Finding));
            case LimitSet set:
                return Keep(set.Limit.Of, car, () => _limits[(set.Limit.Of, set.Limit.What)] = set.Limit);
            case PartEstimated estimated:
                return Keep($"part {estimated.Estimate.Part}", car, () => _estimates[estimated.Estimate.Part] = estimated.Estimate);
            case VerdictGiven given:
                return Keep($"part {given.Verdict.Part}", car, () => _verdicts[given.Verdict.Part] = given.Verdict);
            case VerdictWithdrawn withdrawn:
                return _verdicts.Remove(withdrawn.Part) ? null : $"there is no verdict of the owner on {withdrawn.Part}";
            case AlignmentMeasured { AsFound: true }:
                IsAlignmentFound = true;
                return null;
            case BaselineTold told:
                _baseline[told.Answer.Item] = told.Answer;
                return null;
            case SoakBegun begun:
                return Keep($"joint {begun.Joint}", car, () => _soaking[begun.Joint] = new(begun.Joint, begun.Rung, begun.Since));
            case ReachJudged judged:
                return Keep($"joint {judged.Reach.Joint}", car, () => _reach[(judged.Reach.Joint, judged.Reach.Rung)] = judged.Reach);
            case MissingAccepted accepted:
                return Keep($"joint {accepted.Joint}", car,
                    () => _leave[(accepted.Joint, accepted.Rung)] = new(accepted.Joint, accepted.Rung, accepted.Why));
            default:
                return null;
        }
    }

    /// <summary>A try ends the soak, and uses up the leave that was given for it.</summary>
    public void Tried(Try attempt)
    {
        _soaking.Remove(attempt.Joint);
        _leave.Remove((attempt.Joint, attempt.Rung));
    }

    /// <summary>Whether what was found of a part makes it too weak to carry the car.</summary>
    public bool IsUnsound(string part) => ConditionScales.IsUnsound(_findings.Where(finding => finding.Of == $"part {part}"));

    /// <summary>Lets go of what the description no longer has.</summary>
    public void Forget(StructureBuilder car)
    {
        _findings.RemoveAll(finding => !Has(finding.Of, car));
        foreach (var gone in _limits.Where(pair => !Has(pair.Value.Of, car)).Select(pair => pair.Key).ToList())
            _limits.Remove(gone);
        foreach (var gone in _verdicts.Keys.Where(part => !car.Parts.ContainsKey(part)).ToList())
            _verdicts.Remove(gone);
        foreach (var gone in _estimates.Keys.Where(part => !car.Parts.ContainsKey(part)).ToList())
            _estimates.Remove(gone);
        foreach (var gone in _soaking.Keys.Where(joint => !car.Joints.ContainsKey(joint)).ToList())
            _soaking.Remove(gone);
        foreach (var gone in _reach.Keys.Where(pair => !car.Joints.ContainsKey(pair.Item1)).ToList())
            _reach.Remove(gone);
        foreach (var gone in _leave.Keys.Where(pair => !car.Joints.ContainsKey(pair.Item1)).ToList())
            _leave.Remove(gone);
    }

    private static string? Keep(string thing, StructureBuilder car, Action keep)
    {
        if (!Has(thing, car))
            return $"the car has no {thing}";
        keep();
        return null;
    }

    private static bool Has(string text, StructureBuilder car) => Thing.TryParse(text, out var thing) && thing.Kind switch
    {
        ThingKind.Part => car.Parts.ContainsKey(thing.Id),
        ThingKind.Joint => car.Joints.ContainsKey(thing.Id),
        ThingKind.Space => car.Spaces.ContainsKey(thing.Id),
        _ => false,
    };
}
