using System.Globalization;

namespace Refettle.Coating;

/// <summary>Stages of a coating system as they are typed: <c>epoxy</c>, <c>top*2</c> for two coats in one session.</summary>
public static class StageWords
{
    /// <param name="words">In their order.</param>
    public static Result<ValueList<CoatStage>> Read(IEnumerable<string> words)
    {
        var read = words.Select(word => (word, Stage: Stage(word))).ToList();
        var faults = read.Where(one => one.Stage is null)
            .Select(one => new Fault("coating system", $"\"{one.word}\" is no stage", "Write a product, or top*2 for two coats of it."))
            .ToList();
        return faults.Count > 0
            ? Result<ValueList<CoatStage>>.Bad(faults)
            : Result<ValueList<CoatStage>>.Good(read.Select(one => one.Stage!).ToValueList());
    }

    private static CoatStage? Stage(string word) => word.Split('*', StringSplitOptions.TrimEntries) switch
    {
        [{ Length: > 0 } product] => new(product),
        [{ Length: > 0 } product, var count] when int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var coats) =>
            new(product, coats),
        _ => null,
    };
}
