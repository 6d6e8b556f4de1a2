namespace Refettle.Stock.Netting;

/// <summary>Nets needs against what is on hand and on order, period by period.</summary>
/// <remarks>Net = what is needed and should be left, less what was left and comes; what is ordered
/// for it is shifted earlier by the lead time (material requirements planning, as textbooks have it).</remarks>
public static class NetRequirements
{
    public static NettingAnswer Of(NettingQuestion question)
    {
        var periods = question.Gross.Count;
        var (onHand, net, receipts, releases) = (new int[periods], new int[periods], new int[periods], new int[periods]);
        var pastDue = new List<PastDue>();
        var left = question.OnHand;
        for (var period = 0; period < periods; period++)
        {
            var there = left + question.Scheduled[period];
            net[period] = Math.Max(0, question.Gross[period] + question.Safety - there);
            receipts[period] = question.Lot.Size(net[period]);
            left = onHand[period] = there + receipts[period] - question.Gross[period];
            var release = period - question.LeadPeriods;
            if (receipts[period] > 0 && release >= 0)
                releases[release] += receipts[period];
            else if (receipts[period] > 0)
                pastDue.Add(new(-release, receipts[period]));
        }

        return new(ValueList.Create<int>(onHand), ValueList.Create<int>(net), ValueList.Create<int>(receipts),
            ValueList.Create<int>(releases), pastDue.ToValueList());
    }

    /// <summary>What a made-up piece needs of another: what is released of it, times how many one takes.</summary>
    public static ValueList<int> Below(NettingAnswer made, int each) => made.Releases.Select(count => count * each).ToValueList();
}
