using Refettle.SaleFile;

namespace Refettle.Paper.Tests;

public sealed class PicturesAheadTests
{
    private static readonly string[] Names = [.. Enumerable.Range(0, 20).Select(i => $"{i}")];

    [Fact]
    public void Pictures_come_in_their_order_however_long_each_takes()
    {
        using var example = new Example { Pictures = new Source(name => Thread.Sleep(int.Parse(name) % 3 * 5)) };
        var told = new Told();
        var given = Of(example, told);
        Assert.Equal(Names, given.Select(one => one.Picture.Name));
        Assert.Equal(Names.Select(name => name == "7" ? null : name), given.Select(one => one.Bytes is [var number] ? $"{number}" : null));
        Assert.Equal(Names.Select((_, i) => 0.9 * (i + 1) / Names.Length), told.Shares);
    }

    /// <summary>The first is not given before the second has begun.</summary>
    [Fact]
    public void The_next_is_read_meanwhile()
    {
        using var second = new ManualResetEventSlim();
        var met = false;
        using var example = new Example
        {
            Pictures = new Source(name =>
            {
                if (name == "1")
                    second.Set();
                else if (name == "0")
                    met = second.Wait(TimeSpan.FromMinutes(1));
            }),
        };
        Of(example, new Told());
        Assert.True(met);
    }

    private static List<(Picture Picture, byte[]? Bytes)> Of(Example example, Told told)
    {
        var pictures = new Pictures(Names.Select(name => new Picture(name, 4, 3, "One", 1)).ToValueList());
        example.Document = example.Document with { Sections = [new("Photos", [pictures])] };
        return [.. new PicturesAhead(example.Paper with { Progress = told }).Of(pictures)];
    }

    /// <summary>Gives each name as a byte, but the seventh.</summary>
    private sealed class Source(Action<string> before) : IPictureSource
    {
        public byte[]? Read(string name, int mostPixels)
        {
            before(name);
            return name == "7" ? null : [byte.Parse(name)];
        }
    }

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
