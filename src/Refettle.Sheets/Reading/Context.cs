using Refettle.Sheets.Tree;

namespace Refettle.Sheets.Reading;

/// <summary>What holds for a whole file: where its faults go, what its figures count as, which names in braces it knows.</summary>
/// <param name="Given">The origin of a figure that does not name one.</param>
/// <param name="Braces">In a kit, the names that may stand in braces; null in a sheet.</param>
internal sealed record Context(FaultList Faults, Origin Given, IReadOnlySet<string>? Braces)
{
    /// <summary>A text; in a kit, with the names in braces checked.</summary>
    public string Text(Scalar scalar, string place)
    {
        if (Braces is not null)
            CheckBraces(scalar, place);
        return scalar.Text.Trim();
    }

    /// <summary>An identifier of a kit. Those of a sheet are checked with the structure, where references are.</summary>
    public void Identifier(Scalar scalar, string place)
    {
        if (Braces is null)
            return;
        CheckBraces(scalar, place);
        if (!Refettle.Identifier.IsTemplate(scalar.Text))
            Faults.Add(scalar, place, $"\"{scalar.Text}\" cannot be an identifier",
                "Use small letters, digits, - _ . and names in braces only");
    }

    public T Word<T>(Node at, string place, string key, string text, T otherwise)
        where T : struct, Enum
    {
        if (EnumWords<T>.TryParse(text, out var value))
            return value;
        Faults.Add(at, place, $"{key} is \"{text}\"",
            Faults.Suggest(text, EnumWords<T>.All, $"Known are {string.Join(", ", EnumWords<T>.All)}."));
        return otherwise;
    }

    public Fact? Fact(Scalar scalar, string place)
    {
        if (Braces is not null)
            CheckBraces(scalar, place);
        if (Braces is null ? Refettle.Fact.TryParse(scalar.Text, out var fact) : Refettle.Fact.TryParseTemplate(scalar.Text, out fact))
            return fact;
        Faults.Add(scalar, place, $"\"{scalar.Text}\" is not a fact",
            "Write off(part), free(part), open(joint), state(state) or reach(space)");
        return null;
    }

    private void CheckBraces(Scalar scalar, string place)
    {
        foreach (var name in Kits.Braces.In(scalar.Text).Where(name => !Braces!.Contains(name)))
        {
            Faults.Add(scalar, place, $"{{{name}}} is neither p, side, Side, zone nor a hole of this kit",
                Faults.Suggest(name, Braces!, "Describe the hole, or correct the name."));
        }
    }
}
