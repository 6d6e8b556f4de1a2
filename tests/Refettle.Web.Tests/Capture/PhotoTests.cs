using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Capture;
using Refettle.Web.Garage;
using Refettle.Web.Tests.Garage;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Capture;

public sealed class PhotoTests
{
    private static readonly byte[] _png = [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 0, .. "IEND"u8, 0, 0, 0, 0];

    [Fact]
    public async Task What_is_kept_is_the_plain_picture_under_its_hash()
    {
        var keeper = new MemoryPhotoKeeper();
        using var outbox = new PhotoOutbox(new(new HttpClient()), keeper);
        var taken = (await PhotoTaker.TakeAsync(outbox, new(1600, 1200, [.. _png, .. "a film"u8], _png, new byte[9 * 9], 9, 9), null,
            ["part rear-axle"], "seam")).Value;
        Assert.Equal((ContentHash.Of(_png), 1600, 1200, 0.0),
            (taken.Photo.Hash, taken.Photo.Width, taken.Photo.Height, taken.Photo.Sharpness!.Value));
        Assert.Equal(_png, await keeper.BytesAsync(taken.Photo.Hash));
        Assert.Null(taken.Photo.Original);
    }

    [Fact]
    public async Task A_file_that_is_no_picture_is_refused_and_nothing_is_kept()
    {
        var keeper = new MemoryPhotoKeeper();
        using var outbox = new PhotoOutbox(new(new HttpClient()), keeper);
        Assert.False((await PhotoTaker.TakeAsync(outbox, new(1, 1, "GIF89a"u8.ToArray(), _png, new byte[9], 3, 3), null, [], null)).IsGood);
        Assert.Empty(await keeper.WaitingAsync());
    }

    /// <summary>The first twelve bytes of a HEIC file: ISO/IEC 23008-12, brand heic.</summary>
    private static readonly byte[] _heic = [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0];

    [Fact]
    public async Task An_original_that_cannot_be_made_plain_is_left_out_and_the_picture_is_kept()
    {
        var keeper = new MemoryPhotoKeeper();
        using var outbox = new PhotoOutbox(new(new HttpClient()), keeper);
        var taken = await PhotoTaker.TakeAsync(outbox, new(1, 1, _png, _png, new byte[9], 3, 3), _heic, [], null);
        Assert.Null(taken.Value.Photo.Original);
        Assert.Equal([ContentHash.Of(_png)], await keeper.WaitingAsync());
        var note = Assert.Single(taken.Faults);
        Assert.Equal(Severity.Note, note.Severity);
        Assert.Contains("HEIC", note.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_the_browser_cannot_show_is_told_by_its_kind()
    {
        Assert.Contains("HEIC", PhotoTaker.Unshown(_heic).Found, StringComparison.Ordinal);
        Assert.DoesNotContain("HEIC", PhotoTaker.Unshown("GIF89a, cut off"u8.ToArray()).Found, StringComparison.Ordinal);
        Assert.DoesNotContain("HEIC", PhotoTaker.Unshown([0, 0, 0, 24, .. "ftypisom"u8]).Found, StringComparison.Ordinal);
        Assert.DoesNotContain("HEIC", PhotoTaker.Unshown(null).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_shows_the_photos_of_its_joints_too_newest_first()
    {
        Photo Of(char name, params string[] things) => new() { Hash = new(name, 64), Width = 1, Height = 1, Of = things.ToValueList() };
        var car = new Car
        {
            Id = "x",
            Name = "x",
            Structure = SmallCar.Structure,
            Photos = [Of('a', "part rear-axle"), Of('b', "bag 14"), Of('c', "joint shackle-left"), Of('d', "joint prop-flange")]
        };
        Assert.Equal("da", string.Concat(PhotoList.Of(car, "part rear-axle").Select(photo => photo.Hash[0])));
        Assert.Equal("b", string.Concat(PhotoList.Of(car, "bag 14").Select(photo => photo.Hash[0])));
    }

    [Fact]
    public void Entries_about_bags_and_photos_are_told_in_words()
    {
        var car = new CarLookup(new() { Id = "x", Name = "x", Structure = SmallCar.Structure });
        Assert.Equal("Bag A7: two bolts, for Bolt: Rear left leaf spring – Body shell, blue box",
            CaptureWords.Of(new BagPacked("a7", "two bolts", ["joint shackle-left"], "blue box"), car));
        Assert.Equal("Photo: Rear axle, Bag 14",
            CaptureWords.Of(new PhotoTaken(new() { Hash = new('a', 64), Width = 1, Height = 1, Of = ["part rear-axle", "bag 14"] }), car));
        Assert.Null(CaptureWords.Of(new Noted("x", null), car));
    }
}
