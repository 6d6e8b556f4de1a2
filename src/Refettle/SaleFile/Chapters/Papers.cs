using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>What the owner states.</summary>
internal static class Papers
{
    public static Section Claims(Sources from)
    {
        var claims = from.Declared.Where(line => line.Told.Topic == DeclarationTopic.Claim && IsFit(line.Told))
            .Select(line => Said(from, line.Entry, line.Told)).ToValueList<Block>();
        return new("What the owner says for it",
            claims.Count > 0 ? claims : [new Said("Nothing beyond what the log shows.", Backing.Explains, [])]);
    }

    /// <summary>Claims that promise more than is shown are not printed; <see cref="WordingGuard"/>
    /// tells the owner what can be said.</summary>
    public static bool IsFit(Declared claim) => WordingGuard.Of(claim.Text, claim.Because.Count > 0).Count == 0;

    public static Section Of(Sources from) => new("Roadworthiness test, title, recalls",
    [
        .. Statements(from, DeclarationTopic.RoadTest) is { Count: > 0 } tests
            ? tests
            : [new Said("No roadworthiness test is recorded.", Backing.Warns, [])],
        .. Statements(from, DeclarationTopic.Title) is { Count: > 0 } titles
            ? titles
            : [new Said("Nothing is recorded about title, registration or money owed on the car: see the papers.", Backing.Warns, [])],
        .. Statements(from, DeclarationTopic.Recall) is { Count: > 0 } recalls
            ? recalls
            : [new Said("Nothing is recorded about recalls: ask the maker with the chassis number.", Backing.Warns, [])],
    ]);

    public static ValueList<Block> Statements(Sources from, DeclarationTopic topic) =>
        from.Declared.Where(line => line.Told.Topic == topic).Select(line => (Block)Said(from, line.Entry, line.Told)).ToValueList();

    private static Said Said(Sources from, SeenEntry entry, Declared told)
    {
        var shown = told.Because.Select(id => from.NumberOf.GetValueOrDefault(id)).Where(number => number > 0).ToList();
        var about = told.About is null ? "" : $"{from.Names.Of(told.About)}: ";
        return shown.Count > 0 && WordingGuard.Of(told.Text, isShown: true).Count == 0
            ? new($"{about}{told.Text}", Backing.Recorded, [.. shown.Order(), entry.Number])
            : new($"To the best of the owner's knowledge, not shown by this log: {about}{told.Text}", Backing.Believed, [entry.Number]);
    }
}
