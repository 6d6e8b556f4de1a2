using Refettle.Logbook;

namespace Refettle.Storage;

/// <summary>Where the machines that share a store share their pictures, each under its hash.</summary>
public interface ISharedPictures
{
    /// <returns>Null when it is not there.</returns>
    /// <exception cref="LogbookException">It cannot be asked.</exception>
    byte[]? Find(string hash);

    /// <summary>Durable once this returns a good result; adding one again changes nothing.</summary>
    Result<string> Add(string hash, byte[] bytes);

    /// <summary>The hashes of all.</summary>
    /// <exception cref="LogbookException">It cannot be asked.</exception>
    ValueList<string> All();
}
