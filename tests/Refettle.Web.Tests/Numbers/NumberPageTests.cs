using Bunit;
using Refettle.Bench;
using Refettle.Web.Pages;

namespace Refettle.Web.Tests.Numbers;

public sealed class NumberPageTests : BunitContext
{
    [Fact]
    public void Every_number_is_listed_and_found_by_a_word()
    {
        var page = Render<NumbersPage>();
        Assert.Equal(BenchNumbers.All.Count, page.FindAll("li a").Count);
        page.Find("input").Input("wet film");
        Assert.Contains(page.FindAll("li a"), link => link.GetAttribute("href") == "numbers/wet-film");
    }

    [Fact]
    public void Every_number_has_a_labelled_form()
    {
        foreach (var number in BenchNumbers.All)
        {
            var page = Render<NumberPage>(parameters => parameters.Add(shown => shown.Name, number.Name));
            Assert.Equal(number.Inputs.Count, page.FindAll(".field > label").Count);
            Assert.All(page.FindAll(".field > label"), label => Assert.NotNull(page.Find("#" + label.GetAttribute("for"))));
        }
    }

    [Fact]
    public void Figures_with_their_units_give_an_answer()
    {
        var page = Render<NumberPage>(parameters => parameters.Add(shown => shown.Name, "preload"));
        page.FindAll("input")[0].Input("35.4");
        page.Find("select.unit").Change("lbf·ft");
        page.FindAll("input")[1].Input("M10");
        page.Find("form").Submit();
        // 35.4 lbf·ft = 48.0 N·m; 48 / (0.20 · 10 mm) = 24.0 kN
        Assert.Contains("23998", page.Find("section").TextContent);
        Assert.Contains("maker's figure comes first", page.Find("section").TextContent);
    }

    [Fact]
    public void A_unit_typed_with_the_figure_counts()
    {
        var page = Render<NumberPage>(parameters => parameters.Add(shown => shown.Name, "spring-energy"));
        page.FindAll("input")[0].Input("27.3");
        page.FindAll("input")[1].Input("15cm");
        page.Find("form").Submit();
        Assert.Contains("307.1 J", page.Find("section").TextContent);
        Assert.NotEmpty(page.FindAll(".caution"));
    }

    [Fact]
    public void What_is_wrong_is_told_beside_the_range()
    {
        var page = Render<NumberPage>(parameters => parameters.Add(shown => shown.Name, "preload"));
        page.FindAll("input")[0].Input("9000");
        page.Find("form").Submit();
        Assert.Contains("0.1 to 2000 N·m", page.Find(".faults").TextContent);
        Assert.Contains("thread", page.Find(".faults").TextContent);
        Assert.Equal("true", page.FindAll("input")[0].GetAttribute("aria-invalid"));
        Assert.Empty(page.FindAll("section"));
    }

    [Fact]
    public void An_unknown_number_leads_to_the_list() =>
        Assert.Equal("numbers",
            Render<NumberPage>(parameters => parameters.Add(shown => shown.Name, "preloud")).Find("p a").GetAttribute("href"));
}
