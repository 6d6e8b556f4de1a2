using CsCheck;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Storage.Tests;

public sealed class PhotoStoreTests : IDisposable
{
    private static readonly byte[] _picture = Png(20_000);
    private static readonly string _hash = ContentHash.Of(_picture);
    private readonly Shelf _shelf = new();

    private PhotoStore Store => PhotoStore.Beside(_shelf.File);

    public void Dispose() => _shelf.Dispose();

    [Fact]
    public void A_picture_that_came_in_pieces_is_kept_whole_under_its_hash()
    {
        Assert.Equal(new PhotoProgress(8_000, false), Receive(0, 8_000));
        Assert.Null(Store.PathOf(_hash));
        Assert.Equal(new PhotoProgress(_picture.Length, true), Receive(8_000, _picture.Length - 8_000));
        Assert.Equal(_picture, File.ReadAllBytes(Store.PathOf(_hash)!));
        Assert.Equal([_hash], Store.All());
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(Store.Folder, "arriving")));
    }

    [Fact]
    public void Pieces_in_any_order_twice_or_with_gaps_end_in_one_whole_picture() =>
        Gen.Select(Gen.Int[0, _picture.Length - 1], Gen.Int[1, 9_000]).Array[0, 12].Sample(pieces =>
        {
            using var shelf = new Shelf();
            var store = PhotoStore.Beside(shelf.File);
            foreach (var (from, length) in pieces)
                Assert.True(store.Receive(_hash, from, _picture.Length,
                    _picture.AsSpan(from, Math.Min(length, _picture.Length - from))).IsGood);
            for (var progress = store.Progress(_hash); !progress.Kept; progress = store.Progress(_hash))
                Assert.True(store.Receive(_hash, progress.Received, _picture.Length,
                    _picture.AsSpan((int)progress.Received, Math.Min(5_000, _picture.Length - (int)progress.Received))).IsGood);
            return File.ReadAllBytes(store.PathOf(_hash)!).AsSpan().SequenceEqual(_picture);
        }, iter: 60);

    /// <summary>The phone keeps what is not acknowledged, so nothing may be acknowledged that the others cannot see.</summary>
    [Fact]
    public void Where_photos_are_shared_one_counts_as_kept_only_once_the_others_have_it()
    {
        var shared = new Passing();
        var store = new PhotoStore(Path.Combine(_shelf.Folder, "bay"), shared);
        shared.IsAway = true;
        Assert.Contains("away", Assert.Single(store.Keep(_picture).Faults).Found, StringComparison.Ordinal);
        Assert.Throws<LogbookException>(() => store.PathOf(_hash));
        (shared.IsAway, shared.IsFull) = (false, true);
        Assert.False(store.Keep(_picture).IsGood);
        Assert.False(store.Progress(_hash).Kept);
        shared.IsFull = false;
        Assert.Equal(_hash, store.Keep(_picture).Value);
        shared.IsAway = true;
        Assert.Equal(_picture, File.ReadAllBytes(store.PathOf(_hash)!));
    }

    [Fact]
    public void A_shared_photo_that_was_spoilt_there_is_not_shown()
    {
        var shared = new Passing();
        Assert.True(shared.Add(_hash, [.. _picture[..^1], 1]).IsGood);
        Assert.Null(new PhotoStore(Path.Combine(_shelf.Folder, "bay"), shared).PathOf(_hash));
    }

    /// <summary>What is only looked at need not be written anywhere else.</summary>
    [Fact]
    public void A_photo_of_another_bay_is_shown_while_the_shared_ones_take_nothing()
    {
        var shared = new Passing();
        Assert.True(shared.Add(_hash, _picture).IsGood);
        shared.IsFull = true;
        Assert.Equal(_picture, File.ReadAllBytes(new PhotoStore(Path.Combine(_shelf.Folder, "bay"), shared).PathOf(_hash)!));
    }

    /// <summary>Under its name it would stand where the good one belongs, for all bays.</summary>
    [Fact]
    public void A_photo_that_the_disk_spoilt_is_not_given_to_the_others()
    {
        var (shared, folder) = (new Passing(), Path.Combine(_shelf.Folder, "bay"));
        Assert.True(new PhotoStore(folder).Keep(_picture).IsGood);
        File.WriteAllBytes(new PhotoStore(folder).PathOf(_hash)!, [.. _picture[..^1], 1]);
        Assert.Contains(_hash, Assert.Single(new PhotoStore(folder, shared).Share().Faults).Place, StringComparison.Ordinal);
        Assert.Empty(shared.All());
        shared.IsAway = true;
        Assert.Contains("away", Assert.Single(new PhotoStore(folder, shared).Share().Faults).Found, StringComparison.Ordinal);
    }

    /// <summary>What is shared, in memory, and now and then out of reach.</summary>
    private sealed class Passing : ISharedPictures
    {
        private static readonly Fault Away = new("the database server", "it is away", "Wait.");
        private readonly Dictionary<string, byte[]> _kept = [];

        public bool IsAway { get; set; }

        public bool IsFull { get; set; }

        public byte[]? Find(string hash) => IsAway ? throw new LogbookException(Away) : _kept.GetValueOrDefault(hash);

        public Result<string> Add(string hash, byte[] bytes)
        {
            if (IsAway || IsFull)
                return Result<string>.Bad(Away);
            _kept[hash] = bytes;
            return Result<string>.Good(hash);
        }

        public ValueList<string> All() => IsAway ? throw new LogbookException(Away) : [.. _kept.Keys];
    }

    [Fact]
    public void A_piece_that_leaves_a_gap_is_not_taken_and_the_answer_says_where_to_go_on()
    {
        Receive(0, 1_000);
        Assert.Equal(new PhotoProgress(1_000, false), Receive(2_000, 1_000));
    }

    [Fact]
    public void What_was_damaged_on_the_way_is_thrown_away_and_can_be_sent_again()
    {
        var damaged = (byte[])_picture.Clone();
        damaged[10_000] ^= 1;
        Assert.Contains("another hash", Assert.Single(Store.Receive(_hash, 0, damaged.Length, damaged).Faults).Found,
            StringComparison.Ordinal);
        Assert.Equal(new PhotoProgress(0, false), Store.Progress(_hash));
        Assert.True(Receive(0, _picture.Length).Kept);
    }

    [Fact]
    public void What_carries_more_than_the_picture_is_not_kept()
    {
        byte[] talking = [.. _picture, .. "and a film"u8];
        Assert.Contains("more than the picture", Assert.Single(Store.Keep(talking).Faults).Found, StringComparison.Ordinal);
        Assert.Contains("no JPEG", Assert.Single(Store.Keep("#!/bin/sh"u8).Faults).Found, StringComparison.Ordinal);
        Assert.Empty(Store.All());
    }

    [Theory]
    [InlineData("../../etc/passwd", 0, 10)]
    [InlineData("", 0, 10)]
    [InlineData(null, -1, 10)]
    [InlineData(null, 0, 0)]
    [InlineData(null, 0, PhotoStore.MostBytes + 1)]
    [InlineData(null, 5, 10)]
    public void What_cannot_be_is_refused_before_the_disk_is_touched(string? hash, long from, long of)
    {
        Assert.False(Store.Receive(hash ?? _hash, from, of, new byte[10]).IsGood);
        Assert.False(Directory.Exists(Store.Folder));
        Assert.Null(Store.PathOf(hash ?? _hash));
    }

    private PhotoProgress Receive(int from, int length) => Store.Receive(_hash, from, _picture.Length, _picture.AsSpan(from, length)).Value;

    /// <summary>A PNG with one chunk of picture data; that it shows nothing sensible does not matter here.</summary>
    internal static byte[] Png(int length)
    {
        var data = new byte[length];
        new Random(1).NextBytes(data);
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR"u8, new byte[13]), .. Chunk("IDAT"u8, data), .. Chunk("IEND"u8, [])];
    }

    private static byte[] Chunk(ReadOnlySpan<byte> name, byte[] data) =>
        [(byte)(data.Length >> 24), (byte)(data.Length >> 16), (byte)(data.Length >> 8), (byte)data.Length, .. name, .. data, 0, 0, 0, 0];
}
