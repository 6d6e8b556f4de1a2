using Refettle.Forecast;

namespace Refettle.Ledger;

/// <summary>A car's money and hours: what was planned, what was spent, by job and in all. Every receipt, order,
/// shop and timed step counts once.</summary>
/// <param name="Currency">ISO 4217 code of all money here.</param>
/// <param name="Jobs">All jobs in their order, and last, without a job, what belongs to several or to none:
/// opening and closing, shared orders.</param>
public sealed record Books(string Currency, ValueList<MoneyLine> Money, ValueList<TimedWork> Work, ValueList<JobSum> Jobs)
{
    /// <summary>Paid, less what came back.</summary>
    public decimal Spent => Money.Sum(line => line.Spent);

    /// <summary>Ordered or given away and not paid yet, as far as prices are known.</summary>
    public decimal Owed => Money.Sum(line => line.Owed);

    public Minutes Worked => new(Work.Sum(work => work.Took.Value));

    /// <summary>The jobs that are to be done, are done, or took something.</summary>
    public IEnumerable<JobSum> JobsThatCount =>
        Jobs.Where(job => job.Job is null || job.IsChosen || job.IsDone || job.Spent != 0 || job.Owed != 0 || job.Worked != Minutes.Zero);

    /// <summary>How many jobs the others are, in a sentence; empty when there are none.</summary>
    public string NotChosen => (Jobs.Count - JobsThatCount.Count()) switch
    {
        0 => "",
        1 => "1 job that is not chosen is left out.",
        var some => $"{some} jobs that are not chosen are left out.",
    };

    /// <summary>What carries no price: the sums are too small by that.</summary>
    public IEnumerable<MoneyLine> Unpriced => Money.Where(line => !line.IsPriceKnown);
}

/// <summary>Money of one entry, or of one line of an order.</summary>
/// <param name="Entry">The receipt, order or outside work.</param>
/// <param name="Job">The job it belongs to; null for several or none.</param>
/// <param name="Spent">Paid; below 0 for what came back.</param>
/// <param name="Owed">Still to be paid.</param>
/// <param name="IsPriceKnown">Whether all of it has a price.</param>
public sealed record MoneyLine(
    Guid Entry, DateOnly On, string Says, SpendKind Kind, string? Job, decimal Spent, decimal Owed, bool IsPriceKnown = true,
    string? Attachment = null);

/// <summary>A job in sums.</summary>
/// <param name="Job">Null for what belongs to several jobs or to none; nothing is planned for that here.</param>
/// <param name="IsChosen">Whether it is among what will be done.</param>
public sealed record JobSum(
    string? Job, string Name, bool IsChosen, bool IsDone, decimal PlannedMoney, decimal Spent, decimal Owed, Minutes PlannedWork,
    Minutes Worked);
