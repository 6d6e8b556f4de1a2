using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Refettle.Web;
using Refettle.Web.Garage;
using Refettle.Web.Times;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton(new HttpClient { BaseAddress = new(builder.HostEnvironment.BaseAddress) });
builder.Services.AddSingleton<ServerApi>();
builder.Services.AddSingleton<IKeeper, BrowserKeeper>();
builder.Services.AddSingleton<IPhotoKeeper, BrowserPhotoKeeper>();
builder.Services.AddSingleton<PhotoOutbox>();
builder.Services.AddSingleton<OpenCar>();
builder.Services.AddSingleton<LadderShelf>();
builder.Services.AddSingleton<Shelf>();
builder.Services.AddSingleton<Refettle.Web.Stores.Storeroom>();
builder.Services.AddSingleton<TimelineBook>();
await builder.Build().RunAsync();
