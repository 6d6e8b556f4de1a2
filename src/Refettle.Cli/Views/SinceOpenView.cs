using Refettle.Access;
using Refettle.Discovery;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What else is worth doing since the car is open.</summary>
internal static class SinceOpenView
{
    public static IRenderable Of(SinceOpenAnswer answer)
    {
        if (answer.Offers.Count == 0)
            return new Text(answer.Told());
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Offer", "What", "Now", "Later", "Own work", "Why");
        foreach (var column in table.Columns.Skip(2).Take(3))
            column.RightAligned().NoWrap();
        foreach (var offer in answer.Offers)
        {
            table.AddRow(
                new Text(offer.Job.Id), new Text(offer.Job.Name), new Text(Hours(offer.Now)), new Text(Hours(offer.Later)),
                new Text(offer.Job.Work == Minutes.Zero ? "not said" : $"{offer.Job.Work}"),
                new Text($"{Why(offer.Source)}{(offer.Proven ? "" : "; not proven")}"));
        }

        return new Rows(
            new Text("Since it is open, with what opening destroys at your rate:"), table,
            new Text($"Now: on top of what is opened anyway; later: by itself. {answer.Told()}"),
            new Text("Add one as a maybe: refettle scope --since-open --take OFFER."));
    }

    public static string Why(OfferSource source) => source switch
    {
        OfferSource.Job => "thought of",
        OfferSource.Finding => "found worn or bad",
        OfferSource.Kit => "common practice",
        _ => "comes within reach",
    };

    private static string Hours(Cost cost) => $"+{cost.Total.Value / 60:0.0} h";
}
