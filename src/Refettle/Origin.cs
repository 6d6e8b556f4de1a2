namespace Refettle;

/// <summary>Where a figure comes from. A default is never dressed as a fact: it is shown with its origin.</summary>
public enum Origin
{
    /// <summary>Filled in by the program because nothing was given.</summary>
    Default,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,

    /// <summary>Entered by the user from judgement.</summary>
    User,

    /// <summary>Measured or timed on this car.</summary>
    Measured,

    /// <summary>From the maker: the vehicle's manual, a product's data sheet.</summary>
    Maker,
}
