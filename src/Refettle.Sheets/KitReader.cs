using Refettle.Kits;
using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets;

/// <summary>Reads kits.</summary>
public static class KitReader
{
    /// <summary>Reads a kit and tries it on a started car, on each of its sides, with all holes filled and with none; reports all faults
    /// where they stand in the kit's file.</summary>
    /// <param name="start">What every new car begins with; the kit may use its states and zones.</param>
    public static Result<Kit> Read(string text, string file, Structure start)
    {
        var good = FileText.Check(text, file);
        if (!good.IsGood)
            return Result<Kit>.Bad(good.Faults);
        var faults = new FaultList(file);
        if (YamlTree.Read(good.Value, faults) is not { } root)
            return Result<Kit>.Bad(faults.ToList());
        var places = new Places();
        var kit = Kit(root, faults, places);
        if (!faults.HasErrors)
            KitTrial.Run(kit, start, places, faults);
        return faults.HasErrors ? Result<Kit>.Bad(faults.ToList()) : Result<Kit>.Good(kit, faults.ToList());
    }

    private static Kit Kit(Mapping root, FaultList faults, Places places)
    {
        var head = new Fields(root, "kit", new(faults, Origin.CommonPractice, Braces: null));
        SheetReader.CheckVersion(head, "refettle-kit");
        ValueList<Hole> holes = [.. StructureReader.Each(head, "holes", "hole", places, Hole), .. Joins(head)];
        var spots = head.Scalars("sides").Select(side => Side(side, head)).ToValueList();
        var kit = new Kit
        {
            Id = head.Needed("kit", "the name by which it is added, like drum-brake-corner"),
            Name = head.Needed("name", "what a mechanic would call it"),
            About = head.Text("about") ?? "",
            Origin = head.Needed("origin", "where the figures come from, like Common practice, no source."),
            Spots = spots,
            Zone = head.Text("zone") ?? (spots.Any(Spots.IsCorner) ? "corner-{side}" : Zone.WholeCar),
            Holes = holes,
        };
        if (kit.Id.Length > 0 && !Identifier.IsValid(kit.Id))
            head.Fault(head.Take("kit")!, $"\"{kit.Id}\" cannot be an identifier", "Use small letters, digits and -");
        CheckHoles(kit, head, places);
        var braces = holes.Select(hole => hole.Name).Concat(["p", "side", "Side", "zone"]).ToHashSet();
        var body = new Fields(root, "kit", new(faults, Origin.CommonPractice, braces));
        var template = StructureReader.Read(body, places, "{zone}");
        var offers = new Fields(root, "kit", new(faults, Origin.CommonPractice, new HashSet<string> { "p", "side", "Side" }));
        var whileOpen = StructureReader.Each(offers, "while-open", "offer", places, (id, fields) => Offer(id, fields, template));
        Fields.Done(head, body, offers);
        CheckJoins(body, template);
        CheckUse(kit, root, faults, places);
        return kit with { Template = template, WhileOpen = whileOpen };
    }

    private static Hole Hole(string name, Fields fields) => new()
    {
        Name = name,
        Role = fields.Needed("role", "what the part must be, like hub"),
        Means = fields.Text("means") ?? "",
        IsOptional = fields.Flag("optional"),
        Side = HoleSideOf(fields),
    };

    /// <summary>A job that may be worth doing while the kit is open; it opens things of the kit.</summary>
    private static Job Offer(string id, Fields fields, Structure template)
    {
        var job = JobReader.Read(id, fields);
        var own = template.Parts.Select(part => part.Id).Concat(template.Joints.Select(joint => joint.Id))
            .Concat(template.Spaces.Select(space => space.Id)).Concat(template.SubAssemblies.Select(unit => unit.Id)).ToHashSet();
        if (job.Goals.Count == 0)
            fields.Missing("goals", "what has to be open for it, like [reach(plenum)]");
        foreach (var goal in job.Goals.Where(goal => !own.Contains(goal.Subject)))
            fields.Fault(fields.Take("goals")!, $"its goal {goal} names nothing of this kit",
                fields.Context.Faults.Suggest(goal.Subject, own, "Name a part, joint or space of the kit."));
        return job with { Wish = Wish.Maybe };
    }

