namespace Refettle.Stuck.OpenUp;

/// <summary>What opening sets of accesses takes; steps that several share are paid once.</summary>
internal sealed class OpeningCost
{
    private readonly OpenUpQuestion _question;
    private readonly Dictionary<int, double> _minutes = [];

    public OpeningCost(OpenUpQuestion question) => _question = question;

    /// <summary>Minutes to open a set at once.</summary>
    public double Of(int accesses)
    {
        if (!_minutes.TryGetValue(accesses, out var minutes))
        {
            var steps = _question.Openings.Where((_, number) => (accesses & (1 << number)) != 0).SelectMany(access => access.Steps)
                .Distinct();
            _minutes.Add(accesses, minutes = steps.Sum(step => (double)_question.Steps[step].Takes.Value));
        }

        return minutes;
    }

    /// <summary>Minutes to open more later.</summary>
    public double Later(int first, int then) => first == then
        ? 0
        : (double)_question.Later.Once.Value + (_question.Later.Factor * (Of(then) - Of(first)));
}
