using Refettle.Cli.Commands;

namespace Refettle.Cli.Tests.Commands;

public sealed class CommandLinesTests
{
    [Theory]
    [InlineData("add kit --side rl", "add|kit|--side|rl")]
    [InlineData("  new   \"Calder Heron 2.2\"\t--year 1988 ", "new|Calder Heron 2.2|--year|1988")]
    [InlineData("set part x name='It''s' mass=\"3 kg\"", "set|part|x|name=Its|mass=3 kg")]
    [InlineData("note \"\"", "note|")]
    [InlineData("holds x # what holds it", "holds|x")]
    [InlineData("note a#b", "note|a#b")]
    [InlineData("note \"# no comment\"", "note|# no comment")]
    [InlineData("# only a comment", "")]
    [InlineData("", "")]
    public void A_line_is_read_as_a_shell_reads_it(string line, string words) =>
        Assert.Equal(words, string.Join('|', CommandLines.Split(line)!));

    [Fact]
    public void Every_quote_that_does_not_close_is_told_with_its_line()
    {
        var read = CommandLines.Read(["cars", "note \"open", "", "note 'open"]);
        Assert.False(read.IsGood);
        Assert.Equal([2, 4], read.Faults.Select(fault => fault.Line));
    }

    [Fact]
    public void Blank_lines_do_not_count_and_numbers_stay_true()
    {
        var read = CommandLines.Read(["# head", "", "cars", "log"]);
        Assert.Equal([3, 4], read.Value.Select(command => command.Number));
    }
}
