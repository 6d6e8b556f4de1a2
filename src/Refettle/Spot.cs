namespace Refettle;

/// <summary>A corner or side of the car, seen from the driver's seat.</summary>
public enum Spot
{
    None,
    Left,
    Right,
    FrontLeft,
    FrontRight,
    RearLeft,
    RearRight,
}

/// <summary>The codes, words and geometry of spots.</summary>
public static class Spots
{
    private static readonly string[] _codes = ["", "left", "right", "fl", "fr", "rl", "rr"];

    private static readonly string[] _words =
        ["", "Left", "Right", "Front left", "Front right", "Rear left", "Rear right"];

    /// <summary><c>rl</c>, <c>left</c>; empty for no spot.</summary>
    public static string Code(this Spot spot) => _codes[(int)spot];

    /// <summary><c>Rear left</c>; empty for no spot.</summary>
    public static string Words(this Spot spot) => _words[(int)spot];

    public static bool IsCorner(this Spot spot) => spot >= Spot.FrontLeft;

    public static Side Side(this Spot spot) => spot switch
    {
        Spot.Left or Spot.FrontLeft or Spot.RearLeft => Refettle.Side.Left,
        Spot.Right or Spot.FrontRight or Spot.RearRight => Refettle.Side.Right,
        _ => Refettle.Side.None,
    };

    /// <summary>The same spot on the other side.</summary>
    public static Spot Mirror(this Spot spot) => spot switch
    {
        Spot.None => Spot.None,
        Spot.Left or Spot.FrontLeft or Spot.RearLeft => spot + 1,
        _ => spot - 1,
    };

    /// <summary>An identifier with every side's code for the other side's: <c>rl-hub</c> gives
    /// <c>rr-hub</c>; unchanged when it has none.</summary>
    public static string MirrorOf(string id) =>
        string.Join('-', id.Split('-').Select(word => TryParse(word, out var spot) ? spot.Mirror().Code() : word));

    public static Spot Front(Side side) => side switch
    {
        Refettle.Side.Left => Spot.FrontLeft,
        Refettle.Side.Right => Spot.FrontRight,
        _ => Spot.None,
    };

    public static Spot Rear(Side side) => side switch
    {
        Refettle.Side.Left => Spot.RearLeft,
        Refettle.Side.Right => Spot.RearRight,
        _ => Spot.None,
    };

    /// <summary>Reads a code: <c>rl</c>, <c>left</c>. The empty text is not one.</summary>
    public static bool TryParse(string? code, out Spot spot)
    {
        spot = (Spot)Math.Max(0, Array.IndexOf(_codes, code));
        return spot != Spot.None;
    }

    /// <summary>Where a part is: the corner its identifier begins with or its zone names (<c>rl-damper</c>,
    /// <c>corner-rl</c>), else its side.</summary>
    public static Spot Of(Part part)
    {
        if (Corner(part.Id.Split('-')[0], out var corner))
            return corner;
        if (part.Zone.StartsWith("corner-", StringComparison.Ordinal) && Corner(part.Zone["corner-".Length..], out corner))
            return corner;
        return part.Side switch { Refettle.Side.Left => Spot.Left, Refettle.Side.Right => Spot.Right, _ => Spot.None };
    }

    /// <summary>The corner or side that a sub-assembly's identifier begins with.</summary>
    public static Spot Of(SubAssembly unit) => TryParse(unit.Id.Split('-')[0], out var spot) ? spot : Spot.None;

    private static bool Corner(string code, out Spot spot) => TryParse(code, out spot) && spot.IsCorner();
}
