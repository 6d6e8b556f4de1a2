using System.Globalization;

namespace Refettle.Bench.Threads;

/// <summary>Sizes and pitches of the standards. From memory of ISO 261 and ASME B1.1 where no check value covers them.</summary>
public static class ThreadTable
{
    private static readonly (double Diameter, double Pitch)[] Coarse =
    [
        (3, 0.5), (3.5, 0.6), (4, 0.7), (5, 0.8), (6, 1), (7, 1), (8, 1.25), (10, 1.5), (12, 1.75), (14, 2), (16, 2),
        (18, 2.5), (20, 2.5), (22, 2.5), (24, 3), (27, 3), (30, 3.5), (33, 3.5), (36, 4), (39, 4),
    ];

    private static readonly double[] Pitches = [0.35, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4];

    private static readonly double[] UsualFinePitches = [0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 3];

    private static readonly UnifiedThread[] Unified =
    [
        new("4", 0.112, 40, 48), new("5", 0.125, 40, 44), new("6", 0.138, 32, 40), new("8", 0.164, 32, 36), new("10", 0.190, 24, 32),
        new("12", 0.216, 24, 28),
        new("1/4", 0.25, 20, 28), new("5/16", 0.3125, 18, 24), new("3/8", 0.375, 16, 24), new("7/16", 0.4375, 14, 20),
        new("1/2", 0.5, 13, 20), new("9/16", 0.5625, 12, 18), new("5/8", 0.625, 11, 18), new("3/4", 0.75, 10, 16),
        new("7/8", 0.875, 9, 14), new("1", 1, 8, 12),
    ];

    public static string MetricSizes => string.Join(", ", Coarse.Select(row => "M" + Plain(row.Diameter)));

    public static string UnifiedSizes => string.Join(", ", Unified.Select(row => row.Size));

    /// <summary>Every coarse metric thread by designation, smallest first.</summary>
    public static IEnumerable<string> MetricCoarse => Coarse.Select(row => "M" + Plain(row.Diameter));

    /// <summary>The coarse pitch of a nominal diameter, in mm; null for one that is not listed.</summary>
    public static double? CoarsePitch(double diameterMillimetres) =>
        Array.Find(Coarse, row => row.Diameter == diameterMillimetres) is { Pitch: > 0 } row ? row.Pitch : null;

    /// <summary>Whether threads of this pitch exist at all.</summary>
    public static bool IsPitch(double pitchMillimetres) => Array.IndexOf(Pitches, pitchMillimetres) >= 0;

    /// <summary>The usual fine pitches below a coarse one, in words.</summary>
    public static string FinePitches(double coarseMillimetres) =>
        string.Join(", ", UsualFinePitches.Where(pitch => pitch < coarseMillimetres).Select(Plain)) + " mm";

    internal static UnifiedThread? UnifiedSize(string size) => Array.Find(Unified, row => row.Size == size);

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>A Unified size with its coarse and fine threads per inch.</summary>
internal sealed record UnifiedThread(string Size, double DiameterInches, int Coarse, int Fine);
