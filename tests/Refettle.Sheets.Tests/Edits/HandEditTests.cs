using Refettle.Sheets.Edits;

namespace Refettle.Sheets.Tests.Edits;

public sealed class HandEditTests
{
    private static readonly Structure _car = SheetReader.Read("""
        refettle: 1
        car: { name: Test }
        parts:
          body: { name: Body shell, fixed: true, roles: [body] }
          damper: { name: Damper, mass: 2 kg, hazards: [rubber], out: { off: 2 min, on: 3 min, clear: [off(wheel)], cautions: [Gas under pressure.] } }
          wheel: { name: Wheel }
        joints:
          top: { kind: bolt, holds: [damper, body], thread: M10 }
          foot: { kind: nut, holds: [damper, body], ways: [{ id: undo, tool: 17 mm socket, open: 6 min, close: 8 min }, { id: cut, tool: saw, open: 3 min, close: 8 min }] }
        """, "test.yaml").Value.Structure;

    [Fact]
    public void Only_the_keys_that_are_given_change()
    {
        var part = Edited("part", "damper", "mass=2.4 kg", "cautions=+Hot; Sharp edge").Parts[0];
        var old = _car.Parts.First(part => part.Id == "damper");
        Assert.Equal(old with { Mass = new(2.4m), Out = old.Out with { Cautions = ["Gas under pressure.", "Hot", "Sharp edge"] } }, part);
    }

    [Theory]
    [InlineData("clear=off(body)", "off(body)")]
    [InlineData("clear=+off(body)", "off(wheel),off(body)")]
    [InlineData("clear=[off(body), open(top)]", "off(body),open(top)")]
    [InlineData("clear=", "")]
    public void A_list_is_replaced_or_added_to(string change, string facts) =>
        Assert.Equal(facts, string.Join(',', Edited("part", "damper", change).Parts[0].Out.Clear));

    [Fact]
    public void A_figure_given_by_hand_counts_as_the_users()
    {
        var way = Edited("joint", "top", "open=9 min").Joints[0].Ways[0];
        Assert.Equal((new Minutes(9), Origin.User), (way.Open, way.Origin));
    }

    [Fact]
    public void A_default_way_follows_its_thread_until_it_is_given()
    {
        var joint = Edited("joint", "top", "thread=M12").Joints[0];
        Assert.NotEqual(_car.Joints[0].Ways[0].Tool, joint.Ways[0].Tool);
        Assert.Equal(Origin.Default, joint.Ways[0].Origin);
    }

    [Fact]
    public void A_way_among_several_is_named()
    {
        Assert.Contains("2 ways", Refused("joint", "foot", "open=9 min"), StringComparison.Ordinal);
        Assert.Equal(new Minutes(9), Edited("way", "foot/cut", "open=9 min", "destroys=damper").Joints[0].Ways[1].Open);
    }

    [Fact]
    public void Things_are_made_when_that_is_asked_for()
    {
        var joint = HandEdit.Of(_car, "joint", "new-joint", Keys("kind=clip", "holds=damper,wheel", "count=4"),
            isNew: true).Value.Joints[0];
        Assert.Equal((JointKind.Clip, 4, Origin.Default), (joint.Kind, joint.Count, joint.Ways[0].Origin));
        Assert.Equal(3,
            HandEdit.Of(_car, "way", "foot/drill", Keys("tool=drill", "open=5 min", "close=5 min"),
                isNew: true).Value.Joints[0].Ways.Count);
    }

    [Fact]
    public void A_refit_way_is_made_changed_key_by_key_and_taken_away()
    {
        var made = Edited("joint", "top", "refit-takes=12 min", "refit-tool=induction heater", "refit-clear=off(wheel)",
            "refit-posture=under", "refit-cautions=Hot; Gloves", "refit-danger=heat, spark");
        RefitWay way = new()
        {
            Tool = "induction heater",
            Takes = new(12),
            Clear = [Fact.Off("wheel")],
            Posture = "under",
            Cautions = ["Hot", "Gloves"],
            Danger = Danger.Heat | Danger.Spark,
            Origin = Origin.User
        };
        Assert.Equal(way, made.Joints[0].Refit);
        Assert.Equal(_car.Joints[0], made.Joints[0] with { Refit = null });
        var more = HandEdit.Of(made, "joint", "top", Keys("refit-danger=+flame", "refit-cautions=+Mask", "refit-tool=torch"),
            isNew: false).Value.Joints[0];
        Assert.Equal(way with { Tool = "torch", Cautions = ["Hot", "Gloves", "Mask"], Danger = way.Danger | Danger.Flame }, more.Refit);
        Assert.Null(HandEdit.Of(made, "joint", "top", Keys("refit-takes="), isNew: false).Value.Joints[0].Refit);
        Assert.Contains("takes is missing", Refused("joint", "top", "refit-tool=torch"), StringComparison.Ordinal);
        Assert.Contains("Did you mean", Refused("joint", "top", "refit-tol=torch"), StringComparison.Ordinal);
        var out1 = Edited("part", "damper", "refit-takes=3 min", "off=4 min").Parts[0].Out;
        Assert.Equal((new Minutes(4), new Minutes(3)), (out1.Off, out1.Refit!.Takes));
        Assert.Equal(["Gas under pressure."], out1.Cautions);
    }

