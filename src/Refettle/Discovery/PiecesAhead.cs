using Refettle.Access;
using Refettle.Judging;
using Refettle.Stock.Baskets;

namespace Refettle.Discovery;

/// <summary>What a plan uses up, with what of it is to be ordered by when.</summary>
internal static class PiecesAhead
{
    public static ValueList<PieceAhead> Of(OutlookQuestion question, Plan plan, ValueList<string> renew)
    {
        var car = question.Car;
        var needs = PlanNeeds.Of(question.History, question.Shelf, plan, renew, car.Due());
        var basket = BasketPlanner.Of(question.Shelf, needs, question.Today, question.Confidence);
        return basket.Lines
            .Select(line => new PieceAhead(line.Need.Thing, line.Need.What, line.Need.Count, line.Missing,
                line.Missing == 0 ? null : OrderBy(basket, line.Need)))
            .Concat(basket.Unnumbered.Select(need => new PieceAhead(need.Thing, need.What, need.Count, need.Count, OrderBy(car, need))))
            .ToValueList();
    }

    private static DateOnly? OrderBy(Basket basket, Need need) =>
        basket.Purchases.FirstOrDefault(purchase => purchase.IsFor(need.Car, need.Thing))?.OrderBy;

    /// <summary>Without a part number no list tells how long it takes: what the owner said of it counts, else common practice.</summary>
    private static DateOnly? OrderBy(Car car, Need need)
    {
        var part = car.Structure.Parts.FirstOrDefault(part => need.Thing == $"part {part.Id}");
        var days = part is null
            ? PurchasePlanner.UnknownLead
            : car.Estimates.FirstOrDefault(estimate => estimate.Part == part.Id)?.LeadDays ?? LeadTimes.Of(part.Scarcity);
        return need.By?.AddDays(-(int)decimal.Ceiling(days));
    }
}
