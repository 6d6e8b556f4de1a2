using System.Globalization;
using Refettle.Scope;

namespace Refettle.Web.Scopes;

/// <summary>A frontier as a line in a frame of 320 by 180.</summary>
public sealed class FrontierPicture
{
    public const int Width = 320;
    public const int Height = 180;
    private const int Edge = 12;

    private readonly ValueList<FrontierPoint> _points;
    private readonly decimal _left;
    private readonly decimal _right;
    private readonly decimal _bottom;
    private readonly decimal _top;

    public FrontierPicture(ValueList<FrontierPoint> points)
    {
        _points = points;
        (_left, _right) = (points.Min(point => point.Limit), points.Max(point => point.Limit));
        (_bottom, _top) = (points.Min(point => point.Gain), points.Max(point => point.Gain));
    }

    /// <summary>Where each point lies, from the left.</summary>
    public IEnumerable<(double X, double Y)> Places => _points.Select(point => (X(point.Limit), Y(point.Gain)));

    /// <summary>The line as an SVG path: a gain holds until the next limit brings more.</summary>
    public string Path => string.Join(' ', Places.Select((place, number) => number == 0
        ? string.Create(CultureInfo.InvariantCulture, $"M{place.X:0.#} {place.Y:0.#}")
        : string.Create(CultureInfo.InvariantCulture, $"H{place.X:0.#} V{place.Y:0.#}")));

    /// <summary>Where a limit lies; outside the frame it is held at its edge.</summary>
    public double X(decimal limit) => Edge + (Share(limit, _left, _right) * (Width - (2 * Edge)));

    private double Y(decimal gain) => Height - Edge - (Share(gain, _bottom, _top) * (Height - (2 * Edge)));

    private static double Share(decimal value, decimal least, decimal most) =>
        most == least ? 0.5 : (double)Math.Clamp((value - least) / (most - least), 0, 1);
}
