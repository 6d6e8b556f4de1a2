namespace Refettle.Sheets.Tree;

/// <summary>The faults of one file.</summary>
internal sealed class FaultList(string file)
{
    private readonly List<Fault> _faults = [];
    private int _dropped;

    public string File => file;

    public bool HasErrors => _faults.Any(fault => fault.Severity == Severity.Error);

    public void Add(int line, int column, string place, string found, string mend) =>
        Add(new Fault(place, found, mend) { Line = line, Column = column });

    public void Add(Node at, string place, string found, string mend) => Add(at.Line, at.Column, place, found, mend);

    public void Add(Fault fault)
    {
        if (_faults.Count < Limits.Faults)
            _faults.Add(fault with { File = file, Mend = Closed(fault.Mend) });
        else
            _dropped++;
    }

    /// <summary>Names what was probably meant, as long as the fault is still shown.</summary>
    public string Suggest(string written, IEnumerable<string> names, string otherwise) =>
        _faults.Count < Limits.Faults ? NearNames.Ask(written, names, otherwise) : otherwise;

    /// <summary>Mends are whole sentences.</summary>
    private static string Closed(string mend) => mend.EndsWith('.') || mend.EndsWith('?') ? mend : mend + ".";

    /// <summary>In the order of the file.</summary>
    public ValueList<Fault> ToList()
    {
        var sorted = _faults.OrderBy(fault => fault.Line).ThenBy(fault => fault.Column).ToList();
        if (_dropped > 0)
            sorted.Add(new Fault("file", $"there are {_dropped:N0} more faults", "Mend these first, then read it again") { File = file });
        return sorted.ToValueList();
    }
}