    /// <summary>The sub-assemblies of other kits that parts of this one belong to, by role.</summary>
    private static IEnumerable<Hole> Joins(Fields head)
    {
        if (head.Below("joins") is not { } joins)
            yield break;
        foreach (var role in joins.Map.Pairs.Select(pair => pair.Key.Text))
            yield return new()
            {
                Name = role,
                Role = role,
                IsOptional = true,
                Means = $"sub-assembly that these parts leave with: {role.Replace('-', ' ')}",
                Joins = joins.Texts(role)
            };
    }

    private static void CheckUse(Kit kit, Mapping root, FaultList faults, Places places)
    {
        var used = root.Pairs.SelectMany(pair => Scalars(pair.Key).Concat(Scalars(pair.Value))).SelectMany(scalar => Braces.In(scalar.Text))
            .ToHashSet();
        foreach (var hole in kit.Holes.Where(hole => hole.Joins.Count == 0 && !used.Contains(hole.Name)))
            faults.Add(places.Locate(new($"hole {hole.Name}", "nothing in the kit names it",
                $"Write {{{hole.Name}}} where that part belongs, or leave the hole out")
            { Severity = Severity.Note }));
    }

    private static IEnumerable<Scalar> Scalars(Node node) => node switch
    {
        Scalar scalar => [scalar],
        Sequence list => list.Items.SelectMany(Scalars),
        Mapping map => map.Pairs.SelectMany(pair => Scalars(pair.Key).Concat(Scalars(pair.Value))),
        _ => [],
    };

    private static void CheckJoins(Fields body, Structure template)
    {
        var parts = template.Parts.Select(part => part.Id).ToHashSet();
        foreach (var member in body.Below("joins") is { } joins ? joins.Map.Pairs.SelectMany(pair => joins.Scalars(pair.Key.Text)) : [])
        {
            if (!parts.Contains(member.Text))
                body.Fault(member, $"\"{member.Text}\" is not a part of this kit",
                    body.Context.Faults.Suggest(member.Text, parts, "Name parts of the kit."));
        }
    }

    private static HoleSide HoleSideOf(Fields fields)
    {
        var text = fields.Text("side");
        if (Spots.TryParse(text, out var spot))
            return HoleSide.Left + (spot - Spot.Left);
        switch (text)
        {
            case null:
                return HoleSide.Own;
            case "front":
                return HoleSide.Front;
            case "rear":
                return HoleSide.Rear;
            case "none":
                return HoleSide.None;
            default:
                fields.Fault(fields.Take("side")!, $"side is \"{text}\"", "Write fl, fr, rl, rr, left, right, front, rear or none");
                return HoleSide.Own;
        }
    }

    private static Spot Side(Scalar side, Fields head)
    {
        if (!Spots.TryParse(side.Text, out var spot))
            head.Fault(side, $"\"{side.Text}\" is not a side", "Write fl, fr, rl, rr, left or right");
        return spot;
    }

    private static void CheckHoles(Kit kit, Fields head, Places places)
    {
        foreach (var hole in kit.Holes)
        {
            void Fault(string found, string mend) => head.Context.Faults.Add(places.Locate(new($"hole {hole.Name}", found, mend)));
            if (hole.Name is "p" or "side" or "Side" or "zone" || !Identifier.IsValid(hole.Name))
                Fault($"\"{hole.Name}\" cannot be the name of a hole", "Use small letters, digits and -, and not p, side or zone");
            if (hole.Role.Length > 0 && !Identifier.IsValid(hole.Role))
                Fault($"\"{hole.Role}\" cannot be a role", "Use small letters, digits and -");
            if (hole.Side is HoleSide.Front or HoleSide.Rear && kit.Spots.Count == 0)
                Fault("it looks on the kit's own side, but the kit has no sides", "Write fl, fr, rl or rr");
        }
    }
}
