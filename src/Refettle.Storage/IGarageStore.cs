using Refettle.Logbook;
using Refettle.Storage.Pairing;

namespace Refettle.Storage;

/// <summary>Where a garage keeps its logbooks and knows its devices.</summary>
public interface IGarageStore : ILogbook
{
    /// <summary>Where it is, in words without secrets: a path, or a server and database.</summary>
    string Place { get; }

    /// <summary>The path beside which this machine keeps files that belong to the store: keys, pictures.</summary>
    string Files { get; }

    /// <summary>Who else may use this garage over the network.</summary>
    PairedDevices Devices { get; }

    /// <summary>The pictures that its entries name.</summary>
    PhotoStore Photos { get; }
}
