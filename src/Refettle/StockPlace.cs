namespace Refettle;

/// <summary>Where pieces can be.</summary>
public enum StockPlaceKind
{
    Shelf,

    /// <summary>With a supplier: not bought yet, or sent back. Its name is the supplier's.</summary>
    Supplier,

    /// <summary>On a car, at a part or joint. Below 0 when pieces that were on the car from the beginning were taken off it.</summary>
    Car,

    /// <summary>At an outside shop. Its name is the entry that sent it out.</summary>
    Away,

    /// <summary>Broken on taking off or fitting.</summary>
    Broken,

    Scrapped,

    /// <summary>What counting found or missed.</summary>
    Counting,

    /// <summary>In kits that were opened, and in what was made up from single parts. Its name is the number
    /// of the kit or of what was made.</summary>
    Kit,
}

/// <summary>One place of pieces. Pieces only ever move from place to place, so they cannot be counted twice.</summary>
/// <param name="Name">Which one; empty where there is only one.</param>
public sealed record StockPlace(StockPlaceKind Kind, string Name = "")
{
    public static StockPlace Shelf { get; } = new(StockPlaceKind.Shelf);

    public static StockPlace Scrapped { get; } = new(StockPlaceKind.Scrapped);

    public static StockPlace Broken { get; } = new(StockPlaceKind.Broken);

    public static StockPlace Counting { get; } = new(StockPlaceKind.Counting);

    public static StockPlace Supplier(string name) => new(StockPlaceKind.Supplier, name);

    public static StockPlace Away(Guid sent) => new(StockPlaceKind.Away, sent.ToString("D"));

    public static StockPlace Kit(string number) => new(StockPlaceKind.Kit, number);

    /// <param name="thing"><c>part x</c> or <c>joint x</c>.</param>
    public static StockPlace On(string car, string thing) => new(StockPlaceKind.Car, $"{car}/{thing}");

    /// <summary>The car and the thing on it; null elsewhere.</summary>
    public (string Car, string Thing)? Position() =>
        Kind == StockPlaceKind.Car && Name.Split('/', 2) is [var car, var thing] ? (car, thing) : null;
}