    [Fact]
    public void Dangers_of_a_way_are_several_and_are_added_to()
    {
        var cut = Edited("way", "foot/cut", "danger=spark, heat");
        Assert.Equal(Danger.Spark | Danger.Heat, cut.Joints[0].Ways[1].Danger);
        var foot = _car with { Joints = cut.Joints };
        Assert.Equal(Danger.Spark | Danger.Heat | Danger.Flame,
            HandEdit.Of(foot, "way", "foot/cut", Keys("danger=+flame"), isNew: false).Value.Joints[0].Ways[1].Danger);
        Assert.Null(HandEdit.Of(foot, "way", "foot/cut", Keys("danger="), isNew: false).Value.Joints[0].Ways[1].Danger);
    }

    [Theory]
    [InlineData("part", "dampr", "mass=1 kg", "Did you mean damper?")]
    [InlineData("part", "damper", "mas=1 kg", "Did you mean mass?")]
    [InlineData("part", "damper", "mass=1", "no unit")]
    [InlineData("part", "damper", "scarcity=rare", "stocked")]
    [InlineData("part", "damper", "name=+x", "one value")]
    [InlineData("joint", "top", "clear=gone(x)", "not a fact")]
    [InlineData("prat", "damper", "mass=1 kg", "Did you mean part?")]
    [InlineData("way", "top/nothing", "open=1 min", "there is none")]
    [InlineData("way", "nothing/x", "open=1 min", "no joint or state")]
    public void What_does_not_fit_is_refused_with_the_remedy(string kind, string id, string change, string says) =>
        Assert.Contains(says, Refused(kind, id, change), StringComparison.Ordinal);

    [Fact]
    public void Keys_without_values_and_keys_given_twice_are_refused()
    {
        Assert.Equal(2, KeyValue.Read(["mass", "=3"]).Faults.Count);
        Assert.False(KeyValue.Read(["a=1", "a=2"]).IsGood);
    }

    [Fact]
    public void A_setting_without_a_value_is_asked_for_and_what_it_is_can_be_given_again()
    {
        foreach (var key in SettingsEdit.Rows(Settings.Standard, "").Select(row => row.Key).Where(key => key != "lifted"))
        {
            var fault = Assert.Single(SettingsEdit.Of(Settings.Standard, Keys($"{key}=")).Faults);
            Assert.Equal($"{key} has no value", fault.Found);
            var again = fault.Mend["Say how much; it is ".Length..^" now.".Length];
            Assert.Equal(Settings.Standard, SettingsEdit.Of(Settings.Standard, Keys(again)).Value);
        }

        Assert.Empty(SettingsEdit.Of(Settings.Standard with { Lifted = ["damper"] }, Keys("lifted=")).Value.Lifted);
    }

    [Fact]
    public void Settings_change_key_by_key()
    {
        var settings = SettingsEdit.Of(Settings.Standard, Keys("per-hour=45", "unique-off=2 h", "lifted=damper")).Value;
        Assert.Equal(Settings.Standard with { PerHour = new(45), UniqueOff = new(120), Lifted = ["damper"] }, settings);
        Assert.False(SettingsEdit.Of(Settings.Standard, Keys("per-hour=much")).IsGood);
    }

    private static ValueList<KeyValue> Keys(params string[] words) => KeyValue.Read(words).Value;

    private static Structure Edited(string kind, string id, params string[] words) =>
        HandEdit.Of(_car, kind, id, Keys(words), isNew: false).Value;

    private static string Refused(string kind, string id, params string[] words) =>
        string.Join('\n', HandEdit.Of(_car, kind, id, Keys(words), isNew: false).Faults);
}
