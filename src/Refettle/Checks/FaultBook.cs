namespace Refettle.Checks;

/// <summary>Collects the faults of a structure; names what was probably meant, as long as that stays cheap.</summary>
internal sealed class FaultBook
{
    private const int MostSuggestions = 20;

    private readonly List<Fault> _faults = [];
    private int _suggestions;

    public bool IsEmpty => _faults.Count == 0;

    public ValueList<Fault> ToList() => _faults.ToValueList();

    public void Error(string place, string path, string found, string mend) =>
        Add(new(place, found, mend) { Path = path });

    public void Note(string place, string path, string found, string mend) =>
        Add(new(place, found, mend) { Path = path, Severity = Severity.Note });

    /// <summary>Mends are whole sentences.</summary>
    private void Add(Fault fault) =>
        _faults.Add(fault with { Mend = fault.Mend.EndsWith('.') || fault.Mend.EndsWith('?') ? fault.Mend : fault.Mend + "." });

    /// <summary>A name that nothing has.</summary>
    /// <param name="wanted">What it should be, with its article: <c>a part</c>.</param>
    public void Unknown(string place, string path, string name, string wanted, IEnumerable<string> names)
    {
        const string Otherwise = "Describe it, or correct the name.";
        var mend = _suggestions++ < MostSuggestions ? NearNames.Ask(name, names, Otherwise) : Otherwise;
        Error(place, path, $"\"{name}\" is not {wanted} that is described", mend);
    }

    /// <summary>Reports a number outside its range; says whether it lies inside.</summary>
    public void Range(string place, string path, decimal value, decimal least, decimal most, string unit)
    {
        if (value < least || value > most)
            Error(place, path, $"{path} is {value:0.###}{unit}", $"Give {least:0.###} to {most:0.###}{unit}");
    }
}
