using Refettle.Access.Fire;
using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;
using Refettle.Stuck;

namespace Refettle.Sheets;

/// <summary>Reads ladders of tries.</summary>
public static class LadderReader
{
    /// <summary>Every <c>.yaml</c> file of a folder, in order of name; all faults of all files.</summary>
    public static Result<LadderSet> Load(string folder)
    {
        if (!Directory.Exists(folder))
            return Result<LadderSet>.Bad(new Fault("ladders", $"there is no folder {folder}", "It comes with the program; put it back."));
        var read = Directory.EnumerateFiles(folder, "*.yaml").Order(StringComparer.Ordinal).Select(ReadFile).ToList();
        var faults = read.SelectMany(ladder => ladder.Faults).ToList();
        if (read.Any(ladder => !ladder.IsGood))
            return Result<LadderSet>.Bad(faults);
        var set = new LadderSet(read.Select(ladder => ladder.Value).ToValueList());
        return set.Check() is { Count: > 0 } wrong ? Result<LadderSet>.Bad(wrong) : Result<LadderSet>.Good(set, faults);
    }

    public static Result<Ladder> Read(string text, string file)
    {
        var good = FileText.Check(text, file);
        if (!good.IsGood)
            return Result<Ladder>.Bad(good.Faults);
        var faults = new FaultList(file);
        if (YamlTree.Read(good.Value, faults) is not { } root)
            return Result<Ladder>.Bad(faults.ToList());
        var ladder = Ladder(new(root, "ladder", new(faults, Origin.CommonPractice, Braces: null)));
        return faults.HasErrors ? Result<Ladder>.Bad(faults.ToList()) : Result<Ladder>.Good(ladder, faults.ToList());
    }

    private static Result<Ladder> ReadFile(string file)
    {
        var text = FileText.Decode(File.ReadAllBytes(file), file);
        return text.IsGood ? Read(text.Value, file) : Result<Ladder>.Bad(text.Faults);
    }

    private static Ladder Ladder(Fields head)
    {
        SheetReader.CheckVersion(head, "refettle-ladder");
        var ladder = new Ladder
        {
            Id = head.Needed("ladder", "its name, like threaded"),
            Name = head.Needed("name", "what it is for, in words"),
            Kinds = head.Words<JointKind>("kinds"),
            Condition = head.Word("condition", JointCondition.Sound),
            Origin = head.Needed("origin", "where the figures come from, like Common practice, no source."),
            Rungs = StructureReader.Each(head, "rungs", "rung", new Places(), Rung),
        };
        head.Done();
        return ladder;
    }

    private static Rung Rung(string id, Fields fields) => new()
    {
        Id = id,
        Says = fields.Needed("says", "what to do, in words"),
        Tool = fields.Text("tool") ?? "hands",
        Takes = fields.Minutes("takes") ?? Minutes.Zero,
        Waits = fields.Minutes("waits") ?? Minutes.Zero,
        Odds = Odds(fields, "odds"),
        OddsSoaked = fields.Has("odds-soaked") ? Odds(fields, "odds-soaked") : null,
        Mishaps = fields.Below("mishaps") is { } mishaps ? Mishaps(mishaps) : [],
        IsSoak = fields.Flag("soak"),
        Danger = fields.Words<Danger>("danger").Aggregate(HotWork.OfTool(fields.Text("tool")), (all, one) => all | one),
        Destroys = fields.Texts("destroys"),
        Spends = fields.Money("spends") ?? default,
        Cautions = fields.Texts("cautions"),
    };

    private static ValueList<Mishap> Mishaps(Fields mishaps) => mishaps.Map.Pairs
        .Select(pair => new Mishap(mishaps.Context.Word(pair.Key, mishaps.Place, "mishaps", pair.Key.Text, JointCondition.Sound),
            Odds(mishaps, pair.Key.Text)))
        .ToValueList();

    private static ValueList<double> Odds(Fields fields, string key)
    {
        var odds = new List<double>();
        foreach (var item in fields.Scalars(key))
        {
            if (Quantity.TryNumber(item.Text, out var number))
                odds.Add((double)number);
            else
                fields.Fault(item, $"\"{item.Text}\" is not a chance", "Write numbers from 0 to 1, one for each level 0 to 4");
        }

        return odds.ToValueList();
    }
}
