using Refettle.Logbook;
using Refettle.SaleFile.Chapters;

namespace Refettle.SaleFile;

/// <summary>Puts a sale file together from a log.</summary>
public static class SaleFileWriter
{
    /// <returns>The document; notes tell of claims that were left out, with what can be said instead.</returns>
    public static Result<SaleDocument> Of(SaleQuestion question)
    {
        var from = new Sources(question);
        var year = from.Car.Year is { } known ? $", {known}" : "";
        var document = new SaleDocument(from.Car.Name + year, "The record of what was done", question.Made, question.Fingerprint,
            [
                Summary.Of(from), Disclosures.Of(from), OpenItems.Of(from), Papers.Of(from), Papers.Claims(from), Parts.Condition(from),
                Parts.Provenance(from),
                Work.Days(from), .. Outside.Of(from), Tightened.Of(from),
                .. question.Privacy.Hours || question.Privacy.Prices ? [Work.Hours(from)] : Array.Empty<Section>(),
                .. Snapshots.Of(from), HowToCheck.Of(question.Fingerprint),
            ], from.Entries);
        return DocumentCheck.Of(document) is { Count: > 0 } wrong
            ? throw new InvalidOperationException($"The sale file is not fit to give away: {wrong[0]}")
            : Result<SaleDocument>.Good(document, from.Declared.SelectMany(line => Flags(line.Entry, line.Told)));
    }

    /// <summary>What each entry tells, for the list at the end.</summary>
    public static IEnumerable<(SeenEntry Entry, string Says)> Log(SaleDocument document, Structure structure)
    {
        var names = new CarNames(structure);
        return document.Entries.Select(entry => (entry, EntryWords.Of(entry, names)));
    }

    private static IEnumerable<Fault> Flags(SeenEntry entry, Declared told) =>
        WordingGuard.Of(told.Text, told.Because.Count > 0).Select(claim => new Fault(
        $"entry {entry.Number}, “{claim.Words}”", claim.Why + (told.Topic == DeclarationTopic.Claim ? "; the claim is left out" : ""),
        claim.Offer)
        { Severity = Severity.Note });
}
