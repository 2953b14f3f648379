using System.CommandLine;
using WitnessMark.Web.Hosting;

var port = new Option<int>("--port") { Description = "Port on this machine's loopback address; 0 takes a free one.", DefaultValueFactory = _ => ServeOptions.UsualPort };
var db = new Option<string?>("--db") { Description = "The records' SQLite file. It is made when it is not there." };
var address = new Option<string?>("--address") { Description = "Loopback only (127.0.0.1); any other address is refused." };
var lan = new Option<bool>("--lan") { Description = "Serves paired phones on the house's own network too, by HTTPS, at this machine's private addresses." };
var lanPort = new Option<int?>("--lan-port") { Description = $"Port on the house's network; {ServeOptions.UsualLanPort} when nothing is written." };
var lanAddress = new Option<string?>("--lan-address") { Description = "One of this machine's private addresses alone, instead of all of them." };
var root = new RootCommand("Serves Witness Mark to this machine's browser, and to paired devices in the house.\nExample: WitnessMark.Web --port 5170 --db van.db --lan") { port, db, address, lan, lanPort, lanAddress };
root.SetAction((asked, stop) => Serve.Run(
    new(asked.GetValue(port), asked.GetValue(db), asked.GetValue(address), Environment.GetEnvironmentVariable("ASPNETCORE_URLS"),
        asked.GetValue(lan), asked.GetValue(lanPort), asked.GetValue(lanAddress)), stop));
// The host itself closes on Ctrl+C and SIGTERM; two handlers would race for the exit code.
return await root.Parse(args).InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
