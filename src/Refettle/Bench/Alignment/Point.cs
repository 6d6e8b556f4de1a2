namespace Refettle.Bench.Alignment;

/// <summary>A point in the rear view of one wheel, in mm: outward from the middle of the car, up from the ground.</summary>
public readonly record struct Point(double Out, double Up)
{
    public static Point operator +(Point left, Point right) => new(left.Out + right.Out, left.Up + right.Up);

    public static Point operator -(Point left, Point right) => new(left.Out - right.Out, left.Up - right.Up);

    public double DistanceTo(Point other) => Math.Sqrt(Square(Out - other.Out) + Square(Up - other.Up));

    /// <summary>The point turned about the origin so that what points up leans outward by the angle.</summary>
    public Point Lean(double radians)
    {
        var (sin, cos) = Math.SinCos(radians);
        return new(Out * cos + Up * sin, Up * cos - Out * sin);
    }

    /// <summary>Where two circles meet, the meeting point nearest to a third point; null when they do not.</summary>
    public static Point? Meet(Point centre, double radius, Point otherCentre, double otherRadius, Point near)
    {
        var distance = centre.DistanceTo(otherCentre);
        if (distance == 0 || distance > radius + otherRadius || distance < Math.Abs(radius - otherRadius))
            return null;
        var along = (Square(radius) - Square(otherRadius) + Square(distance)) / (2 * distance);
        var aside = Math.Sqrt(Math.Max(0, Square(radius) - Square(along)));
        var unit = new Point((otherCentre.Out - centre.Out) / distance, (otherCentre.Up - centre.Up) / distance);
        var foot = new Point(centre.Out + along * unit.Out, centre.Up + along * unit.Up);
        var (one, other) = (new Point(foot.Out - aside * unit.Up, foot.Up + aside * unit.Out),
            new Point(foot.Out + aside * unit.Up, foot.Up - aside * unit.Out));
        return one.DistanceTo(near) <= other.DistanceTo(near) ? one : other;
    }

    private static double Square(double value) => value * value;
}
