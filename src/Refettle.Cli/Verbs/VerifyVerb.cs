using System.CommandLine;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.SaleFile.Sealing;
using Refettle.Storage.Keys;

namespace Refettle.Cli.Verbs;

internal static class VerifyVerb
{
    /// <summary>Sale files with hundreds of photos are large.</summary>
    private const long Largest = 1 << 30;

    public static Command Make(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "A sale file: page, PDF or record." };
        return new Command("verify",
            "Tells whether a sale file is as it was made, and if not, which entries were changed, removed or added.") { file }
            .Answers(desk, parsed => Of(desk.PathOf(parsed.GetRequiredValue(file))));
    }

    private static Reply Of(string path) => Reply.To(TextFile.Bytes(path, Largest), bytes =>
        Reply.To(TextFile.From(path, Verifier.Of(bytes, new EcdsaSeal())), Answer));

    private static Reply Answer(Verification found) => new(VerificationView.Of(found), new
    {
        standing = found.Standing,
        car = found.Header.Car,
        made = found.Header.Made,
        entries = found.Entries,
        hidden = found.Header.Hidden,
        fingerprint = found.Fingerprint,
        findings = found.Findings,
        chains = found.Chains,
        cannotProve = Verification.CannotProve,
    })
    {
        Code = found.Standing == SealStanding.Untouched ? ExitCode.Good : ExitCode.Faults,
    };
}
