namespace Refettle.Checks;

/// <summary>Collects the faults of a structure; names what was probably meant, as long as that stays cheap.</summary>
internal sealed class FaultBook
{
    private const int MostSuggestions = 200;

    private readonly List<Fault> _faults = [];
    private int _suggestions;

    public bool IsEmpty => _faults.Count == 0;

    public ValueList<Fault> ToList() => _faults.ToValueList();

    public void Error(string place, string path, string found, string mend) =>
        _faults.Add(new(place, found, mend) { Path = path });

    public void Note(string place, string path, string found, string mend) =>
        _faults.Add(new(place, found, mend) { Path = path, Severity = Severity.Note });

    /// <summary>A name that nothing has.</summary>
    /// <param name="wanted">What it should be, with its article: <c>a part</c>.</param>
    public void Unknown(string place, string path, string name, string wanted, IEnumerable<string> names)
    {
        var near = _suggestions++ < MostSuggestions ? Nearest.To(name, names) : null;
        Error(place, path, $"\"{name}\" is not {wanted} that is described", near is null
            ? "Describe it, or correct the name"
            : $"Write \"{near}\" if that is meant, or describe it");
    }

    /// <summary>Reports a number outside its range; says whether it lies inside.</summary>
    public void Range(string place, string path, decimal value, decimal least, decimal most, string unit)
    {
        if (value < least || value > most)
            Error(place, path, $"{path} is {value:0.###}{unit}", $"Give {least:0.###} to {most:0.###}{unit}");
    }
}
