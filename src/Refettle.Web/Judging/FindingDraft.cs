using Refettle.Bench;

namespace Refettle.Web.Judging;

/// <summary>A finding while it is tapped together: one word of each scale at most, one reading at most.</summary>
/// <param name="part">The part that is looked at.</param>
public sealed class FindingDraft(Part part)
{
    private readonly Dictionary<string, string> _words = [];

    public ValueList<ConditionScale> Scales { get; } = ConditionScales.For(part);

    /// <summary>Every test that its scales know, by what is measured.</summary>
    public IEnumerable<(ConditionScale Scale, TestForm Form)> Tests =>
        Scales.SelectMany(scale => scale.Tests, (scale, form) => (scale, form));

    public string What { get; set; } = "";

    /// <summary>One value or several, with a blank between; the unit is the test's.</summary>
    public string Values { get; set; } = "";

    public string Step { get; set; } = "";

    public string Instrument { get; set; } = "";

    public string Note { get; set; } = "";

    public string? Word(string scale) => _words.GetValueOrDefault(scale);

    /// <summary>Chooses a word, or takes it back when it is chosen again.</summary>
    public void Tap(string scale, string word)
    {
        if (!_words.Remove(scale, out var before) || before != word)
            _words[scale] = word;
    }

    public bool IsEmpty => _words.Count == 0 && What.Length == 0;

    /// <summary>The findings, or why they are none yet.</summary>
    public Result<ValueList<Finding>> Read()
    {
        var found = _words.Select(pair => new Finding { Of = $"part {part.Id}", Scale = pair.Key, Word = pair.Value, Note = Text(Note) })
            .ToList();
        if (What.Length == 0)
            return found.Count > 0
                ? Result<ValueList<Finding>>.Good(found.ToValueList())
                : Bad("nothing is said yet", "Tap a word, or choose what was measured.");
        var (scale, form) = Tests.First(test => test.Form.What == What);
        var values = Numbers(Values);
        var step = Step.Trim().Length == 0 ? null : Numbers(Step);
        if (values is not { Count: > 0 } || step is { Count: not 1 } || (Step.Trim().Length > 0 && step is null))
            return Bad($"{What}: that is no number",
                $"Write {Units.Find(form.Unit)?.Symbol ?? form.Unit} as 0.42, several readings with a blank between.");
        found.Add(new()
        {
            Of = $"part {part.Id}",
            Scale = scale.Id,
            Note = _words.Count == 0 ? Text(Note) : null,
            Reading = new(What, values.ToValueList(), form.Unit, Text(Instrument), step?[0])
        });
        return Result<ValueList<Finding>>.Good(found.ToValueList());
    }

    private static string? Text(string text) => text.Trim().Length == 0 ? null : text.Trim();

    private static List<decimal>? Numbers(string text)
    {
        var numbers = new List<decimal>();
        foreach (var word in text.Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (!decimal.TryParse(word.Replace(',', '.'),
                System.Globalization.NumberStyles.AllowDecimalPoint | System.Globalization.NumberStyles.AllowLeadingSign,
                System.Globalization.CultureInfo.InvariantCulture, out var number))
                return null;
            numbers.Add(number);
        }

        return numbers;
    }

    private static Result<ValueList<Finding>> Bad(string found, string mend) =>
        Result<ValueList<Finding>>.Bad(new Fault("finding", found, mend));
}
