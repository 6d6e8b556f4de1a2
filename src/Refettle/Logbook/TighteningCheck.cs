namespace Refettle.Logbook;

/// <summary>How a tightening was looked at once more. Nothing asks for it: common practice at what
/// must not come loose, no source.</summary>
public enum TighteningCheck
{
    /// <summary>Somebody else put a wrench on it.</summary>
    SecondPerson,

    /// <summary>A line of paint over fastener and part, put on after the torque: a break in it shows that something turned.</summary>
    PaintMark,
}

/// <summary>Checks in words.</summary>
public static class TighteningCheckWords
{
    public static string Word(this TighteningCheck check) =>
        check == TighteningCheck.SecondPerson ? "checked by a second person" : "paint-marked";

    /// <summary><c>, checked by a second person, paint-marked</c>; empty without any.</summary>
    public static string Told(this JointTightened tightened) =>
        string.Concat((tightened.Checks ?? []).Select(check => $", {check.Word()}"));
}
