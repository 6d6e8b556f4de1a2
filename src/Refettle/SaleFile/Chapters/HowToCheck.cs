using Refettle.SaleFile.Sealing;

namespace Refettle.SaleFile.Chapters;

/// <summary>How a buyer checks the file, and what no check can show.</summary>
internal static class HowToCheck
{
    public static Section Of(string fingerprint) => new("How to check this file",
    [
        new Said("The file carries every entry of the log and a signature over all of it. Keep it as you received it: a copy that was printed, photographed or saved by another program cannot be checked.", Backing.Explains, []),
        new Said("With the program: refettle verify FILE. Without it: the page docs/sale-file.md of the program describes the form byte for byte, and docs/verify-sale-file.py checks it with Python and openssl alone.", Backing.Explains, []),
        new Said($"Fingerprint of the key that signed: {fingerprint}. Ask the seller for it in person, and compare.", Backing.Explains, []),
        new Said($"A check shows which entry was changed, removed or added after the file was made. It cannot prove: {string.Join("; ", Verification.CannotProve)}.", Backing.Warns, []),
    ]);
}
