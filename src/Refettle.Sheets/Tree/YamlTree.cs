using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Refettle.Sheets.Tree;

/// <summary>Reads YAML into nodes. Anchors, aliases and tags are refused: a sheet is written out.</summary>
internal sealed class YamlTree
{
    private readonly Parser _parser;
    private readonly FaultList _faults;
    private int _values;

    private YamlTree(string text, FaultList faults)
    {
        _parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        _faults = faults;
    }

    /// <summary>The one mapping that the file is; null when it cannot be read, with the reason among the faults.</summary>
    public static Mapping? Read(string text, FaultList faults)
    {
        try
        {
            return new YamlTree(text, faults).Document();
        }
        catch (YamlException fault)
        {
            faults.Add((int)fault.Start.Line, (int)fault.Start.Column, "file", "this is not YAML: " + Reason(fault),
                "Look at quotes, colons, brackets and indentation here and just above");
            return null;
        }
        catch (RefusedException fault)
        {
            faults.Add((int)fault.Start.Line, (int)fault.Start.Column, "file", fault.Message, fault.Mend);
            return null;
        }
    }

    private Mapping? Document()
    {
        Next();
        Next();
        if (_parser.Current is StreamEnd)
        {
            _faults.Add(1, 1, "file", "the file is empty", "Begin with the line refettle: 1");
            return null;
        }

        Next();
        var root = Value(depth: 0);
        Next();
        if (_parser.Current is DocumentStart another)
            throw new RefusedException(another.Start, "a second document begins here", "Put it into a file of its own");
        if (root is Mapping mapping)
            return mapping;
        _faults.Add(root.Line, root.Column, "file", "the file is not a set of keys", "Begin with the line refettle: 1");
        return null;
    }

    /// <summary>The value at the current event; leaves the event after it current.</summary>
    private Node Value(int depth)
    {
        var start = _parser.Current!;
        if (depth > Limits.Depth)
            throw new RefusedException(start.Start, $"values are nested more than {Limits.Depth} deep",
                "A sheet is never that deep: look for a bracket too many");
        if (++_values > Limits.Values)
            throw new RefusedException(start.Start, $"there are more than {Limits.Values:N0} values", "Split the file");
        if (start is AnchorAlias or NodeEvent { Anchor.IsEmpty: false })
            throw new RefusedException(start.Start, "anchors (&) and aliases (*) are not read", "Write it out, or put the text in quotes");
        if (start is NodeEvent { Tag.IsEmpty: false })
            throw new RefusedException(start.Start, "tags (!) are not read", "Leave it out, or put the text in quotes");
        Next();
        return start switch
        {
            SequenceStart => Items(start, depth),
            MappingStart => Pairs(start, depth),
            YamlDotNet.Core.Events.Scalar scalar => Text(scalar),
            _ => throw Broken(start.Start),
        };
    }

    private static Scalar Text(YamlDotNet.Core.Events.Scalar scalar)
    {
        if (scalar.Value.Length > Limits.ScalarLength)
            throw new RefusedException(scalar.Start, $"a text has {scalar.Value.Length:N0} characters",
                $"At most {Limits.ScalarLength:N0} are read: shorten it, or look for a missing quote");
        return new((int)scalar.Start.Line, (int)scalar.Start.Column, scalar.Value, scalar.Style is not ScalarStyle.Plain);
    }

    private Sequence Items(ParsingEvent start, int depth)
    {
        var items = new List<Node>();
        while (_parser.Current is not SequenceEnd)
            items.Add(Value(depth + 1));
        Next();
        return new((int)start.Start.Line, (int)start.Start.Column, items);
    }

    private Mapping Pairs(ParsingEvent start, int depth)
    {
        var pairs = new List<Pair>();
        var lines = new KeyLines(pairs);
        while (_parser.Current is not MappingEnd)
        {
            var key = Value(depth + 1);
            var value = Value(depth + 1);
            if (key is not Scalar name)
                _faults.Add(key.Line, key.Column, "file", "a key is not a single word",
                    "Put keys with braces or brackets in quotes: \"{p}drum\"");
            else if (lines.Of(name.Text) is var line && line > 0)
                _faults.Add(name.Line, name.Column, "file", $"\"{name.Text}\" is here already, on line {line}",
                    "Rename or remove one of them");
            else
                pairs.Add(new(name, value));
        }

        Next();
        return At(start, pairs);
    }

    /// <summary>A mapping without braces of its own begins where its first key does; the parser does not always say so.</summary>
    private static Mapping At(ParsingEvent start, List<Pair> pairs) =>
        pairs.Count > 0 && (start is not MappingStart { Style: MappingStyle.Flow } || start.Start is { Line: 1, Column: 1 })
        ? new(pairs[0].Key.Line, pairs[0].Key.Column, pairs)
        : new((int)start.Start.Line, (int)start.Start.Column, pairs);

    /// <summary>Goes on to the next event. Some broken files make the parser fail in other ways than its own.</summary>
    private void Next()
    {
        try
        {
            _parser.MoveNext();
        }
        catch (Exception fault) when (fault is InvalidOperationException or ArgumentException or IndexOutOfRangeException
            or NullReferenceException)
        {
            throw Broken(_parser.Current?.End ?? new Mark(0, 1, 1));
        }
    }

    private static RefusedException Broken(Mark at) =>
        new(at, "this is not YAML", "Look at quotes, colons, brackets and indentation from here on");

    /// <summary>The parser's words without the marks that it puts in front.</summary>
    private static string Reason(YamlException fault)
    {
        var text = (fault.InnerException ?? fault).Message;
        var end = text.IndexOf("): ", StringComparison.Ordinal);
        text = end < 0 ? text : text[(end + 3)..];
        return char.ToLowerInvariant(text[0]) + text[1..].TrimEnd('.', '!');
    }

    private sealed class RefusedException(Mark start, string message, string mend) : Exception(message)
    {
        public Mark Start { get; } = start;

        public string Mend { get; } = mend;
    }
}
