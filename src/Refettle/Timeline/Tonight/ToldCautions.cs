using Refettle.Timeline.Network;

namespace Refettle.Timeline.Tonight;

/// <summary>The cautions of a task that stand beside it in a short list.</summary>
/// <param name="Shown">What closes a gate, what can hurt or burn: always all of it; what the description says of a
/// way only as far as there is room.</param>
/// <param name="Further">The others: they stand at the steps.</param>
public sealed record ToldCautions(ValueList<string> Shown, ValueList<string> Further)
{
    private const int Room = 3;

    public static ToldCautions Of(Car car, WorkTask task)
    {
        var described = Described(car.Structure).ToHashSet();
        var own = task.Cautions.Where(described.Contains).Distinct().ToList();
        var room = Math.Max(0, Room - task.Cautions.Distinct().Count() + own.Count);
        var further = own.Skip(room).ToValueList();
        return new(task.Cautions.Distinct().Except(further).ToValueList(), further);
    }

    /// <summary>What kits and sheets say of their ways; all else the program finds by what is done where.</summary>
    private static IEnumerable<string> Described(Structure structure) =>
        structure.Joints.SelectMany(joint => joint.Ways).Concat(structure.States.SelectMany(state => state.Ways))
            .SelectMany(way => way.Cautions)
        .Concat(structure.Parts.Select(part => part.Out).Concat(structure.SubAssemblies.Select(unit => unit.Out))
            .SelectMany(way => way.Cautions.Concat(way.Refit?.Cautions ?? [])))
        .Concat(structure.Joints.SelectMany(joint => joint.Refit?.Cautions ?? []));
}
