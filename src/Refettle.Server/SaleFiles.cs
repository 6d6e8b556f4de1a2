using Refettle.Logbook;
using Refettle.Paper;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;
using Refettle.Storage;
using Refettle.Storage.Keys;

namespace Refettle.Server;

/// <summary>Brings together what a sale file is made of: log, photos, key.</summary>
public static class SaleFiles
{
    /// <param name="store">Has the photos; the key lies beside it on this machine.</param>
    /// <param name="write">The key is closed once it returns.</param>
    /// <returns>Notes tell of claims that were left out.</returns>
    public static Result<T> Of<T>(CarHistory history, Privacy privacy, IGarageStore store, TimeProvider clock, Func<SalePaper, T> write)
    {
        var opened = SealKey.Of(store.Files);
        if (!opened.IsGood)
            return Result<T>.Bad(opened.Faults);
        using var key = opened.Value;
        var document = SaleFileWriter.Of(new()
        {
            History = history,
            Made = clock.GetUtcNow(),
            Fingerprint = Verification.FingerprintOf(key.PublicKey),
            Privacy = privacy,
        });
        return Result<T>.Good(
            write(new(document.Value, history.Car.Id, history.Car.Structure, privacy, new ScaledPictures(store.Photos.PathOf), key)),
            document.Faults);
    }
}
