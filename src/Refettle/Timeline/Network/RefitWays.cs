using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Access.Fire;
using Refettle.Access.Ordering;

namespace Refettle.Timeline.Network;

/// <summary>The car as the refit meets it: steps as they are taken back, and what each needs then.</summary>
internal sealed class RefitWays
{
    private readonly CarStanding _back;
    private readonly WayCatalogue _catalogue;
    private readonly CarStanding _apart;

    public RefitWays(CarStanding apart)
    {
        (_apart, _back) = (apart, new(apart.Car with { Structure = Backwards.Of(apart.Car.Structure) }));
        _catalogue = new(_back, [], isGated: false);
    }

    /// <summary>Whether a step is taken back by a way of its own.</summary>
    public static bool Has(CarStanding standing, Step step) => Of(standing, step) is not null;

    /// <summary>Facts that must hold while it is taken back, stances left out; those of the strip where nothing else is said.</summary>
    public IEnumerable<Fact> Needs(Step step) => StepNeeds.Facts(_back, step).Concat(Has(_apart, step) ? Fire(step) ?? [] : []).Distinct();

    /// <summary>Whether it would be put together with flame or sparks at what itself burns or goes off.</summary>
    public bool IsNever(Step step) => Has(_apart, step) && Fire(step) is null;

    /// <summary>With tool, posture and cautions of the way back.</summary>
    public Step Taken(Step step)
    {
        if (Of(_apart, step) is not { } own || _catalogue.Of(step.Fact).FirstOrDefault(way => way.Name == step.Way) is not { } way)
            return step;
        var place = Workplace.Zone(way, _back);
        var cautions = Access.Cautions.Of(way, _back, further: HotWork.Of(own));
        return step with
        {
            Tool = own.Tool,
            Posture = own.Posture ?? Workplace.Posture(way, place, _back) ?? step.Posture,
            Cautions = own.Posture == Workplace.Under ? cautions.Append(UsualCautions.Under).Distinct().ToValueList() : cautions,
            Origin = own.Origin,
        };
    }

    private static RefitWay? Of(CarStanding standing, Step step) => step.Fact.Kind switch
    {
        FactKind.Open => standing.Joints[step.Fact.Subject].Refit,
        FactKind.Off when step.Way.StartsWith("with ", StringComparison.Ordinal) => null,
        FactKind.Off when standing.Parts.TryGetValue(step.Fact.Subject, out var part) => part.Out.Refit,
        FactKind.Off => standing.SubAssemblies[step.Fact.Subject].Out.Refit,
        _ => null,
    };

    private IReadOnlyList<Fact>? Fire(Step step) =>
        FireNeeds.Of(_back, HotWork.Of(Of(_apart, step)!), FireNeeds.HeldBy(step.Fact, _back), step.Place == Workplace.Bench);
}
