using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Forecast.OfCar;

/// <summary>The forecast of a car, with what it stands on.</summary>
/// <param name="Assumed">What was assumed, and where each figure comes from, in words.</param>
public sealed record CarForecast(
    ForecastAnswer Answer, Projection Projection, double Confidence, ValueList<string> Assumed, ValueList<Fault> Notes)
{
    /// <summary>The clock on the wall at a time of the answer.</summary>
    public LocalDateTime At(int time) => Projection.Clock.At(time);

    public WorkTask Task(int place) => Projection.Tasks[place];

    /// <summary>The words of a task, by its identifier.</summary>
    public string Says(string id) => Projection.Tasks.FirstOrDefault(task => task.Id == id)?.Says ?? id;

    /// <summary>Plays the futures.</summary>
    public static Result<CarForecast> Of(CarForecastQuestion question, CancellationToken cancel = default)
    {
        var futures = new CarFutures(question);
        var asked = futures.Question();
        if (!asked.IsGood)
            return Result<CarForecast>.Bad(asked.Faults);
        var answer = Forecaster.Of(asked.Value, cancel);
        return answer.IsGood
            ? Result<CarForecast>.Good(new(answer.Value, question.Projection, question.Confidence, futures.Assumed,
                [.. question.Network.Notes, .. question.Projection.Notes]))
            : Result<CarForecast>.Bad(answer.Faults);
    }
}
