namespace Refettle.Checks;

/// <summary>Ways to open joints and to bring about states, and ways out.</summary>
internal static class WayCheck
{
    private static readonly string[] _postures = ["standing", "under", "inside", "bench"];

    public static void Run(string place, ValueList<Way> ways, Names names, FaultBook book)
    {
        var taken = new HashSet<string>();
        for (var i = 0; i < ways.Count; i++)
        {
            One(place, $"ways[{i}]", ways[i], names, book);
            if (!Identifier.IsValid(ways[i].Id))
                book.Error(place, $"ways[{i}].id", $"\"{ways[i].Id}\" cannot be an identifier",
                    "Use small letters, digits, - _ and . only");
            else if (!taken.Add(ways[i].Id))
                book.Error(place, $"ways[{i}].id", $"there is a way \"{ways[i].Id}\" already", "Give each way its own id");
        }
    }

    public static void Out(string place, WayOut way, Names names, FaultBook book)
    {
        book.Range(place, "out.off", way.Off.Value, 0, Minutes.Max, " min");
        book.Range(place, "out.on", way.On.Value, 0, Minutes.Max, " min");
        FactCheck.Run(place, "out.clear", way.Clear, names, book);
        Refit(place, "out.refit", way.Refit, names, book);
    }

    public static void Refit(string place, string path, RefitWay? back, Names names, FaultBook book)
    {
        if (back is null)
            return;
        book.Range(place, $"{path}.takes", back.Takes.Value, 0, Minutes.Max, " min");
        Posture(place, $"{path}.posture", back.Posture, book);
        if (string.IsNullOrWhiteSpace(back.Tool))
            book.Error(place, $"{path}.tool", "the tool is empty", "Name the tool, or write hands");
        FactCheck.Run(place, $"{path}.clear", back.Clear, names, book);
        for (var i = 0; i < back.Clear.Count; i++)
        {
            if (names.IsStance(back.Clear[i]))
                book.Error(place, $"{path}.clear[{i}]", $"{back.Clear[i]} is a stance",
                    "Leave it out: it goes back in the stance that it came apart in");
        }
    }

    public static void Posture(string place, string path, string? posture, FaultBook book)
    {
        if (posture is not null && !_postures.Contains(posture))
            book.Error(place, path, $"\"{posture}\" is not a posture", "Write standing, under, inside or bench");
    }

    private static void One(string place, string path, Way way, Names names, FaultBook book)
    {
        book.Range(place, $"{path}.open", way.Open.Value, 0, Minutes.Max, " min");
        book.Range(place, $"{path}.close", way.Close.Value, 0, Minutes.Max, " min");
        book.Range(place, $"{path}.odds", way.Odds ?? 0, 0, 1, "");
        book.Range(place, $"{path}.spends", way.Spends.Amount, 0, PartCheck.MostMoney, "");
        Posture(place, $"{path}.posture", way.Posture, book);
        if (string.IsNullOrWhiteSpace(way.Tool))
            book.Error(place, $"{path}.tool", "the tool is empty", "Name the tool, or write hands");
        FactCheck.Run(place, $"{path}.clear", way.Clear, names, book);
        Destroys(place, $"{path}.destroys", way.Destroys, names, book);
    }

    private static void Destroys(string place, string path, ValueList<string> destroys, Names names, FaultBook book)
    {
        for (var i = 0; i < destroys.Count; i++)
        {
            if (!names.Parts.TryGetValue(destroys[i], out var part))
                book.Unknown(place, $"{path}[{i}]", destroys[i], "a part", names.Parts.Keys);
            else if (part.Fixed)
                book.Error(place, $"{path}[{i}]", $"part {part.Id} is fixed and cannot be destroyed", "Name the part that is cut up");
        }
    }
}
