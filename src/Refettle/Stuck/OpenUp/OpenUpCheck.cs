namespace Refettle.Stuck.OpenUp;

/// <summary>Whether a question can be answered, and an answer be true.</summary>
public static class OpenUpCheck
{
    private const double Slack = 1e-6;

    /// <summary>Everything that keeps the question from being answered.</summary>
    public static ValueList<Fault> Of(OpenUpQuestion question)
    {
        var faults = new List<Fault>();
        if (question.Joints.Count == 0)
            faults.Add(new("open up", "no joint is named", "Name one or more."));
        if (question.Openings.Count > 30)
            faults.Add(new("open up", $"{question.Openings.Count} things could be opened", "Ask about fewer joints at once."));
        foreach (var joint in question.Joints)
        {
            var wants = joint.Needs.Values.SelectMany(needs => needs).Distinct().Count();
            if (wants > OpenUpPlanner.MostPerJoint)
                faults.Add(new($"joint {joint.Id}", $"{wants} accesses matter to it",
                    $"Take together what is opened in one go: {OpenUpPlanner.MostPerJoint} at most."));
            else if (!new Rows(joint, rung => !joint.Forbidden.Contains(rung)).IsSure)
                faults.Add(new($"joint {joint.Id}", "nothing is sure to free it, even with everything open",
                    "See refettle stuck for what closes the gates."));
        }

        return faults.ToValueList();
    }

    /// <summary>What in an answer contradicts itself. Cheap: it bounds the answer from below by knowing the levels beforehand,
    /// and from above by the choices that were weighed.</summary>
    public static ValueList<Fault> Of(OpenUpQuestion question, OpenUpAnswer answer)
    {
        var faults = new List<Fault>();
        var least = answer.Choices.Min(choice => choice.ExpectedMinutes);
        if (answer.Best.ExpectedMinutes > least + Slack)
            faults.Add(new("open up", $"the advice takes {answer.Best.ExpectedMinutes:0.0} min, another choice {least:0.0}", ""));
        if (answer.OpensLater is < -Slack or > 1 + Slack)
            faults.Add(new("open up", $"the chance to open later is {answer.OpensLater}", ""));
        if (answer.TryFirst.Open.Count > 0 || answer.Choices.Any(choice => !(choice.ExpectedMinutes >= 0)))
            faults.Add(new("open up", "a choice has no meaning", ""));
        if (answer.Best.Uncertainty == 0 && Knowing(question) is var knowing && answer.Best.ExpectedMinutes < knowing - Slack)
            faults.Add(new("open up", $"it takes {answer.Best.ExpectedMinutes:0.0} min, and knowing every level beforehand {knowing:0.0}",
                ""));
        return faults.ToValueList();
    }

    /// <summary>A bound: opening costs nothing, every joint's level is known, and each is freed in the best order for its level.</summary>
    private static double Knowing(OpenUpQuestion question)
    {
        var places = new Beliefs(question).Now();
        var known = new Dictionary<(string, int), double>();
        return question.Joints.Sum(joint => Enumerable.Range(0, SeizureModel.Levels).Sum(level =>
            Enumerable.Range(0, SeizureModel.Levels)
                .Sum(place => places[joint.Place][place] * joint.Levels[place][level]) * Cheapest(joint, level)));

        double Cheapest(StuckJoint joint, int level) =>
            joint.Ladders[joint.Condition].Rungs.Where(rung => !joint.Forbidden.Contains(rung.Id))
            .Select(rung => (rung,
                odds: Math.Max(rung.OddsAt(level, false), rung.OddsAt(level, true)) + rung.Mishaps.Sum(mishap => mishap.Odds[level])))
            .Where(pair => pair.odds > 0)
            .Min(pair => ((double)pair.rung.Takes.Value + ((double)(pair.rung.Spends.Amount / joint.PerHour.Amount) * 60)) / Math.Min(1,
                pair.odds));
    }
}
