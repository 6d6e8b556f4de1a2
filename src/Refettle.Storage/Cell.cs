using System.Buffers.Text;
using Microsoft.Data.Sqlite;
using static SQLitePCL.raw;

namespace Refettle.Storage;

/// <summary>Reads what a cell holds. A cell that cannot hold what it should is a damaged file, as SQLite itself calls it.</summary>
internal static class Cell
{
    private static readonly long Earliest = DateTimeOffset.MinValue.ToUnixTimeMilliseconds();
    private static readonly long Latest = DateTimeOffset.MaxValue.ToUnixTimeMilliseconds();

    /// <exception cref="SqliteException">No moment of the calendar.</exception>
    public static DateTimeOffset Moment(long milliseconds) => milliseconds >= Earliest && milliseconds <= Latest
        ? DateTimeOffset.FromUnixTimeMilliseconds(milliseconds)
        : throw Damaged("a moment");

    /// <exception cref="SqliteException">No identifier.</exception>
    public static Guid Identifier(ReadOnlySpan<byte> text) =>
        Utf8Parser.TryParse(text, out Guid id, out _) ? id : throw Damaged("an identifier");

    /// <summary>Those between spaces.</summary>
    /// <exception cref="SqliteException">One is none.</exception>
    public static ValueList<Guid> Identifiers(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty)
            return [];
        var identifiers = new List<Guid>();
        foreach (var range in text.Split((byte)' '))
            identifiers.Add(Identifier(text[range]));
        return identifiers.ToValueList();
    }

    private static SqliteException Damaged(string expected) => new($"A cell that should hold {expected} does not.", SQLITE_CORRUPT);
}
