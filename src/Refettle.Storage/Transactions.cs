using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Reads and changes the tables of a store; what the store refuses becomes a fault.</summary>
/// <param name="open">Opens the tables.</param>
/// <param name="refused">Says in words what the store refused; null for what is a bug of ours.</param>
/// <param name="patience">How to wait for others; null where the store itself gives turns.</param>
internal sealed class Transactions(Func<LogbookContext> open, Func<Exception, Fault?> refused, Patience? patience = null)
{
    private readonly Lock _turn = new();

    /// <summary>Runs in one transaction that is durable once this returns a good result.</summary>
    public Result<T> Run<T>(Func<LogbookContext, Result<T>> change)
    {
        lock (_turn)
        {
            try
            {
                return patience is null ? Once(change) : patience.While(() => Once(change));
            }
            catch (Exception problem) when (refused(problem) is { } fault)
            {
                return Result<T>.Bad(fault);
            }
        }
    }

    private Result<T> Once<T>(Func<LogbookContext, Result<T>> change)
    {
        using var context = open();
        using var transaction = context.Database.BeginTransaction();
        var result = change(context);
        if (!result.IsGood)
            return result;
        context.SaveChanges();
        transaction.Commit();
        return result;
    }

    /// <exception cref="LogbookException">The store refused.</exception>
    public T Ask<T>(Func<LogbookContext, T> read) => Read(() =>
    {
        using var context = open();
        return read(context);
    });

    /// <exception cref="LogbookException">The store refused.</exception>
    public T Read<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception problem) when (refused(problem) is { } fault)
        {
            throw new LogbookException(fault, problem);
        }
    }
}
