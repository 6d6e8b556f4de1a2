using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>The keys of one thing. Every read key counts as known; <see cref="Done"/> reports the others.</summary>
internal sealed class Fields(Mapping map, string place, Context context)
{
    private readonly bool[] _read = new bool[map.Pairs.Count];
    private readonly List<string> _asked = [];

    public Mapping Map => map;

    public string Place => place;

    public Context Context => context;

    public bool Has(string key) => Take(key) is not null;

    /// <summary>The value of a key; null when it is not there or left empty.</summary>
    public Node? Take(string key)
    {
        var i = map.IndexOf(key);
        if (i < 0 || !_read[i])
            _asked.Add(key);
        if (i < 0)
            return null;
        _read[i] = true;
        return map.Pairs[i].Value is not Scalar { IsNothing: true } ? map.Pairs[i].Value : null;
    }

    public string? Text(string key)
    {
        switch (Take(key))
        {
            case null:
                return null;
            case Scalar scalar:
                return context.Text(scalar, place);
            case var other:
                Fault(other, $"{key} is a list or a set of keys", "Write one value");
                return null;
        }
    }

    /// <summary>A text that has to be there.</summary>
    public string Needed(string key, string example)
    {
        if (!Has(key))
            Missing(key, example);
        return Text(key) ?? "";
    }

    public string Identifier(string key, string otherwise)
    {
        var text = Text(key);
        if (text is not null && Take(key) is Scalar scalar)
            context.Identifier(scalar, place);
        return text ?? otherwise;
    }

    public bool Flag(string key)
    {
        var text = Text(key);
        if (text is not (null or "true" or "false"))
            Fault(Take(key)!, $"{key} is \"{text}\"", "Write true or false");
        return text == "true";
    }

    public decimal? Number(string key)
    {
        var text = Text(key);
        if (text is null)
            return null;
        if (Quantity.TryNumber(text, out var number))
            return number;
        Fault(Take(key)!, $"{key} is \"{text}\", which is not a number", "Write a plain number, with a decimal point if need be");
        return null;
    }

    public int? Whole(string key)
    {
        var number = Number(key);
        if (number is null || (number == decimal.Truncate(number.Value) && Math.Abs(number.Value) <= int.MaxValue))
            return (int?)number;
        Fault(Take(key)!, $"{key} is {number}", "Write a whole number");
        return null;
    }

    public T Word<T>(string key, T otherwise)
        where T : struct, Enum
    {
        var text = Text(key);
        return text is null ? otherwise : context.Word(Take(key)!, place, key, text, otherwise);
    }

    public Minutes? Minutes(string key) => Read(key, Quantity.TryMinutes) is { } value ? new Minutes(value) : null;

    public Kilograms? Kilograms(string key) => Read(key, Quantity.TryKilograms) is { } value ? new Kilograms(value) : null;

    public NewtonMetres? Torque(string key) => Read(key, Quantity.TryNewtonMetres) is { } value ? new NewtonMetres(value) : null;

    public Money? Money(string key) => Number(key) is { } value ? new Money(value) : null;

    /// <summary>The single values of a list; a lone value counts as a list of one.</summary>
    public IEnumerable<Scalar> Scalars(string key)
    {
        var value = Take(key);
        foreach (var item in value is Sequence list ? list.Items : value is null ? [] : [value])
        {
            if (item is Scalar scalar)
                yield return scalar;
            else
                Fault(item, $"an item of {key} is not a single value", "Put a text with a colon, comma or bracket in it into quotes");
        }
    }

    public ValueList<string> Texts(string key) => Scalars(key).Select(item => context.Text(item, place)).ToValueList();

    public ValueList<string> Identifiers(string key) => Scalars(key).Select(item =>
    {
        context.Identifier(item, place);
        return item.Text;
    }).ToValueList();

    public ValueList<T> Words<T>(string key)
        where T : struct, Enum =>
        Scalars(key).Select(item => context.Word<T>(item, place, key, item.Text, default)).ToValueList();

    public ValueList<Fact> Facts(string key) => Scalars(key).Select(item => context.Fact(item, place))
        .OfType<Fact>().ToValueList();

    /// <summary>The keys below a key; null when it is not there or has no keys.</summary>
    public Fields? Below(string key)
    {
        switch (Take(key))
        {
            case null:
                return null;
            case Mapping mapping:
                return new(mapping, place, context);
            case var other:
                Fault(other, $"{key} is not a set of keys", $"Write {key}: with keys below it, or {{ key: value }}");
                return null;
        }
    }

    public void Missing(string key, string example) => Fault(map, $"{key} is missing", $"Write {key}: {example}");

    public void Fault(Node at, string found, string mend) => context.Faults.Add(at, place, found, mend);

    /// <summary>Reports keys that nobody asked for.</summary>
    public void Done() => Done(this);

    /// <summary>Reports keys that none of several readers of the same thing asked for.</summary>
    public static void Done(params Fields[] readers)
    {
        var first = readers[0];
        for (var i = 0; i < first._read.Length; i++)
        {
            if (!readers.Any(reader => reader._read[i]))
                first.ReportUnasked(first.Map.Pairs[i], readers.SelectMany(reader => reader._asked).Distinct());
        }
    }

    private void ReportUnasked(Pair pair, IEnumerable<string> asked) =>
        Fault(pair.Key, $"\"{pair.Key.Text}\" is not a key here",
                context.Faults.Suggest(pair.Key.Text, asked, $"Known are {string.Join(", ", asked)}."));

    private delegate bool TryRead(string text, out decimal value, out string found, out string mend);

    private decimal? Read(string key, TryRead read)
    {
        var text = Text(key);
        if (text is null)
            return null;
        if (read(text, out var value, out var found, out var mend))
            return value;
        Fault(Take(key)!, $"{key}: {found}", mend);
        return null;
    }
}
