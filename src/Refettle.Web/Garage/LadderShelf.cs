using Refettle.Stuck;

namespace Refettle.Web.Garage;

/// <summary>The ladders of tries: asked of the server once, and kept in this browser for when it is out of reach.</summary>
public sealed class LadderShelf(ServerApi server, IKeeper keeper)
{
    private const string Key = "ladders";
    private LadderSet? _ladders;

    /// <summary>The ladders; empty when the server could never be asked.</summary>
    public async Task<LadderSet> GetAsync()
    {
        if (_ladders is not null)
            return _ladders;
        var reply = await server.LaddersAsync();
        if (!reply.IsGood)
            return await keeper.GetAsync<LadderSet>(Key) ?? new([]);
        await keeper.PutAsync(Key, reply.Value);
        return _ladders = reply.Value;
    }
}
