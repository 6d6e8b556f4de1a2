namespace Refettle.Cli.Tests.Verbs;

public sealed class SheetVerbTests
{
    [Fact]
    public void A_sheet_that_is_written_out_is_read_back_the_same()
    {
        using var bench = new Bench().WithCar();
        var file = bench.Beside("out.yaml");
        Assert.True(bench.Run("export", file) == ExitCode.Good, bench.Error);
        var plan = bench.Out("reach", "free(axle)", "--json");
        Assert.Equal(plan, bench.Out("reach", "free(axle)", "--sheet", file, "--json"));
    }

    [Fact]
    public void Tables_from_a_spreadsheet_join_the_car()
    {
        using var bench = new Bench();
        bench.Run("new", "Car");
        var parts = bench.File("parts.csv", "id,name,zone,mass\nshelf,Parcel shelf,boot,2 kg\n");
        var joints = bench.File("joints.csv", "id,kind,holds\nshelf-clips,clip,shelf;body\n");
        Assert.True(bench.Run("sheet", parts, joints) == ExitCode.Good, bench.Error);
        Assert.Equal("shelf-clips", bench.Json("holds", "shelf").GetProperty("joints")[0].GetProperty("joint").GetString());
    }

    [Theory]
    [InlineData("there is no such file", "nowhere.yaml")]
    [InlineData("not one sheet", "a.yaml", "b.csv")]
    public void What_cannot_be_read_is_told(string says, params string[] files)
    {
        using var bench = new Bench();
        bench.Run("new", "Car");
        Assert.Equal(ExitCode.Faults, bench.Run(["sheet", .. files]));
        Assert.Contains(says, bench.Error, StringComparison.Ordinal);
    }
}
