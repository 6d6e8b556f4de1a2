using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Kits;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class TieVerb
{
    public static Command Make(Desk desk)
    {
        var ties = new Argument<string[]>("tie")
        {
            Description = "\"KIT SIDE/HOLE=PART\"; nothing for every loose end with one clear proposal.",
            Arity = ArgumentArity.ZeroOrMore
        };
        return new Command("tie", "Ties loose ends to parts of the car.") { ties }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Joins.Read(parsed.GetValue(ties) ?? []), choices =>
            {
                var structure = open.Car.Structure;
                var faults = choices.SelectMany(choice => Faults(structure, choice.Key, choice.Value)).ToList();
                return faults.Count > 0 ? Reply.Bad(faults) : Tie(desk, open, choices);
            })));
    }

    private static Reply Tie(Desk desk, OpenCar open, Dictionary<string, string> choices)
    {
        var structure = open.Car.Structure;
        var ends = choices.Count == 0
            ? structure.LooseEnds
            : structure.LooseEnds.Where(end => choices.ContainsKey(end.Key())).ToValueList();
        var ties = Tying.Propose(ends, structure, choices);
        if (ties.Count == 0)
            return Reply.Said("Nothing to tie.", new { tied = ties });
        var forms = ties.Select(tie => new TieForm(tie.End.Key(), tie.Part)).ToValueList();
        return Change.Record(desk, open, [Tying.Carry(structure, "tie", Structure.Empty, ties)], _ =>
            new(new Rows(forms.Select(tie => new Text($"tied {tie.End} = {tie.Part}"))), new { tied = forms }));
    }

    private static IEnumerable<Fault> Faults(Structure structure, string end, string part)
    {
        if (Unknown.Of("loose end", end, structure.LooseEnds.Select(known => known.Key())) is { } noEnd)
            yield return noEnd;
        if (Unknown.Part(structure, part) is { } noPart)
            yield return noPart;
    }
}
