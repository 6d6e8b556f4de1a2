using Refettle.Logbook;
using Refettle.SaleFile;

namespace Refettle.Web.Rooms;

/// <summary>What is chosen on the page of the sale file.</summary>
public sealed class SaleChoices
{
    public bool Prices { get; set; }

    public bool Names { get; set; }

    public bool Hours { get; set; } = true;

    public DeclarationTopic Topic { get; set; } = DeclarationTopic.Claim;

    public string Text { get; set; } = "";

    /// <summary>Words of the text that promise too much.</summary>
    public ValueList<Overclaim> Overclaims => WordingGuard.Of(Text, isShown: false);

    public Declared? Declared => Text.Trim() is { Length: > 0 } text ? new(Topic, text, null, []) : null;

    /// <param name="form">html or pdf.</param>
    public string Address(string car, string form) =>
        $"api/cars/{car}/sale-file.{form}?prices={Word(Prices)}&names={Word(Names)}&hours={Word(Hours)}";

    /// <summary>A topic in words.</summary>
    public static string Of(DeclarationTopic topic) => topic switch
    {
        DeclarationTopic.Claim => "What speaks for the car",
        DeclarationTopic.Open => "A known fault, or work left",
        DeclarationTopic.RoadTest => "Roadworthiness test",
        DeclarationTopic.Title => "Title and registration",
        DeclarationTopic.Recall => "Recall",
        _ => "Modification",
    };

    private static string Word(bool chosen) => chosen ? "true" : "false";
}
