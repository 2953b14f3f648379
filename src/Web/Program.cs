using System.CommandLine;
using WitnessMark.Web.Hosting;

var port = new Option<int>("--port") { Description = "Port on this machine's loopback address; 0 takes a free one.", DefaultValueFactory = _ => ServeOptions.UsualPort };
var db = new Option<string?>("--db") { Description = "The records' SQLite file. It is made when it is not there." };
var address = new Option<string?>("--address") { Description = "Loopback only (127.0.0.1); any other address is refused." };
var root = new RootCommand("Serves Witness Mark to this machine's browser.\nExample: WitnessMark.Web --port 5170 --db van.db") { port, db, address };
root.SetAction((asked, stop) => Serve.Run(asked.GetValue(port), asked.GetValue(db), asked.GetValue(address), stop));
// The host itself closes on Ctrl+C and SIGTERM; two handlers would race for the exit code.
return await root.Parse(args).InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
