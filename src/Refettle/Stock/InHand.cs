using Refettle.Stuck;

namespace Refettle.Stock;

/// <summary>What the shelf has of the things that a try at a joint destroys: the default for the gate that asks for them.</summary>
public static class InHand
{
    /// <param name="words">What tries destroy, as ladders name it: <c>bush</c>, <c>bolt</c>, <c>new fastener</c>.</param>
    /// <returns>Those of the words for which enough pieces are on the shelf, free or kept for this very place, and not too old. What is
    /// not clearly one of the joint's parts or its fastener is never taken to be there.</returns>
    public static ValueList<string> Of(Car car, Shelf shelf, Joint joint, IEnumerable<string> words, DateOnly today)
    {
        var positions = car.Numbers.ToDictionary(number => number.Thing);
        var parts = car.Structure.Parts.ToDictionary(part => part.Id);
        return words.Distinct().Where(word => Fastener(word) || Held(word)).ToValueList();

        bool Fastener(string word) => positions.TryGetValue($"joint {joint.Id}", out var position) && IsThere(car, shelf, position, today)
            && (Places(word).Contains(position.Thing) || TryPlaces.IsWordOf(shelf.NameOf(position.Number), word));

        bool Held(string word) =>
            Places(word).Any(place => place != $"joint {joint.Id}" && positions.TryGetValue(place, out var position)
                && IsThere(car, shelf, position, today));

        IEnumerable<string> Places(string word) => TryPlaces.Of(joint, word, parts);
    }

    /// <summary>What is ready for a joint: what someone says, and what the shelf has.</summary>
    public static AtHand With(AtHand said, Car car, Shelf shelf, Joint joint, LadderSet ladders, DateOnly today)
    {
        var words = ladders.For(joint.Kind).Values.SelectMany(ladder => ladder.Rungs).SelectMany(rung => rung.Destroys);
        return said with { InHand = [.. said.InHand.Concat(Of(car, shelf, joint, words, today)).Distinct()] };
    }

    /// <summary>All pieces of a position are there, under one number that is the same part.</summary>
    public static bool IsThere(Car car, Shelf shelf, PositionNumber position, DateOnly today) =>
        new Family(shelf.Numbers).ServingFor(position.Number)
        .Any(serving => serving.Caveat.Length == 0
            && Picking.Of(shelf, serving.Number, position.Count, today, position: (car.Id, position.Thing)).IsGood);
}
