using System.Globalization;

namespace Refettle.Logbook;

/// <summary>An alignment in words, and read from words.</summary>
public static class AlignmentWords
{
    private const string Write = "Write angles in degrees, such as toe 0.10 camber -0.50 caster 3.2.";

    private static readonly string[] _names = ["toe", "camber", "caster"];

    /// <summary>Null for anything else.</summary>
    public static string? Of(Happening? happening) => happening is not AlignmentMeasured measured ? null
        : $"Alignment {(measured.AsFound ? "as found" : "as set")}: "
            + string.Join("; ",
                measured.Wheels.Select(wheel => $"{wheel.Corner} {Of(wheel)}")
                    .Concat(measured.ThrustRight is { } thrust ? [$"thrust line {Thrust(thrust)}"] : []))
            + With(", with ", measured.Instrument) + With(", by ", measured.By);

    public static string Of(WheelAngles wheel) =>
        string.Join(", ", new[] { ("toe", wheel.Toe), ("camber", wheel.Camber), ("caster", wheel.Caster) }
        .Where(angle => angle.Item2 is not null).Select(angle => $"{angle.Item1} {Degrees(angle.Item2)}"));

    public static string Degrees(decimal? angle) =>
        angle is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value:0.00}°") : "not measured";

    /// <summary>Side and size, since the sign is not defined alike everywhere.</summary>
    public static string Thrust(decimal right) =>
        right == 0 ? "straight ahead" : $"{Degrees(Math.Abs(right))} to the {(right > 0 ? "right" : "left")}";

    /// <summary>The angles of one wheel from words: <c>toe 0.10 camber -0.50 caster 3.2</c>, in any order, in degrees.</summary>
    public static Result<WheelAngles> Read(string corner, string text)
    {
        var words = text.Split([' ', ',', '°', '=', ':', ';'], StringSplitOptions.RemoveEmptyEntries);
        var angles = new Dictionary<string, decimal>();
        for (var i = 0; i < words.Length; i += 2)
        {
            var name = words[i].ToLowerInvariant();
            if (!_names.Contains(name))
                return Bad(corner, $"\"{words[i]}\" is not toe, camber or caster");
            if (i + 1 == words.Length
                || !decimal.TryParse(words[i + 1], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                    CultureInfo.InvariantCulture, out var angle))
                return Bad(corner, $"no number of degrees follows {name}");
            if (!angles.TryAdd(name, angle))
                return Bad(corner, $"{name} is there twice");
        }

        return angles.Count == 0
            ? Bad(corner, "no angle is there")
            : Result<WheelAngles>.Good(new(corner, Named("toe"), Named("camber"), Named("caster")));

        decimal? Named(string name) => angles.TryGetValue(name, out var angle) ? angle : null;
    }

    private static Result<WheelAngles> Bad(string corner, string found) =>
        Result<WheelAngles>.Bad(new Fault($"alignment {corner}", found, Write));

    private static string With(string before, string? text) => text is null ? "" : before + text;
}
