using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Edits;

/// <summary>Changes by hand, put as the keys of a sheet so that the sheet's own readers judge them.</summary>
internal sealed class Given(string place)
{
    private readonly FaultList _faults = new("");
    private readonly List<Pair> _pairs = [];

    public bool IsGood => !_faults.HasErrors;

    public ValueList<Fault> Faults => _faults.ToList();

    public Given With(IEnumerable<KeyValue> values, string[] lists)
    {
        _pairs.AddRange(values.Select(value => Pair(value.Key, lists.Contains(value.Key) ? List(value) : Word(value.Value))));
        return this;
    }

    /// <summary>Keys that a reader asks for and that are not to be changed.</summary>
    public Given Keeping(string key, params IEnumerable<string> values)
    {
        if (_pairs.All(pair => pair.Key.Text != key))
            _pairs.Add(Pair(key, new Sequence(0, 0, [.. values.Select(Quoted)])));
        return this;
    }

    public Given KeepingOne(string key, string value)
    {
        if (_pairs.All(pair => pair.Key.Text != key))
            _pairs.Add(Pair(key, Quoted(value)));
        return this;
    }

    /// <summary>These keys moved below another.</summary>
    public Given Below(string key, string[] below)
    {
        var moved = _pairs.Where(pair => below.Contains(pair.Key.Text)).ToList();
        _pairs.RemoveAll(moved.Contains);
        if (moved.Count > 0)
            _pairs.Add(Pair(key, new Mapping(0, 0, moved)));
        return this;
    }

    /// <summary>Keys that begin with <c>refit-</c> moved below <c>refit</c>; the minutes stay where they are not given. None of
    /// them with a value: no refit way.</summary>
    public Given Refit(RefitWay? old)
    {
        var given = _pairs.Where(pair => RefitKeys.Is(pair.Key.Text)).ToList();
        _pairs.RemoveAll(given.Contains);
        var said = given.Where(pair => pair.Value is not Scalar { IsNothing: true }).Select(RefitKeys.Plain).ToList();
        if (said.Count > 0 && old is not null && given.TrueForAll(pair => pair.Key.Text != RefitKeys.Takes))
            said.Add(Pair("takes", Quoted($"{old.Takes.Value} min")));
        if (said.Count > 0)
            _pairs.Add(RefitKeys.Below(said));
        return this;
    }

    public Fields Fields() => new(new Mapping(0, 0, _pairs), place, new(_faults, Origin.User, Braces: null));

    private static Pair Pair(string key, Node value) => new(Word(key), value);

    private static Scalar Word(string text) => new(0, 0, text, Quoted: false);

    private static Node Quoted(string text) => new Scalar(0, 0, text, Quoted: true);

    /// <summary>Items with commas between them; cautions, which are sentences, with semicolons. Square
    /// brackets around them may be left out.</summary>
    private static Sequence List(KeyValue value)
    {
        var text = value.Value.StartsWith('[') && value.Value.EndsWith(']') ? value.Value[1..^1] : value.Value;
        var items = text.Split(value.Key.EndsWith("cautions", StringComparison.Ordinal) ? ';' : ',',
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return new(0, 0, [.. items.Select(item => Quoted(item.Trim('"', '\'')))]);
    }
}
