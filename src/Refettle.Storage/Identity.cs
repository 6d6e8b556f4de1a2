using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>This machine's name in a logbook.</summary>
internal static class Identity
{
    private const int RandomBytes = 8;

    /// <summary>The name that the logbook has for this machine; a new one at first.</summary>
    public static string Of(Connections connections, RandomNumberGenerator random)
    {
        using var context = connections.Context();
        if (Stored(context) is { } known)
            return known.Device;
        using var transaction = context.Database.BeginTransaction();
        if (Stored(context) is { } meanwhile)
            return meanwhile.Device;
        var fresh = new IdentityRow { Device = New(random) };
        context.Add(fresh);
        context.SaveChanges();
        transaction.Commit();
        return fresh.Device;
    }

    private static IdentityRow? Stored(LogbookContext context) => context.Identity.AsNoTracking().SingleOrDefault();

    private static string New(RandomNumberGenerator random)
    {
        var bytes = new byte[RandomBytes];
        random.GetBytes(bytes);
        return "d-" + Convert.ToHexStringLower(bytes);
    }
}
