using CsCheck;

namespace Refettle.Sheets.Tests;

public sealed class SpreadsheetReaderTests
{
    private const string Parts = """
        id,name,zone,mass,hazards,roles,off,on,clear
        tank,Fuel tank,underbody,14 kg,fuel,fuel-tank,6 min,9 min,off(guard);state(on-stands)
        ,Tank guard,underbody,,,,,,
        guard,Guard,underbody,,plastic|rubber,,2 min,2 min,
        """;

    private const string Joints = """
        id,kind,holds,count,thread,single-use,way,tool,open,close,destroys
        straps,strap,tank;body,2,M8,TRUE,,13 mm socket,8 min,10 min,
        straps,,,,,,cut,cut-off wheel,12 min,10 min,guard
        ,bolt,guard;body,4,M6,,,,,,
        ,bolt,tank-guard;body,4,M6,,,,,,
        """;

    [Fact]
    public void Two_files_give_the_structure_that_a_sheet_gives()
    {
        var read = Read(Parts, Joints).Value;
        var sheet = SheetReader.Read("""
            refettle: 1
            car: { name: x }
            zones: { underbody: { exposure: 4, posture: under } }
            states: { on-stands: { stance: true, tool: jack, open: 5 min, close: 0 min } }
            parts:
              body: { fixed: true }
              tank: { name: Fuel tank, zone: underbody, mass: 14 kg, hazards: [fuel], roles: [fuel-tank],
                out: { off: 6 min, on: 9 min, clear: [off(guard), state(on-stands)] } }
              tank-guard: { zone: underbody }
              guard: { zone: underbody, hazards: [plastic, rubber], out: { off: 2 min, on: 2 min } }
            joints:
              straps:
                kind: strap
                holds: [tank, body]
                count: 2
                thread: M8
                single-use: true
                ways:
                  - { tool: 13 mm socket, open: 8 min, close: 10 min }
                  - { id: cut, tool: cut-off wheel, open: 12 min, close: 10 min, destroys: [guard] }
              guard-body: { kind: bolt, holds: [guard, body], count: 4, thread: M6 }
              tank-guard-body: { kind: bolt, holds: [tank-guard, body], count: 4, thread: M6 }
            """, "x").Value.Structure;
        Assert.Equal(sheet.Parts.Where(part => part.Id != "body"), read.Parts);
        Assert.Equal(sheet.Joints, read.Joints);
    }

    /// <summary>The tables say what the sheet says, key for key.</summary>
    [Fact]
    public void Refit_ways_stand_in_columns_of_their_own()
    {
        var read = Read(
            "id,zone,off,refit-takes,refit-tool,refit-clear,refit-posture,refit-cautions,refit-danger\ntank,underbody,6 min,9 min,helper,off(guard),under,Strap it;Two people,\nguard,underbody,,,,,,,",
            "id,kind,holds,tool,open,close,refit-takes,refit-danger\na,bolt,tank;body,x,1 min,2 min,3 min,heat|spark\na,,,y,1 min,1 min,,\nb,bolt,guard;body,,,,,");
        var sheet = SheetReader.Read("""
            refettle: 1
            car: { name: x }
            zones: { underbody: { exposure: 4, posture: under } }
            parts:
              body: { fixed: true }
              tank: { zone: underbody, out: { off: 6 min, refit: { takes: 9 min, tool: helper, clear: [off(guard)], posture: under, cautions: [Strap it, Two people] } } }
              guard: { zone: underbody }
            joints:
              a: { kind: bolt, holds: [tank, body], ways: [{ tool: x, open: 1 min, close: 2 min }, { tool: y, open: 1 min, close: 1 min }], refit: { takes: 3 min, danger: [heat, spark] } }
              b: { kind: bolt, holds: [guard, body] }
            """, "x").Value.Structure;
        Assert.Equal(sheet.Parts.Where(part => part.Id != "body"), read.Value.Parts);
        Assert.Equal(sheet.Joints, read.Value.Joints);
        var twice = Read("id,zone\ntank,underbody",
            "id,kind,holds,tool,open,close,refit-takes\na,bolt,tank;body,x,1 min,2 min,3 min\na,,,y,1 min,1 min,4 min").Faults;
        Assert.Equal("a further way says something else about refit", twice.Single().Found);
    }

    [Fact]
    public void Semicolons_and_tabs_separate_cells_too()
    {
        var tabs = Read(Parts.Replace(',', '\t'), Joints.Replace(',', '\t')).Value;
        var semicolons = Read(Parts.Replace(';', '|').Replace(',', ';'), Joints.Replace(';', '|').Replace(',', ';')).Value;
        Assert.Equal(Read(Parts, Joints).Value, tabs);
        Assert.Equal(tabs, semicolons);
    }

    [Fact]
    public void Faults_carry_file_line_and_cell()
    {
        var faults = Read("""
            id,name,mas,zone,off
            tank,Tank,14,undrbody,6
            tank,Again,,,
            ,,,boot,
            """, """
            id,kind,holds,count
            a,bult,tank;bodi,0,9
            b,weld,tank;body,
            """).Faults;
        Assert.Equal(
        [
            ("parts.csv", 1, 3, "\"mas\" is not a column here"), ("parts.csv", 2, 4, "\"undrbody\" is not a zone that is described"),
            ("parts.csv", 2, 5, "off: \"6\" has no unit"), ("parts.csv", 3, 1, "it is here already, on line 2"),
            ("parts.csv", 4, 1, "it has neither id nor name"),
            ("joints.csv", 2, 2, "kind is \"bult\""), ("joints.csv", 2, 3, "\"bodi\" is not a part that is described"),
            ("joints.csv", 2, 4, "count is 0"),
            ("joints.csv", 2, 5, "\"9\" stands beyond the last column"), ("joints.csv", 3, 1, "there is no way to open it"),
        ], faults.Select(fault => (fault.File, fault.Line, fault.Column, fault.Found)));
    }

    [Fact]
    public void A_further_way_may_not_contradict_the_first_row()
    {
        var faults = Read(Parts, "id,kind,holds,tool,open,close\na,bolt,tank;body,x,1 min,1 min\na,nut,tank;body,y,1 min,1 min").Faults;
        Assert.Equal((3, 2, "a further way says something else about kind"),
            (faults.Single().Line, faults.Single().Column, faults.Single().Found));
    }

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData("id,name\na,\"open", null)]
    [InlineData("id,name\na,b\0", "there is a control character (U+0000)")]
    [InlineData("id,name\na,b\"c\"d", "a quote stands inside a cell")]
    public void Broken_files_are_told(string parts, string? found)
    {
        var result = Read(parts, "");
        Assert.True(found is null || result.Faults.Any(fault => fault.Found == found), string.Join('\n', result.Faults));
    }

    [Fact]
    public void Anything_is_read_or_refused() =>
        Gen.Char["id,name;\t\n\r\"' kgmin()off1.-|"].Array[0, 80].Sample(letters =>
        {
            var text = "id,name,off,clear,holds\n" + new string(letters);
            var result = Read(text, text);
            Assert.True(result.IsGood || result.Faults.Count > 0);
        }, iter: 500);

    private static Result<Structure> Read(string parts, string joints) =>
        SpreadsheetReader.Read(parts, "parts.csv", joints, "joints.csv", Checkout.Shelf.Start);
}
