using Refettle.SaleFile.Sealing;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What the verifier found.</summary>
internal static class VerificationView
{
    private const int MostFindings = 40;

    public static IRenderable Of(Verification found)
    {
        var rows = new List<IRenderable>
            { new Text(Says(found)),
                new Text($"{Wording.Count(found.Entries, "entry", "entries")} about {found.Header.Car}, made {found.Header.Made.UtcDateTime:yyyy-MM-dd HH:mm} UTC{Hidden(found)}.") };
        if (found.Fingerprint.Length > 0)
            rows.Add(new Text($"Key: {found.Fingerprint}"));
        rows.AddRange(found.Findings.Take(MostFindings)
            .Select(finding => new Text($"  {Place(finding)}: {Of(finding.Change)}; {finding.Says}")));
        if (found.Findings.Count > MostFindings)
            rows.Add(new Text($"  and {found.Findings.Count - MostFindings} more"));
        if (found.Chains.Count > 0)
            rows.Add(new Text(found.Standing == SealStanding.Untouched
                ? "Its chains did not hold already when it was made:"
                : "Its chains do not hold:"));
        rows.AddRange(found.Chains.Take(MostFindings).Select(chain => new Text($"  {chain}")));
        rows.Add(new Text("This cannot prove:"));
        rows.AddRange(Verification.CannotProve.Select(one => new Text($"  {one}")));
        return new Rows(rows);
    }

    private static string Says(Verification found) => found.Standing switch
    {
        SealStanding.Untouched => "Untouched: not a byte was changed since it was made.",
        SealStanding.WordsChanged =>
            "The entries are as they were made. The words, pictures or layout around them were changed: trust the entries, not the text.",
        SealStanding.EntriesChanged => $"Changed after it was made: {Wording.Count(found.Findings.Count, "entry", "entries")}.",
        _ => "The seal is broken: the list of entries is not the one that was signed, and nothing vouches for any of them.",
    };

    private static string Hidden(Verification found) =>
        found.Header.Hidden.Count == 0 ? "" : $"; blacked out: {string.Join(", ", found.Header.Hidden)}";

    private static string Place(EntryFinding finding) => finding.Device.Length == 0
        ? $"line {finding.Line}"
        : $"entry {finding.Sequence} of device {finding.Device}{(finding.Line is { } line ? $", line {line} of the record" : "")}";

    private static string Of(EntryChange change) => change.ToString().ToLowerInvariant();
}
