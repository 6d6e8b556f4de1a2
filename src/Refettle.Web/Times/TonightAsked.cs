using NodaTime;
using Refettle.Timeline.Tonight;
using Refettle.Web.Garage;

namespace Refettle.Web.Times;

/// <summary>What somebody says of his evening.</summary>
public sealed record TonightAsked(int Minutes, bool IsTired, bool KeepClean, bool HasHelper)
{
    /// <summary>Minutes to choose from.</summary>
    public static ValueList<int> Choices { get; } = [30, 60, 90, 120, 180];

    public TonightQuestion Of(Car car, TimelineShown shown, Instant now) => new()
    {
        Car = car,
        Network = shown.Network,
        Now = now,
        Minutes = new(Minutes),
        Energy = IsTired ? Energy.Low : Energy.Usual,
        KeepClean = KeepClean,
        HasHelper = HasHelper,
        Critical = shown.Answer.Tasks.Where(task => task.IsCritical).Select(task => task.Task.Id).ToValueList(),
    };
}
