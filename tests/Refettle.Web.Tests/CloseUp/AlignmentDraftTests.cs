using Refettle.Logbook;
using Refettle.Web.CloseUp;

namespace Refettle.Web.Tests.CloseUp;

public sealed class AlignmentDraftTests
{
    /// <summary>Signs by ISO 8855:2011, 7.1.6: toe-in positive, so half of left less right rear toe points to the right.</summary>
    [Fact]
    public void What_is_typed_is_what_the_command_line_writes()
    {
        var draft = new AlignmentDraft { AsFound = true, Instrument = " gauge " };
        (draft["rl", "toe"], draft["rl", "camber"], draft["rr", "toe"]) = ("0,20", "-0.50", " 0 ");
        var read = draft.Read().Value;
        Assert.Equal(new AlignmentMeasured(true, [new("rl", 0.20m, -0.50m, null), new("rr", 0, null, null)], null, "gauge", null), read);
        Assert.Equal(0.10m, read.ThrustRight);
    }

    [Fact]
    public void All_that_is_no_number_is_named_at_once()
    {
        var draft = new AlignmentDraft();
        (draft["fl", "toe"], draft["rr", "caster"]) = ("in", "3 or 4");
        Assert.Equal(["alignment fl", "alignment rr"], draft.Read().Faults.Select(fault => fault.Place));
    }
}
