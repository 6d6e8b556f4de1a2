using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;
using Refettle.Kits;

namespace Refettle.Cli.Verbs;

internal static class AddVerb
{
    public static Command Make(Desk desk)
    {
        var kit = new Argument<string>("kit") { Description = "The kit; refettle kits lists them." };
        var side = new Option<string[]>("--side")
        { Description = "fl, fr, rl, rr, left or right; by default every side the kit has.", AllowMultipleArgumentsPerToken = true };
        var prefix = new Option<string>("--prefix") { Description = "What its names begin with; by default the side." };
        var join = new Option<string[]>("--join")
        {
            Description = "hole=part: another part than the proposed one; hole= leaves it loose.",
            HelpName = "hole=part",
            AllowMultipleArgumentsPerToken = true
        };
        return new Command("add", "Adds a kit to the car, once for each side, and joins it to its neighbours.") { kit, side, prefix, join }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(desk.SoundKits(), shelf =>
                Reply.To(shelf.Find(parsed.GetRequiredValue(kit)), found => Reply.To(Joins.Read(parsed.GetValue(join) ?? []), choices =>
                    Reply.To(Spots(found, parsed.GetValue(side) ?? []), spots =>
                        Reply.To(Propose(open.Car.Structure, found, spots, parsed.GetValue(prefix), choices), additions =>
                            Change.Record(desk, open, [.. additions.Select(addition => addition.Entry)], _ => Added(additions)))))))));
    }

    private static Reply Added(ValueList<KitAddition> additions) =>
        new(AdditionView.Of(additions), new { added = additions.Select(AdditionForm.Of).ToValueList() });

    private static Result<ValueList<KitAddition>> Propose(
        Structure car, Kit kit, ValueList<Spot> spots, string? prefix, IReadOnlyDictionary<string, string> choices)
    {
        var additions = new List<KitAddition>();
        foreach (var spot in spots)
        {
            var addition = KitAddition.Propose(car, kit, spot, prefix, choices);
            if (!addition.IsGood)
                return Result<ValueList<KitAddition>>.Bad(addition.Faults);
            additions.Add(addition.Value);
            car = car.With(addition.Value.Entry.Added, [.. addition.Value.Entry.Tied]);
        }

        return Result<ValueList<KitAddition>>.Good(additions.ToValueList());
    }

    private static Result<ValueList<Spot>> Spots(Kit kit, string[] sides)
    {
        if (sides.Length == 0)
            return Result<ValueList<Spot>>.Good(kit.Spots.Count == 0 ? [Spot.None] : kit.Spots);
        var wrong = sides.Where(side => !Refettle.Spots.TryParse(side, out _))
            .Select(side => new Fault($"side {side}", "this is no side", "Write fl, fr, rl, rr, left or right.")).ToList();
        return wrong.Count > 0
            ? Result<ValueList<Spot>>.Bad(wrong)
            : Result<ValueList<Spot>>.Good(sides.Select(side => Refettle.Spots.TryParse(side, out var spot) ? spot : Spot.None)
                .ToValueList());
    }
}
