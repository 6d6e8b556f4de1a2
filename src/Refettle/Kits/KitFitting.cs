using Refettle.Checks;
using Refettle.Logbook;

namespace Refettle.Kits;

/// <summary>Fits a kit to a car: fills the holes, parts what waits, ties earlier loose ends, checks the outcome.</summary>
internal sealed class KitFitting(Structure car, Kit kit, KitPlace place, IReadOnlyDictionary<string, string> choices)
{
    private readonly string _instance = place.Instance(kit);
    private readonly Dictionary<string, string> _values = place.Values(kit);

    public Result<KitAddition> Fit()
    {
        var faults = place.Faults(kit).Concat(ChoiceCheck.Of(car, kit, choices)).ToList();
        if (faults.Count > 0)
            return Result<KitAddition>.Bad(faults);
        var joinings = kit.Holes.Select(Fill).ToValueList();
        foreach (var joining in joinings.Where(joining => joining.Part is not null))
            _values[joining.Hole.Name] = joining.Part!;
        var filled = Own(new Renaming(Name, Text).Of(kit.Template));
        faults.AddRange(Taken(filled));
        if (faults.Count > 0)
            return Result<KitAddition>.Bad(faults);
        return Checked(joinings, new Splitting(filled, Memberships()));
    }

    /// <summary>That parts of the kit belong to a sub-assembly of another.</summary>
    private IEnumerable<Mention> Memberships() =>
        from hole in kit.Holes
        from member in hole.Joins
        select new Mention($"sub-assembly {Name($"{{{hole.Name}}}")}", "members", Name(member));

    private Joining Fill(Hole hole)
    {
        var own = hole.Side == HoleSide.Own;
        var found = Candidates.Of(car, hole.Role, hole.SpotFor(place.Spot), own ? place.Prefix : "");
        var part = choices.TryGetValue(hole.Name, out var chosen) ? (chosen.Length == 0 ? null : chosen) : found.Best;
        return new(hole, part, found.All.Where(other => other != part).ToValueList());
    }

    private string Name(string template) => Braces.Fill(template, _values);

    private string Text(string template)
    {
        var text = Name(template).Trim();
        return template.StartsWith("{Side}", StringComparison.Ordinal) ? KitPlace.Capital(text) : text;
    }

    /// <summary>Marks things as the kit's, sides its parts, and leaves zones and states as the car has them.</summary>
    private Structure Own(Structure filled)
    {
        var zones = car.Zones.Select(zone => zone.Id).ToHashSet();
        var states = car.States.Select(state => state.Id).ToHashSet();
        return filled with
        {
            Zones = filled.Zones.Where(zone => !zones.Contains(zone.Id)).ToValueList(),
            States = filled.States.Where(state => !states.Contains(state.Id)).Select(state => state with { Kit = _instance }).ToValueList(),
            Parts = filled.Parts.Select(Own).ToValueList(),
            Joints = filled.Joints.Select(joint => joint with { Kit = _instance }).ToValueList(),
            SubAssemblies = filled.SubAssemblies.Select(unit => unit with { Kit = _instance }).ToValueList(),
            Spaces = filled.Spaces.Select(space => space with { Kit = _instance }).ToValueList(),
        };
    }

    private Part Own(Part part)
    {
        var isSided = part.Side == Side.None && place.Prefix.Length > 0 && part.Id.StartsWith(place.Prefix, StringComparison.Ordinal);
        return part with { Kit = _instance, Side = isSided ? place.Spot.Side() : part.Side };
    }

    private IEnumerable<Fault> Taken(Structure filled)
    {
        var added = filled.Parts.Select(part => $"part {part.Id}").Concat(filled.Joints.Select(joint => $"joint {joint.Id}"))
            .Concat(filled.SubAssemblies.Select(unit => $"sub-assembly {unit.Id}"))
            .Concat(filled.Spaces.Select(space => $"space {space.Id}"));
        var there = car.Parts.Select(part => $"part {part.Id}").Concat(car.Joints.Select(joint => $"joint {joint.Id}"))
            .Concat(car.SubAssemblies.Select(unit => $"sub-assembly {unit.Id}")).Concat(car.Spaces.Select(space => $"space {space.Id}"))
            .ToHashSet();
        var taken = added.Where(there.Contains).ToArray();
        if (taken.Length > 0)
            yield return new Fault($"kit {_instance}",
                $"the car has {taken[0]} already" + (taken.Length > 1 ? $", and {taken.Length - 1} more things of this kit" : ""),
                "Give the kit a prefix of its own, or take the earlier one out first");
    }

    private Result<KitAddition> Checked(ValueList<Joining> joinings, Splitting split)
    {
        var draft = new Draft(car);
        draft.Add(split.Now);
        foreach (var mention in split.Free)
            draft.Enter(mention);
        draft.Add(new() { LooseEnds = LooseEnds(split) });
        var ties = Tying.Propose(car.LooseEnds, split.Now, choices);
        foreach (var tie in ties)
            draft.Tie(tie);
        var entry = new StructureAdded($"kit {_instance}", draft.Added, ties.Select(tie => tie.End.Key()).ToValueList());
        var check = Trial.Of(car, entry);
        return check.IsGood
            ? Result<KitAddition>.Good(new() { Kit = kit, Instance = _instance, Joinings = joinings, Ties = ties, Entry = entry },
                check.Faults)
            : Result<KitAddition>.Bad(check.Faults);
    }

    private ValueList<LooseEnd> LooseEnds(Splitting split) =>
        kit.Holes.Where(hole => !_values.ContainsKey(hole.Name)).Select(hole => new LooseEnd
        {
            Kit = _instance,
            Hole = hole.Name,
            Role = hole.Role,
            Spot = hole.SpotFor(place.Spot),
            Prefix = hole.Side == HoleSide.Own ? place.Prefix : "",
            IsOptional = hole.IsOptional,
            Meanwhile = Meanwhile(hole, split),
            Waits = split.WaitsFor(hole.Name),
            Mentions = split.MentionsOf(hole.Name),
        }).ToValueList();

    private static string Meanwhile(Hole hole, Splitting split)
    {
        var things = split.ThingsNaming(hole.Name);
        var conditions = split.MentionsOf(hole.Name).Count;
        var what = (things, conditions) switch
        {
            (0, _) => Words.Count(conditions, "condition"),
            (_, 0) => Words.Count(things, "joint"),
            _ => $"{Words.Count(things, "joint")} and {Words.Count(conditions, "condition")}",
        };
        return $"{(hole.Means.Length > 0 ? hole.Means : hole.Role)}: {what} left out until a part with role {hole.Role} is there";
    }
}
