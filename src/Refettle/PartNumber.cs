namespace Refettle;

/// <summary>What state pieces are in. Old and new are never counted together.</summary>
public enum PieceCondition
{
    New,
    Used,
    Refurbished,
}

/// <summary>Pieces that are alike in every way that matters: one part number, one condition, one age.</summary>
/// <param name="Number">A part number as <see cref="PartNumber.Canonical"/> writes it.</param>
/// <param name="Made">When rubber was made, where it is known.</param>
/// <param name="UseBy">After this day it is not fitted any more; null when it does not age.</param>
public sealed record Batch(string Number, PieceCondition Condition = PieceCondition.New, DateOnly? Made = null, DateOnly? UseBy = null);

/// <summary>So many pieces of a part number.</summary>
public sealed record NumberCount(string Number, int Count);

/// <summary>A number that may serve for another.</summary>
/// <param name="Caveat">What is different, in words: <c>cut a slit first</c>; empty when nothing is known.</param>
public sealed record Substitute(string Number, string Caveat);

/// <summary>What is known of a part number. The number that stands on a part is what it was: it may have been superseded since.</summary>
public sealed record PartNumber
{
    public const int MaxLength = 40;

    /// <summary>Canonical.</summary>
    public required string Id { get; init; }

    public string Name { get; init; } = "";

    /// <summary>The number that took its place; pieces of that one serve for this one. Null while it is current.</summary>
    public string? SupersededBy { get; init; }

    /// <summary>Pieces of this old number serve just as well where the new one is asked for.</summary>
    public bool ServesForNew { get; init; }

    public ValueList<Substitute> Substitutes { get; init; } = [];

    /// <summary>A kit: what one of it contains. Empty for a single part.</summary>
    public ValueList<NumberCount> Contains { get; init; } = [];

    /// <summary>Made up at home: what one of it takes. Empty when it is bought.</summary>
    public ValueList<NumberCount> MadeFrom { get; init; } = [];

    /// <summary>Only sold inside a kit.</summary>
    public bool KitOnly { get; init; }

    /// <summary>Months from its making until it is not fitted any more; null when it does not age.</summary>
    public int? ShelfLifeMonths { get; init; }

    /// <summary>The chance, 0 to 1, that one breaks when it is taken off or fitted; null when nothing is known.</summary>
    public decimal? Breaks { get; init; }

    /// <summary>Where the shelf life and the chance come from.</summary>
    public Origin Origin { get; init; }

    /// <summary>Capital letters, single blanks, none at the ends: so that one number is one number however it is typed.</summary>
    public static string Canonical(string text) =>
        string.Join(' ', text.ToUpperInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    /// <summary>Whether it is written as <see cref="Canonical"/> writes it, is not empty and not too long, and
    /// is free of control characters.</summary>
    public static bool IsValid(string? text) =>
        text is { Length: > 0 and <= MaxLength } && text == Canonical(text) && !text.Any(char.IsControl);
}

/// <summary>The part number that goes onto a part or joint of a car, and how many.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>.</param>
/// <param name="Count">Pieces for the whole of it, 1 or more.</param>
public sealed record PositionNumber(string Thing, string Number, int Count);

/// <summary>New pieces that the owner wants for a part or joint, whatever a plan uses up.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>.</param>
/// <param name="Count">Those that did not go onto it yet, 1 or more.</param>
public sealed record Want(string Thing, int Count);
