var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
builder.WebHost.UseStaticWebAssets();
var app = builder.Build();
app.MapStaticAssets();
app.MapFallbackToFile("index.html");
app.Run();
