using System.Collections.Concurrent;
using Refettle.Logbook;

namespace Refettle.Storage;

/// <summary>How much of a picture has arrived.</summary>
/// <param name="Received">Bytes that are here.</param>
/// <param name="Kept">It is whole, its hash is right and it is on the disk.</param>
public sealed record PhotoProgress(long Received, bool Kept);

/// <summary>Pictures beside a logbook, each in a file named by the SHA-256 of its bytes: never changed, never written twice.</summary>
/// <remarks>A picture arrives in pieces. Whatever happens before it is whole, the piece that is here can be added to or begun anew. Where
/// machines share their pictures it counts as kept only once it is among the shared ones; one that another machine brought is fetched when
/// it is asked for.</remarks>
/// <param name="shared">Null where this machine has the store for itself.</param>
public sealed class PhotoStore(string folder, ISharedPictures? shared = null)
{
    /// <summary>The most that one picture may have, in bytes.</summary>
    public const long MostBytes = 40_000_000;

    private readonly ConcurrentDictionary<string, Lock> _locks = new();
    private readonly PictureFolder _own = new(folder);

    public string Folder => folder;

    /// <summary>The pictures that belong to the logbook at a path.</summary>
    public static PhotoStore Beside(string logbook) => new(logbook + ".photos");

    /// <summary>Where a picture is; null when it is not here, or not whole yet.</summary>
    /// <exception cref="LogbookException">It is not on this machine, and the shared ones cannot be asked.</exception>
    public string? PathOf(string hash) => ContentHash.IsValid(hash) && (_own.Has(hash) || IsFetched(hash)) ? _own.Whole(hash) : null;

    /// <summary>The hashes of all pictures that are here or shared.</summary>
    /// <exception cref="LogbookException">The shared ones cannot be asked.</exception>
    public IEnumerable<string> All() => shared is null ? _own.All() : _own.All().Union(shared.All());

    public PhotoProgress Progress(string hash) => PathOf(hash) is { } path
        ? new(new FileInfo(path).Length, true)
        : new(_own.Arrived(hash), false);

    /// <summary>Takes a piece of a picture. Sending a piece again does no harm; a piece that does not join what is here is not taken, and
    /// the answer says where to go on.</summary>
    /// <param name="from">Where in the picture the piece begins.</param>
    /// <param name="of">The picture's whole length in bytes.</param>
    public Result<PhotoProgress> Receive(string hash, long from, long of, ReadOnlySpan<byte> piece)
    {
        if (Wrong(hash, from, of, piece.Length) is { } fault)
            return Result<PhotoProgress>.Bad(fault);
        lock (_locks.GetOrAdd(hash, _ => new()))
        {
            try
            {
                var here = Progress(hash);
                if (here.Kept || from > here.Received)
                    return Result<PhotoProgress>.Good(here);
                var length = _own.Write(hash, from, piece);
                return length < of ? Result<PhotoProgress>.Good(new(length, false)) : Finish(hash, of);
            }
            catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
            {
                return Result<PhotoProgress>.Bad(DiskFaults.Of(folder, problem));
            }
        }
    }

    /// <summary>Puts among the shared ones what lies on this machine alone.</summary>
    /// <returns>How many those were. One that no longer has its hash is left out and told of: it would
    /// stand where a good one belongs.</returns>
    public Result<int> Share()
    {
        try
        {
            var faults = new List<Fault>();
            var alone = shared is null ? [] : _own.All().Except(shared.All()).ToList();
            foreach (var hash in alone)
            {
                var bytes = File.ReadAllBytes(_own.Whole(hash));
                faults.AddRange(PictureFolder.Refused(hash, bytes, bytes.LongLength) is { } spoilt
                    ? [spoilt]
                    : shared!.Add(hash, bytes).Faults);
            }

            return faults.Count > 0 ? Result<int>.Bad(faults) : Result<int>.Good(alone.Count);
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Result<int>.Bad(DiskFaults.Of(folder, problem));
        }
    }

    /// <summary>Keeps a whole picture.</summary>
    /// <returns>Its hash.</returns>
    public Result<string> Keep(ReadOnlySpan<byte> bytes)
    {
        var hash = ContentHash.Of(bytes);
        var kept = Receive(hash, 0, bytes.Length, bytes);
        return kept.IsGood ? Result<string>.Good(hash) : Result<string>.Bad(kept.Faults);
    }

    /// <summary>Copies what another place does not have yet. A picture that no longer has its hash is left out and
    /// told of; the others are copied.</summary>
    /// <param name="only">Those to be copied, where they are here; null for all.</param>
    /// <returns>How many are there then.</returns>
    public Result<int> CopyTo(PhotoStore other, IEnumerable<string>? only = null)
    {
        var faults = new List<Fault>();
        foreach (var hash in (only ?? All()).Where(hash => other.PathOf(hash) is null && PathOf(hash) is not null))
        {
            try
            {
                var bytes = File.ReadAllBytes(_own.Whole(hash));
                var kept = other.Receive(hash, 0, bytes.Length, bytes);
                faults.AddRange(kept.Faults);
            }
            catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
            {
                faults.Add(DiskFaults.Of(folder, problem));
            }
        }

        return faults.Count > 0 ? Result<int>.Bad(faults) : Result<int>.Good(other.All().Count());
    }

    /// <summary>Brings a shared picture onto this machine.</summary>
    private bool IsFetched(string hash)
    {
        if (shared?.Find(hash) is not { } bytes)
            return false;
        lock (_locks.GetOrAdd(hash, _ => new()))
        {
            if (_own.Has(hash))
                return true;
            _own.Forget(hash);
            _own.Write(hash, 0, bytes);
            if (!_own.Checked(hash, bytes.LongLength).IsGood)
                return false;
            _own.Settle(hash);
            return true;
        }
    }

    private static Fault? Wrong(string hash, long from, long of, int piece)
    {
        if (!ContentHash.IsValid(hash))
            return new("photo", "it is not named by a hash", "Name it by the SHA-256 of its bytes in small hexadecimal.");
        if (of is <= 0 or > MostBytes)
            return new($"photo {hash}", $"it has {of} bytes", $"Send 1 to {MostBytes} bytes; make it smaller first.");
        return from < 0 || piece == 0 || from + piece > of
            ? new($"photo {hash}", $"a piece of {piece} bytes from {from} of {of}", "Send pieces that lie within the picture.")
            : null;
    }

    private Result<PhotoProgress> Finish(string hash, long of)
    {
        var whole = _own.Checked(hash, of);
        if (!whole.IsGood)
            return Result<PhotoProgress>.Bad(whole.Faults);
        if (shared?.Add(hash, whole.Value) is { IsGood: false } refused)
            return Result<PhotoProgress>.Bad(refused.Faults);
        _own.Settle(hash);
        return Result<PhotoProgress>.Good(new(of, true));
    }
}
