using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class PhotoShelfTests
{
    private static readonly Photo _seam = new() { Hash = new('a', 64), Width = 1600, Height = 1200, Of = ["part tank"], Says = "seam" };

    [Fact]
    public void What_is_told_twice_of_one_picture_is_put_together()
    {
        var car = SmallCar.After(new BagPacked("14", "clips", [], null), new PhotoTaken(_seam),
            new PhotoTaken(_seam with { Of = ["bag 14"], Says = null })).Car;
        Assert.Equal(_seam with { Of = ["part tank", "bag 14"] }, Assert.Single(car.Photos));
    }

    [Fact]
    public void A_picture_of_what_left_the_description_stays()
    {
        var car = SmallCar.After(new PhotoTaken(_seam), new StructureRemoved(["part tank"])).Car;
        Assert.Equal(_seam with { Of = [] }, Assert.Single(car.Photos));
    }

    [Fact]
    public void A_picture_without_a_hash_is_kept_in_the_log_and_not_shown()
    {
        var history = SmallCar.After(new PhotoTaken(_seam with { Hash = "../../etc/passwd" }));
        Assert.Empty(history.Car.Photos);
        Assert.Equal(Standing.NotApplied, history.Lines[history.Lines.Count - 1].Standing);
    }

    public static TheoryData<Photo, string> Wrong => new()
    {
        { _seam with { Hash = "abc" }, "hash" },
        { _seam with { Small = "../x" }, "hash" },
        { _seam with { Width = 0 }, "pixels" },
        { _seam with { Of = ["bag 15"] }, "bag 15" },
        { _seam with { Of = ["part tnak"] }, "part tnak" },
        { _seam with { Entry = Guid.Empty }, "no entry" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void What_is_wrong_with_a_photo_is_told_before_it_is_written(Photo photo, string found) =>
        Assert.Contains(found, Assert.Single(HappeningCheck.Of(SmallCar.After(), new PhotoTaken(photo))).Found, StringComparison.Ordinal);

    [Fact]
    public void The_hash_is_that_of_the_standard() =>
        // FIPS 180-2, appendix B.1.
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", ContentHash.Of("abc"u8));
}
