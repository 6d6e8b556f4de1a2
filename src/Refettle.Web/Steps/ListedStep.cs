using Refettle.Access;

namespace Refettle.Web.Steps;

/// <summary>A step that stands in the list, with the cautions of what follows from it without work: that is in no list.</summary>
/// <param name="Index">Its place in the plan, from 0.</param>
public sealed record ListedStep(int Index, Step Step, ValueList<string> Cautions)
{
    /// <summary>In the order of the plan.</summary>
    public static ValueList<ListedStep> Of(Plan plan) => PlanOutline.Of(plan).Chapters.SelectMany(chapter => chapter.Lines)
        .Select(line => new ListedStep(line.Index, line.Step, line.Cautions.ToValueList())).ToValueList();

    /// <summary>The step itself where it stands in no list.</summary>
    public static ListedStep Of(Plan plan, int index) =>
        Of(plan).FirstOrDefault(one => one.Index == index) ?? new(index, plan.Steps[index], plan.Steps[index].Cautions);
}
