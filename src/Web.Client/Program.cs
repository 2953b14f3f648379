using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using WitnessMark.Web.Client.BackRoom;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Shell;
using WitnessMark.Web.Client.Tour;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<House>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<PageScript>();
builder.Services.AddSingleton<Server>();
builder.Services.AddSingleton<DeskServer>();
builder.Services.AddSingleton<Tray>();
builder.Services.AddSingleton<Desk>();
builder.Services.AddSingleton<TourBook>();
builder.Services.AddSingleton(_ => new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) });
await builder.Build().RunAsync();
