namespace Refettle.Stock.Netting;

/// <summary>How much is ordered at once.</summary>
/// <param name="Minimum">The fewest, 1 or more.</param>
/// <param name="Multiple">In packs of so many, 1 or more.</param>
public readonly record struct LotRule(int Minimum, int Multiple)
{
    /// <summary>Just what is missing.</summary>
    public static LotRule LotForLot { get; } = new(1, 1);

    /// <summary>What has to be ordered for so many; 0 for none.</summary>
    public int Size(int needed) => needed <= 0 ? 0 : (Math.Max(needed, Minimum) + Multiple - 1) / Multiple * Multiple;
}

/// <summary>One part number over time.</summary>
/// <param name="Gross">Pieces needed in each period, from 1.</param>
/// <param name="Scheduled">Pieces ordered before that come in each period; as many periods as the needs have.</param>
/// <param name="OnHand">At the beginning.</param>
/// <param name="Safety">Pieces that should always be left.</param>
/// <param name="LeadPeriods">From ordering to having, 0 or more.</param>
public sealed record NettingQuestion(
    ValueList<int> Gross, ValueList<int> Scheduled, int OnHand, int LeadPeriods, LotRule Lot, int Safety = 0);

/// <summary>The plan of one part number over time.</summary>
/// <param name="OnHand">At the end of each period.</param>
/// <param name="Net">What is missing in each period.</param>
/// <param name="Receipts">What has to come in each period beyond what is ordered.</param>
/// <param name="Releases">What has to be ordered in each period.</param>
/// <param name="PastDue">What would have had to be ordered before the first period.</param>
public sealed record NettingAnswer(
    ValueList<int> OnHand, ValueList<int> Net, ValueList<int> Receipts, ValueList<int> Releases, ValueList<PastDue> PastDue);

/// <summary>An order that should have been placed so many periods before the first.</summary>
public sealed record PastDue(int PeriodsBefore, int Count);
