using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Web.Words;

namespace Refettle.Web.CloseUp;

/// <summary>What can be said and done about one step of the way back.</summary>
/// <param name="Step">From the sheet.</param>
/// <param name="Fasteners">Where its new fasteners are; null when it takes none, or nothing is known of them.</param>
public sealed record ClosingStep(RefitStep Step, StepFasteners? Fasteners = null)
{
    /// <summary>Whether its torque is asked for when it is marked.</summary>
    public bool WantsTorque => Step is { Fact.Kind: FactKind.Open, Card.Joint: { AtRideHeight: false, Torque: not null } };

    /// <summary>The words of the button that marks it.</summary>
    public string Marks => Step.Fact.Kind switch
    {
        FactKind.Off => "It is on",
        FactKind.Open when Step.Card?.Joint.AtRideHeight == true => "Closed, snug",
        FactKind.Open => "Closed",
        _ when Step.Stance is not null && Step.Fact == Fact.State(Step.Stance) => "It stands so",
        _ => "Undone",
    };

    /// <summary>Number, side and minutes.</summary>
    public string Facts =>
        string.Join(" · ",
            new[] { Step.Side == Side.None ? null : $"{Step.Side} side", $"{Step.Takes}",
                Step.Origin == Origin.CommonPractice ? "common practice" : null }.OfType<string>());

    /// <summary>What is needed to tighten it, in lines; empty where nothing is tightened.</summary>
    public IEnumerable<string> Tight()
    {
        if (Step.Card is not { } card)
            return [];
        return
        [
            .. card.Joint.Torque is { } torque
                ? new[] { $"{torque}, {(card.Joint.Origin == Origin.Maker ? "the maker's figure" : $"not the maker's: {Plain.Word(card.Joint.Origin)}")}" }
                : [],
            .. card.General is { } general ? new[] { $"General range {general.Low} to {general.High}" } : [],
            .. card.Order.Count > 2 ? new[] { $"Order {string.Join(' ', card.Order)}" } : [],
            .. card.NewFasteners > 0 ? new[] { Fasteners?.Says ?? $"{card.NewFasteners} new" } : [],
            .. card.Says,
        ];
    }

    /// <summary>The entries that mark it, in order.</summary>
    /// <param name="torque">What the wrench said; null when nobody read it.</param>
    /// <param name="checks">How it was looked at once more.</param>
    public ValueList<Happening> Marked(NewtonMetres? torque, params ValueList<TighteningCheck> checks)
    {
        if (Step.Stance is { } stance && Step.Fact == Fact.State(stance))
            return [new StanceTaken(stance)];
        var back = new StepReversed(Step.Fact, null);
        if (Step.Fact.Kind != FactKind.Open || Step.Card is not { } card)
            return [back];
        return card.Joint.AtRideHeight ? [back, new JointTightened(card.Joint.Id, Tightness.Snug, null, null, null)]
            : torque is not null || checks.Count > 0
            ? [back, new JointTightened(card.Joint.Id, Tightness.Torqued, torque, null, null)
                { Checks = checks.Count == 0 ? null : checks }]
            : [back];
    }
}
