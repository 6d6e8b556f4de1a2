using Microsoft.AspNetCore.Components;
using Refettle.Web.Stores;

namespace Refettle.Web.Pages;

/// <summary>A page about the stock of all cars, reached from one of them.</summary>
public abstract class StockPage : CarPage
{
    [Inject] protected Storeroom Store { get; set; } = null!;

    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        await Store.OpenAsync();
    }
}
