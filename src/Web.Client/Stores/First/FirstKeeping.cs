using WitnessMark.FrontOffice.BeginVehicle;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.First;

/// <summary>Keeps what the first page makes.</summary>
public static class FirstKeeping
{
    /// <summary>Why it was not done; null when it was.</summary>
    public static Task<string?> Vehicle(Tray tray, Begun begun) => tray.Save(begun.Vehicle);

    /// <summary>The same for its systems and parts: all of them or none.</summary>
    public static async Task<string?> Tree(Server server, Tray tray, Begun begun) => begun.Changes.Count == 0 ? null
        : await TreeSaving.Apply(server, tray, begun.Changes) is { } not ? $"The vehicle is begun, its systems and parts are not yet. {not}" : null;

    public static Task<Reply<DemoLoaded>> Demo(this Server server) =>
        server.Send(HttpMethod.Post, "api/demo", new ByteArrayContent([]), WireJson.Default.DemoLoaded);
}
