using System.Globalization;
using System.Text;

namespace Refettle.Sheets.Writing;

/// <summary>Builds YAML text line by line; what has its default value is left out.</summary>
internal sealed class YamlText
{
    private readonly StringBuilder _text = new();
    private string _indent = "";
    private string _lead = "";

    public override string ToString() => _text.ToString();

    /// <summary>A key with keys below it; nothing at all when there are none.</summary>
    public void Below(string key, Action write)
    {
        var start = _text.Length;
        var (indent, lead) = (_indent, _lead);
        Line($"{Quoted(key)}:");
        var head = _text.Length;
        _indent = indent + "  ";
        write();
        _indent = indent;
        if (_text.Length != head)
            return;
        _text.Length = start;
        _lead = lead;
    }

    /// <summary>A thing with its keys; one without keys is there too.</summary>
    public void Thing(string id, Action write)
    {
        var indent = _indent;
        Line($"{Quoted(id)}:");
        _indent = indent + "  ";
        write();
        _indent = indent;
    }

    /// <summary>An item of a list of sets of keys.</summary>
    public void Item(Action write)
    {
        var indent = _indent;
        (_lead, _indent) = ("- ", indent + "  ");
        write();
        (_lead, _indent) = ("", indent);
    }

    public void Text(string key, string? value, string? otherwise = null)
    {
        if (value is not null && value != otherwise)
            Line($"{key}: {Quoted(value)}");
    }

    public void Flag(string key, bool value)
    {
        if (value)
            Line($"{key}: true");
    }

    public void Number(string key, decimal? value, decimal? otherwise = null)
    {
        if (value is not null && value != otherwise)
            Line($"{key}: {Number(value.Value)}");
    }

    public void Quantity(string key, decimal? value, string unit, decimal? otherwise = null)
    {
        if (value is not null && value != otherwise)
            Line($"{key}: {Number(value.Value)} {unit}");
    }

    public void List(string key, IEnumerable<string> values)
    {
        var items = values.Select(Quoted).ToArray();
        if (items.Length > 0)
            Line($"{key}: [{string.Join(", ", items)}]");
    }

    private static string Number(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    private void Line(string line)
    {
        var indent = _lead.Length > 0 ? _indent[..^_lead.Length] + _lead : _indent;
        _text.Append(indent).Append(line).Append('\n');
        _lead = "";
    }

    /// <summary>The text as it is where that cannot be misread, else in double quotes.</summary>
    private static string Quoted(string text) => IsPlain(text) ? text : $"\"{string.Concat(text.EnumerateRunes().Select(Escaped))}\"";

    /// <summary>Letters stand as they are: the pairs of escapes that JSON has for those beyond the first 65,536 are
    /// none in YAML (YAML 1.2.2, 5.7).</summary>
    private static string Escaped(Rune letter) => letter.Value switch
    {
        '"' or '\\' => $"\\{letter}",
        '\n' => "\\n",
        < ' ' or (>= 0x7F and <= 0x9F) or 0x2028 or 0x2029 or 0xFEFF or 0xFFFE or 0xFFFF => $"\\u{letter.Value:X4}",
        _ => letter.ToString(),
    };

    private static bool IsPlain(string text) =>
        text.Length > 0 && char.IsAsciiLetter(text[0]) && text[^1] != ' ' && text.All(IsPlainInside)
        && text.ToLowerInvariant() is not ("null" or "true" or "false" or "yes" or "no" or "on" or "off" or "y" or "n");

    private static bool IsPlainInside(char letter) =>
        char.IsAsciiLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.' or '/' or '(' or ')' or '·' or ';';
}
