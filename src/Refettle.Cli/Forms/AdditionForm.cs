using Refettle.Kits;

namespace Refettle.Cli.Forms;

/// <summary>What adding a kit brought, as <c>--json</c> gives it.</summary>
internal sealed record AdditionForm(
    string Kit, string Instance, int Parts, int Joints, ValueList<JoiningForm> Joinings, ValueList<TieForm> Tied,
    ValueList<LooseEndForm> LooseEnds)
{
    public static AdditionForm Of(KitAddition addition) => new(
        addition.Kit.Id, addition.Instance, addition.Entry.Added.Parts.Count, addition.Entry.Added.Joints.Count,
        addition.Joinings.Select(joining => new JoiningForm(joining.Hole.Name, joining.Hole.Role, joining.Part, joining.Others))
            .ToValueList(),
        addition.Ties.Select(tie => new TieForm(tie.End.Key(), tie.Part)).ToValueList(),
        addition.Entry.Added.LooseEnds.Select(end => LooseEndForm.Of(end, [], [])).ToValueList());
}

internal sealed record JoiningForm(string Hole, string Role, string? Part, ValueList<string> Others);

internal sealed record TieForm(string End, string Part);

internal sealed record LooseEndForm(
    string End, string Role, bool Optional, string Meanwhile, ValueList<string> Proposed, ValueList<string> Kits)
{
    public static LooseEndForm Of(LooseEnd end, IEnumerable<string> proposed, IEnumerable<Kit> kits) =>
        new(end.Key(), end.Role, end.IsOptional, end.Meanwhile, proposed.ToValueList(), kits.Select(kit => kit.Id).ToValueList());
}
