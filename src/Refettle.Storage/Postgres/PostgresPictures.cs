using Microsoft.EntityFrameworkCore;
using Refettle.Storage.Tables;

namespace Refettle.Storage.Postgres;

/// <summary>Pictures in the database, for every bay.</summary>
internal sealed class PostgresPictures(Transactions tables) : ISharedPictures
{
    public byte[]? Find(string hash) =>
        tables.Ask(context => Rows(context).Where(row => row.Hash == hash).Select(row => row.Bytes).SingleOrDefault());

    /// <summary>Two bays may add one picture at once.</summary>
    public Result<string> Add(string hash, byte[] bytes) => tables.Run(context =>
    {
        context.Database.ExecuteSql($"INSERT INTO \"Pictures\" (\"Hash\", \"Bytes\") VALUES ({hash}, {bytes}) ON CONFLICT DO NOTHING");
        return Result<string>.Good(hash);
    });

    public ValueList<string> All() =>
        tables.Ask(context => Rows(context).Select(row => row.Hash).OrderBy(hash => hash).ToList().ToValueList());

    private static IQueryable<PictureRow> Rows(LogbookContext context) => context.Set<PictureRow>().AsNoTracking();
}
