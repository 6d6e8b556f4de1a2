using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>Reads jobs.</summary>
internal static class JobReader
{
    public static Job Read(string id, Fields fields)
    {
        var origin = fields.Word("origin", fields.Context.Given);
        return new()
        {
            Id = id,
            Name = fields.Text("name") ?? PartReader.NameFrom(id),
            Wish = fields.Word("wish", Wish.Want),
            Goals = fields.Facts("goals"),
            With = fields.Identifiers("with"),
            Worth = Worth(fields, origin),
            Work = fields.Minutes("work") ?? Minutes.Zero,
            Parts = fields.Money("parts") ?? default,
            Waits = fields.Scalars("waits").Select(wait => Wait(wait, fields, origin)).OfType<JobWait>().ToValueList(),
            Origin = origin,
        };
    }

    private static Worth? Worth(Fields fields, Origin origin)
    {
        var text = fields.Text("worth");
        if (text is null)
            return null;
        var inPoints = text.EndsWith("points", StringComparison.Ordinal);
        var figures = (inPoints ? text[..^"points".Length] : text).Split("..", StringSplitOptions.TrimEntries);
        var numbers = figures.Select(figure => Quantity.TryNumber(figure, out var number) ? number : (decimal?)null).OfType<decimal>()
            .ToArray();
        if (numbers.Length == figures.Length && numbers.Length is 1 or 3)
            return new(numbers[0], numbers[numbers.Length / 2], numbers[^1], inPoints ? WorthUnit.Points : WorthUnit.Money, origin);
        fields.Fault(fields.Take("worth")!, $"worth is \"{text}\"",
            "Write one figure, or least..likely..most, like 250 or 100..250..400, in money, or with the word points after it");
        return null;
    }

    /// <summary>A wait in words: its kind, its days, what it is (<c>cure 1.5..3 d two coats</c>).</summary>
    private static JobWait? Wait(Scalar scalar, Fields fields, Origin origin)
    {
        var words = fields.Context.Text(scalar, fields.Place)
            .Split(' ', 4, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var figures = words.Length < 3 ? [] : words[1].Split("..");
        if (words.Length >= 3 && words[2] == "d" && figures.Length is 1 or 2 && EnumWords<WaitKind>.TryParse(words[0], out var kind)
            && Quantity.TryNumber(figures[0], out var days) && Quantity.TryNumber(figures[^1], out var most))
            return new(kind, words.Length > 3 ? words[3] : words[0], days, figures.Length == 2 ? most : null, origin);
        fields.Fault(scalar, $"\"{scalar.Text}\" is not a wait",
            $"Write its kind ({string.Join(", ", EnumWords<WaitKind>.All)}), its days and what it is, like cure 1.5..3 d two coats");
        return null;
    }
}
