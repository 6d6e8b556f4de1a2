namespace Refettle.Web.Rooms;

/// <summary>A page that is reached from the list of a car's rooms.</summary>
/// <param name="Question">The question under which it stands in the list.</param>
/// <param name="Name">As shown.</param>
/// <param name="Says">What it answers, in a sentence.</param>
/// <param name="Page">Where it lies under the car's address; one that begins with / belongs to no car.</param>
public sealed record Room(string Question, string Name, string Says, string Page)
{
    /// <summary>Its address beneath the address of the pages.</summary>
    public string Address(string car) => Page.StartsWith('/') ? Page[1..] : $"car/{car}/{Page}";
}
