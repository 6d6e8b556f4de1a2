namespace Refettle.Stock.Netting;

/// <summary>Whether an answer keeps its books: looks at what it says, not at how it was found.</summary>
public static class NettingCheck
{
    /// <summary>All that does not hold; empty when it does.</summary>
    public static ValueList<string> Of(NettingQuestion question, NettingAnswer answer)
    {
        var wrong = new List<string>();
        var needed = Sums(question.Gross);
        var come = Sums(question.Scheduled);
        var ordered = Sums(answer.Receipts);
        for (var period = 0; period < question.Gross.Count; period++)
        {
            if (answer.OnHand[period] != question.OnHand + come[period] + ordered[period] - needed[period])
                wrong.Add($"period {period + 1}: on hand does not follow from what came and what was needed");
            if (answer.OnHand[period] < question.Safety)
                wrong.Add($"period {period + 1}: fewer are left than should be");
            if (answer.Receipts[period] > 0
                && (answer.Receipts[period] < question.Lot.Minimum || answer.Receipts[period] % question.Lot.Multiple != 0))
                wrong.Add($"period {period + 1}: so many are not sold at once");
            if (answer.Receipts[period] > 0 && answer.OnHand[period] - answer.Receipts[period] >= question.Safety)
                wrong.Add($"period {period + 1}: ordered without need");
        }

        if (answer.Receipts.Sum() != answer.Releases.Sum() + answer.PastDue.Sum(late => late.Count))
            wrong.Add("more or fewer are ordered than come");
        return wrong.ToValueList();
    }

    private static int[] Sums(ValueList<int> counts)
    {
        var sum = 0;
        return [.. counts.Select(count => sum += count)];
    }
}
