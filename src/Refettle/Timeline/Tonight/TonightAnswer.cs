using Refettle.Timeline.Network;

namespace Refettle.Timeline.Tonight;

/// <summary>What can be finished now.</summary>
/// <param name="Offers">Best first; each can be finished by itself in the time there is.</param>
/// <param name="Evening">Some of them that together fit, in an order that works: a whole evening.</param>
/// <param name="NotNow">What is next otherwise, and what keeps it from tonight.</param>
public sealed record TonightAnswer(ValueList<Finishable> Offers, ValueList<string> Evening, ValueList<NotNow> NotNow)
{
    /// <summary>What can be ordered.</summary>
    public ValueList<Finishable> Orders => Offers.Where(offer => offer.Task.Kind == TaskKind.Order).ToValueList();

    /// <summary>The offers, of all orders the first only: they are told together, so that many of them do not hide the work.</summary>
    public IEnumerable<Finishable> WithOrdersAsOne => Offers.Where(offer => offer.Task.Kind != TaskKind.Order || offer == Orders[0]);
}

/// <summary>A task that can be finished.</summary>
/// <param name="Why">Why it is where it is in the list, in words.</param>
public sealed record Finishable(WorkTask Task, ValueList<string> Why);

/// <summary>A task that cannot be done or not be finished tonight.</summary>
public sealed record NotNow(WorkTask Task, string Why);
