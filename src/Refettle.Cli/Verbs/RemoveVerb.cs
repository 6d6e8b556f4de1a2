using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class RemoveVerb
{
    public static Command Make(Desk desk)
    {
        var kind = new Argument<string>("kind") { Description = "part, joint, way, state, space, sub-assembly or zone." };
        var ids = new Argument<string[]>("id") { Description = "Which; a way is written JOINT/WAY.", Arity = ArgumentArity.OneOrMore };
        return new Command("remove", "Takes things out of the description; a part's joints go with it.") { kind, ids }
            .Answers(desk, parsed => desk.WithCar(parsed, open => parsed.GetRequiredValue(kind) == "way"
                ? Ways(desk, open, parsed.GetRequiredValue(ids))
                : Things(desk, open, parsed.GetRequiredValue(kind), parsed.GetRequiredValue(ids))));
    }

    private static Reply Things(Desk desk, OpenCar open, string kind, string[] ids)
    {
        var things = ids.Select(id => $"{kind} {id}").ToValueList();
        return desk.Record(open, [new StructureRemoved(things)], now =>
        {
            var line = now.History.Lines[now.History.Lines.Count - 1];
            return Stands.After(now, $"Taken out: {string.Join(", ", things.Concat(line.AlsoRemoved))}.");
        });
    }

    private static Reply Ways(Desk desk, OpenCar open, string[] ids)
    {
        var changed = new Dictionary<string, Joint>();
        foreach (var id in ids)
        {
            var cut = id.LastIndexOf('/');
            var joint = cut < 0
                ? null
                : changed.GetValueOrDefault(id[..cut]) ?? open.Car.Structure.Joints.FirstOrDefault(joint => joint.Id == id[..cut]);
            if (joint is null || joint.Ways.All(way => way.Id != id[(cut + 1)..]))
                return Reply.Bad([new($"way {id}", "there is no such way",
                    joint is null
                        ? "Write it as JOINT/WAY."
                        : $"The ways of {joint.Id} are {string.Join(", ", joint.Ways.Select(way => way.Id))}.")]);
            if (joint.Ways.Count == 1)
                return Reply.Bad([new($"way {id}", "it is the only way of this joint", "Add another first, or remove the joint.")]);
            changed[joint.Id] = joint with { Ways = joint.Ways.Where(way => way.Id != id[(cut + 1)..]).ToValueList() };
        }

        return Change.Record(desk, open, "edit", new Structure { Joints = changed.Values.ToValueList() },
            $"Taken out: {string.Join(", ", ids.Select(id => $"way {id}"))}.");
    }
}
