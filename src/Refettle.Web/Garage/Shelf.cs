namespace Refettle.Web.Garage;

/// <summary>The kits, asked of the server once and kept for when it cannot be reached.</summary>
public sealed class Shelf(ServerApi server, IKeeper keeper)
{
    private const string Key = "kits";
    private KitTable? _table;

    public async Task<Reply<KitTable>> OpenAsync()
    {
        if (_table is { } known)
            return new(true, Result<KitTable>.Good(known));
        var reply = await server.KitsAsync();
        if (reply.IsGood)
            await keeper.PutAsync(Key, reply.Value);
        else if (!reply.Reached && await keeper.GetAsync<KitTable>(Key) is { } kept)
            reply = new(true, Result<KitTable>.Good(kept));
        _table = reply.IsGood ? reply.Value : null;
        return reply;
    }
}
