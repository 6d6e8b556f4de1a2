using System.CommandLine;
using Refettle.Logbook;
using Refettle.Sheets.Edits;

namespace Refettle.Cli.Verbs;

internal static class SetVerb
{
    public static Command Make(Desk desk)
    {
        var kind = new Argument<string>("kind") { Description = "part, joint, way, state, space, sub-assembly or zone." };
        var ids = new Argument<string>("id") { Description = "Which; several with commas; a way is written JOINT/WAY." };
        var values = new Argument<string[]>("key=value")
        {
            Description = "Keys as in a car sheet (docs/car-sheet.md); a list that begins with + adds to what is there.",
            Arity = ArgumentArity.OneOrMore
        };
        var isNew = new Option<bool>("--new") { Description = "Make it: there is none yet." };
        return new Command("set", "Changes a thing of the car by hand, or makes one.") { kind, ids, values, isNew }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(KeyValue.Read(parsed.GetRequiredValue(values)), keys =>
                Reply.To(Changed(open.Car.Structure, parsed.GetRequiredValue(kind), parsed.GetRequiredValue(ids), keys,
                    parsed.GetValue(isNew)), changed =>
                    Change.Record(desk, open, "edit", changed,
                        $"{parsed.GetValue(kind)} {parsed.GetValue(ids)}: {string.Join(", ", keys)}.")))));
    }

    private static Result<Structure> Changed(Structure car, string kind, string ids, ValueList<KeyValue> keys, bool isNew)
    {
        var changed = Structure.Empty;
        var faults = new List<Fault>();
        foreach (var id in ids.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var one = HandEdit.Of(car.With(changed), kind, id, keys, isNew);
            faults.AddRange(one.Faults);
            changed = one.IsGood ? changed.With(one.Value) : changed;
        }

        return faults.Any(fault => fault.Severity == Severity.Error)
            ? Result<Structure>.Bad(faults)
            : Result<Structure>.Good(changed, faults);
    }
}
