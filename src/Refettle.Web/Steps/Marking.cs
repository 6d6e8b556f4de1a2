using Refettle.CloseUp;
using Refettle.Web.Garage;

namespace Refettle.Web.Steps;

/// <summary>What one tap marks, and what one takes back.</summary>
public static class Marking
{
    extension(OpenCar open)
    {
        /// <summary>Marks a step of the plan that is followed done, or takes the mark back.</summary>
        /// <returns>What forbids it, and then nothing is written; or what of it is odd.</returns>
        public async Task<ValueList<Fault>> TickAsync(int step)
        {
            var one = open.Plan!.Steps[step];
            var isStance = open.Car!.IsStance(one.Fact);
            var mark = open.Progress!.Done[step] ? StepMarks.Back(open.History!, one.Fact, isStance) : StepMarks.Done(one, isStance);
            return mark is null ? [] : await open.MarkAsync(mark);
        }

        /// <summary>Takes back what was marked last.</summary>
        public Task UndoAsync() =>
            open.History is { } history && StepMarks.Last(history) is { } mark ? open.StrikeAsync(mark.Entry.Id) : Task.CompletedTask;

        /// <summary>Takes back what was put back last.</summary>
        public async Task UndoClosingAsync()
        {
            foreach (var mark in LastClosed.Of(open.History!))
                await open.StrikeAsync(mark);
        }
    }
}
