namespace Refettle;

/// <summary>What money goes for.</summary>
public enum SpendKind
{
    Parts,

    /// <summary>What is used up: discs, paint, cleaner, gloves.</summary>
    Consumables,

    OutsideWork,

    /// <summary>Bought or hired.</summary>
    Tools,

    Other,
}

/// <summary>Money that was paid, or came back.</summary>
/// <param name="Amount">In the car's currency, more than 0.</param>
/// <param name="For">What for, in words.</param>
/// <param name="About">What it is about: <c>job x</c>, or a thing of the car such as <c>part x</c>; null for the car as a whole.</param>
/// <param name="Settles">The order or outside work that it pays: their entry. What that was to cost is then
/// not counted besides. Null for none.</param>
/// <param name="Attachment">The receipt: the hash of a photo or file kept with the car, or in words where the
/// paper lies; null when none is kept.</param>
/// <param name="IsRefund">The money came back.</param>
public sealed record Receipt(
    Money Amount, string For, SpendKind Kind, string? About, Guid? Settles, string? Attachment, DateOnly On, bool IsRefund = false);
