using CsCheck;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class LogLinesTests
{
    [Fact]
    public void What_is_written_is_read_back_and_agrees_with_its_seal() =>
        RandomLog.Entries.Sample(entries =>
        {
            var read = LogLines.Read(new StringReader(Text(entries)));
            Assert.Equal(entries, read.Value);
            Assert.Empty(read.Faults);
        });

    [Fact]
    public void A_log_that_was_cut_off_or_changed_is_read_with_notes()
    {
        var entries = SmallCar.After(new Noted("wet", null)).Lines.Select(line => line.Entry).ToArray();
        var lines = Text(entries).Split('\n');
        var cut = LogLines.Read(new StringReader(string.Join('\n', lines.Take(2))));
        Assert.Equal("its last line, the seal, is missing", Assert.Single(cut.Faults).Found);
        var changed = LogLines.Read(new StringReader(Text(entries).Replace("wet", "dry", StringComparison.Ordinal)));
        Assert.Equal("it is not the entry that was sealed", Assert.Single(changed.Faults).Found);
    }

    [Fact]
    public void Faulty_lines_are_named()
    {
        var good = Text([new TestDevice("a").Write(new Noted("x", null))]).Split('\n')[0];
        var read = LogLines.Read(new StringReader(
            $"{good}\nnonsense\n\n{good.Replace("\"sequence\":1", "\"sequence\":0", StringComparison.Ordinal)}\n{{}}\nnull"));
        Assert.False(read.IsGood);
        Assert.Equal([2, 4, 5, 6], read.Faults.Select(fault => fault.Line).Distinct());
        Assert.Equal("it is not an entry (no JSON)", read.Faults[0].Found);
        Assert.Equal("it is not an entry (JSON, but something of an entry is missing)", read.Faults.First(fault => fault.Line == 5).Found);
    }

    [Fact]
    public void A_text_that_is_no_log_has_one_fault() =>
        Assert.Contains("it is no log", Assert.Single(LogLines.Read(new StringReader("Part number,Price\n4410-22,3.20\n{}")).Faults).Found,
            StringComparison.Ordinal);

    /// <summary>Bytes that may have come from anywhere: faults or entries, never a crash.</summary>
    [Fact]
    public void Random_text_is_borne()
    {
        var real = Text([new TestDevice("a").Write(new Noted("½", null)), new TestDevice("b").Write(SmallCar.Opening[1])]);
        Gen.Select(Gen.Int[0, real.Length - 1], Gen.Int[0, 40], Gen.String).Sample((at, length, text) =>
        {
            var damaged = real.Remove(at, Math.Min(length, real.Length - at)).Insert(at, text);
            var read = LogLines.Read(new StringReader(damaged));
            if (read.IsGood)
                CarHistory.Of(TestDevice.Car, read.Value);
        });
    }

    private static string Text(IEnumerable<Entry> entries)
    {
        var text = new StringWriter();
        LogLines.Write(entries, text);
        return text.ToString();
    }
}
