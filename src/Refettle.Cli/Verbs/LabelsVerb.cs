using System.CommandLine;
using Refettle.Bags;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.Paper.Labels;

namespace Refettle.Cli.Verbs;

internal static class LabelsVerb
{
    private const string Usual = "a4-3x7";

    public static Command Make(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "The PDF to write." };
        var codes = new Option<string[]>("--bag")
        { Description = "Codes of the bags; by default all that hold something.", AllowMultipleArgumentsPerToken = true };
        var sheet = new Option<string>("--on")
        {
            Description = $"The labels' size: {string.Join(", ", LabelSheet.All.Select(one => one.Id))}.",
            DefaultValueFactory = _ => Usual
        };
        var skip = new Option<int>("--skip") { Description = "Labels of the first sheet that are used already." };
        var address = new Option<string>("--address")
        {
            Description = "The garage's address, such as http://192.168.1.20:5188: a phone's camera then opens the bag's page.",
            HelpName = "url"
        };
        return new Command("labels", "Prints labels for bags, each with its code to scan.") { file, codes, sheet, skip, address }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var bags = Bags(open.Car, parsed.GetValue(codes) ?? []);
                return Wrong(parsed.GetValue(sheet)!, parsed.GetValue(skip)) is { } fault
                    ? Reply.Bad([fault])
                    : Reply.To(bags, found => Write(
                    desk.PathOf(parsed.GetRequiredValue(file)),
                    found.Select(bag => BagLabel.Of(open.Car, bag, parsed.GetValue(address))).ToValueList(),
                    LabelSheet.Of(parsed.GetValue(sheet)!)!, parsed.GetValue(skip)));
            }));
    }

    private static Fault? Wrong(string sheet, int skip)
    {
        if (LabelSheet.Of(sheet) is not { } known)
            return new($"--on {sheet}", "there is no such size",
                NearNames.Ask(sheet, LabelSheet.All.Select(one => one.Id),
                    $"Sizes: {string.Join(", ", LabelSheet.All.Select(one => one.Id))}."));
        return skip < 0 || skip >= known.OnePaper
            ? new($"--skip {skip}", $"a sheet has {known.OnePaper} labels", $"Give 0 to {known.OnePaper - 1}.")
            : null;
    }

    private static Result<ValueList<Bag>> Bags(Car car, string[] codes)
    {
        if (codes.Length == 0)
            return car.Bags.Any(bag => !bag.IsEmpty)
                ? Result<ValueList<Bag>>.Good(car.Bags.Where(bag => !bag.IsEmpty).ToValueList())
                : Result<ValueList<Bag>>.Bad(
                    new Fault("bags", "no bag holds anything", "Pack one first: refettle bag pack next \"what is in it\"."));
        var read = codes.Select(BagCode.Read).ToList();
        var known = car.Bags.ToDictionary(bag => bag.Code);
        var missing = read.Where(code => !known.ContainsKey(code))
            .Select(code => new Fault($"bag {code}", "there is none with this code", "refettle bag list shows them all.")).ToList();
        return missing.Count > 0
            ? Result<ValueList<Bag>>.Bad(missing)
            : Result<ValueList<Bag>>.Good(read.Select(code => known[code]).ToValueList());
    }

    private static Reply Write(string path, ValueList<BagLabel> labels, LabelSheet sheet, int skip) =>
        Reply.To(BinaryFile.Write(path, file => LabelPaper.Write(file, labels, sheet, skip)), written => Reply.Said(
            $"{Wording.Count(labels.Count, "label")} of {sheet.Width} × {sheet.Height} mm written to {written}. Print at actual size, not fitted to the page.", new { labels = labels.Count, sheet = sheet.Id, file = written }));
}
