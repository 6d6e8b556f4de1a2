namespace Refettle.SaleFile.Chapters;

/// <summary>Condition before and after, and what each part is now.</summary>
internal static class Parts
{
    public static Section Condition(Sources from) => new("Condition before and after", from.Stories.Count == 0
        ? [new Said("Nothing is recorded about any part.", Backing.Explains, [])]
        :
        [
            new Said("Parts that the log has something about. Words in quotes were written on the day; the numbers lead to the entries at the end.", Backing.Explains, []),
            new Table(["Part", "Before", "What was done", "After"],
                from.Stories.Select(story => new Row([story.Part.Name, story.Before, story.Work, story.After], story.Entries))
                    .ToValueList()),
        ]);

    public static Section Provenance(Sources from)
    {
        var blocks = new List<Block>();
        blocks.AddRange(Shown(from));
        blocks.AddRange(Believed(from));
        return new("What is original, refurbished, substituted or new", blocks.ToValueList());
    }

    private static IEnumerable<Block> Shown(Sources from)
    {
        (Provenance Is, string Word)[] words =
        [
            (SaleFile.Provenance.New, "new"), (SaleFile.Provenance.Used, "used, from elsewhere"),
            (SaleFile.Provenance.Refurbished, "refurbished"), (SaleFile.Provenance.Substituted, "substituted by another kind"),
        ];
        var rows = words.SelectMany(word => from.Stories.Where(story => story.Piece == word.Is)
            .Select(story => new Row([story.Part.Name,
                story.Provenance == SaleFile.Provenance.Off ? $"{word.Word}; off the car when this file was made" : word.Word],
                story.Entries))).ToValueList();
        yield return rows.Count > 0
            ? new Table(["Part", "What it is"], rows)
            : new Said("No new, used, refurbished or substituted part is recorded as fitted.", Backing.Explains, []);
    }

    private static IEnumerable<Block> Believed(Sources from)
    {
        var back = from.Stories.Where(story => story.Provenance == SaleFile.Provenance.PutBack).ToList();
        if (back.Count > 0)
            yield return new Said(
                $"Taken off and put back, with no other part recorded in their place; believed to be the ones that came off: {Names(back)}.", Backing.Believed, Numbers(back));
        var unclear = from.Stories.Where(story => story.Provenance == SaleFile.Provenance.Unclear).ToList();
        if (unclear.Count > 0)
            yield return new Said(
                $"Decided to be renewed or substituted and put back, but no other part is recorded: what is fitted is not shown by this log: {Names(unclear)}.", Backing.Warns, Numbers(unclear));
        var off = from.Stories.Where(story => story.Provenance == SaleFile.Provenance.Off).ToList();
        if (off.Count > 0)
            yield return new Said($"Off the car when this file was made: {Names(off)}.", Backing.Recorded, Numbers(off));
        yield return new Said(
            "Every other part stayed on the car while this log was kept. Whether a part is the one that the car left the works with is not recorded; nothing here claims it.", Backing.Believed, []);
    }

    private static string Names(IEnumerable<PartStory> stories) => string.Join(", ", stories.Select(story => story.Part.Name));

    private static ValueList<int> Numbers(IEnumerable<PartStory> stories) =>
        stories.SelectMany(story => story.Entries).Distinct().Order().ToValueList();
}
