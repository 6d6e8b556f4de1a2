using Microsoft.EntityFrameworkCore;
using Refettle.Storage.Tables;

namespace Refettle.Storage.Postgres;

/// <summary>Pictures in the database, for every bay.</summary>
internal sealed class PostgresPictures(Transactions tables) : ISharedPictures
{
    public byte[]? Find(string hash) => Reading(rows => rows.Where(row => row.Hash == hash).Select(row => row.Bytes).SingleOrDefault());

    /// <summary>Two bays may add one picture at once.</summary>
    public Result<string> Add(string hash, byte[] bytes) => tables.Run(context =>
    {
        context.Database.ExecuteSql($"INSERT INTO \"Pictures\" (\"Hash\", \"Bytes\") VALUES ({hash}, {bytes}) ON CONFLICT DO NOTHING");
        return Result<string>.Good(hash);
    });

    public ValueList<string> All() => Reading(rows => rows.Select(row => row.Hash).OrderBy(hash => hash).ToList().ToValueList());

    private T Reading<T>(Func<IQueryable<PictureRow>, T> read) => tables.Read(() =>
    {
        using var context = tables.Open();
        return read(context.Set<PictureRow>().AsNoTracking());
    });
}
