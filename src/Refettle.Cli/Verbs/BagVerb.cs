using System.CommandLine;
using Refettle.Bags;
using Refettle.Cli.Views;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class BagVerb
{
    private const string Next = "next";

    public static Command Make(Desk desk) => new("bag", "Bags of small parts: what is in them, what they belong to, where they lie.")
    {
        Pack(desk), Move(desk), Empty(desk), List(desk), Show(desk), For(desk), LeftOver(desk),
    };

    private static Command Pack(Desk desk)
    {
        var code = new Argument<string>("code")
        { Description = $"The code on the bag, such as 14; \"{Next}\" takes the next free number." };
        var holds = new Argument<string?>("holds") { Description = "What is in it.", Arity = ArgumentArity.ZeroOrOne };
        var things = new Option<string[]>("--for")
        { Description = "What it belongs to: \"joint x\", \"part x\" …", AllowMultipleArgumentsPerToken = true };
        var place = new Option<string?>("--in") { Description = "Where it lies." };
        return new Command("pack", "Puts something into a bag; the first time opens it.") { code, holds, things, place }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var written = BagCode.Read(parsed.GetRequiredValue(code));
                var packed = new BagPacked(
                    written == Next ? BagCode.Next(open.Car.Bags) : written, parsed.GetValue(holds),
                    (parsed.GetValue(things) ?? []).ToValueList(), parsed.GetValue(place));
                return desk.Record(open, [packed], now => One(now.Car, packed.Code));
            }));
    }

    private static Command Move(Desk desk)
    {
        var (code, place) = (Code(), new Argument<string>("place") { Description = "Where it lies now." });
        return new Command("move", "Says where a bag lies.") { code, place }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Record(desk, open, Read(parsed, code), bag => new BagMoved(bag, parsed.GetRequiredValue(place)))));
    }

    private static Command Empty(Desk desk)
    {
        var code = Code();
        return new Command("empty", "All that was in a bag is used again.") { code }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Record(desk, open, Read(parsed, code), bag => new BagEmptied(bag))));
    }

    private static Command List(Desk desk)
    {
        var all = new Option<bool>("--all") { Description = "Empty ones too." };
        return new Command("list", "All bags that hold something.") { all }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Shown(open.Car, open.Car.Bags.Where(bag => parsed.GetValue(all) || !bag.IsEmpty).ToValueList(),
                        "No bag yet.")));
    }

    private static Command Show(Desk desk)
    {
        var code = Code();
        return new Command("show", "What is in a bag.") { code }
            .Answers(desk, parsed => desk.WithCar(parsed, open => One(open.Car, Read(parsed, code))));
    }

    private static Command For(Desk desk)
    {
        var step = new Argument<string>("fact") { Description = "The step: 'open(joint)', 'off(part)'." };
        return new Command("for", "The bags that belong to a step.") { step }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read([parsed.GetRequiredValue(step)]), facts =>
                Unknown.Subject(open.Car.Structure, facts[0]) is { } fault
                    ? Reply.Bad([fault])
                    : Shown(open.Car, BagList.Of(open.Car, facts[0]), "No bag belongs to it."))));
    }

    private static Command LeftOver(Desk desk) =>
        new Command("left-over", "Bags that still hold something although all they belong to is together again.")
        .Answers(desk, parsed => desk.WithCar(parsed, open => Shown(open.Car, BagList.LeftOver(open.Car), "No bag is left over.")));

    private static Reply Record(Desk desk, OpenCar open, string code, Func<string, Happening> happening) =>
        desk.Record(open, [happening(code)], now => One(now.Car, code));

    private static Reply One(Car car, string code) => car.Bags.FirstOrDefault(bag => bag.Code == code) is { } found
        ? new(BagView.Of(found), new { car = car.Id, bag = found })
        : Reply.Bad([new($"bag {code}", "there is no such bag",
            NearNames.Ask(code, car.Bags.Select(bag => bag.Code), "refettle bag list shows them."))]);

    private static Reply Shown(Car car, ValueList<Bag> bags, string none) => new(BagView.Of(bags, none), new { car = car.Id, bags });

    private static string Read(ParseResult parsed, Argument<string> code) => BagCode.Read(parsed.GetRequiredValue(code));

    private static Argument<string> Code() => new("code") { Description = "The code on the bag." };
}
