using Microsoft.AspNetCore.Components;
using Refettle.Web.Garage;

namespace Refettle.Web.Pages;

/// <summary>A page about one car; it is drawn anew whenever the car changes.</summary>
public abstract class CarPage : ComponentBase, IDisposable
{
    [Parameter] public string Id { get; set; } = "";

    [Inject] protected OpenCar Open { get; set; } = null!;

    protected override void OnInitialized() => Open.Changed += Draw;

    [Inject] private FurtherPart Further { get; set; } = null!;

    protected override async Task OnParametersSetAsync()
    {
        await Open.OpenAsync(Id);
        Further.FetchAhead();
    }

    public void Dispose()
    {
        Open.Changed -= Draw;
        GC.SuppressFinalize(this);
    }

    private void Draw() => _ = InvokeAsync(StateHasChanged);
}
