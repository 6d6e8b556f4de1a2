using Refettle.Logbook;

namespace Refettle.Web.CloseUp;

/// <summary>Wheel angles while they are typed: degrees, with a point or a comma; what is left empty was not measured.</summary>
public sealed class AlignmentDraft
{
    public static readonly ValueList<(string Id, string Says)> Corners =
        [("fl", "Front left"), ("fr", "Front right"), ("rl", "Rear left"), ("rr", "Rear right")];

    public static readonly ValueList<string> Angles = ["toe", "camber", "caster"];

    private readonly Dictionary<(string Corner, string Angle), string> _typed = [];

    public bool AsFound { get; set; }

    public string Instrument { get; set; } = "";

    public string By { get; set; } = "";

    public string this[string corner, string angle]
    {
        get => _typed.GetValueOrDefault((corner, angle), "");
        set => _typed[(corner, angle)] = value;
    }

    /// <summary>The entry, in the words of the command line; or everything that is wrong with it.</summary>
    public Result<AlignmentMeasured> Read()
    {
        var wheels = Corners.Select(corner => (corner.Id,
            Text: string.Join(' ', Angles.Select(angle => (angle, Text: this[corner.Id, angle].Trim().Replace(',', '.')))
            .Where(typed => typed.Text.Length > 0).Select(typed => $"{typed.angle} {typed.Text}"))))
            .Where(corner => corner.Text.Length > 0).Select(corner => AlignmentWords.Read(corner.Id, corner.Text)).ToList();
        var faults = wheels.SelectMany(wheel => wheel.Faults).ToValueList();
        return faults.Count > 0 ? Result<AlignmentMeasured>.Bad(faults)
            : Result<AlignmentMeasured>.Good(
                new(AsFound, wheels.Select(wheel => wheel.Value).ToValueList(), null, Text(Instrument), Text(By)));
    }

    private static string? Text(string typed) => typed.Trim().Length == 0 ? null : typed.Trim();
}
