using Microsoft.AspNetCore.Server.Kestrel.Core;
using WitnessMark.Stores.Devices;

namespace WitnessMark.Web.Hosting;

/// <summary>Marks the connections that the loopback listener took. A listener that somebody adds by configuration bears no mark, and is kept as strictly as the house's network.</summary>
static class Desk
{
    sealed class Mark;

    static readonly Mark TheMark = new();

    extension(HttpContext context)
    {
        /// <summary>It came from a program on this machine, by the listener that only this machine reaches.</summary>
        public bool FromDesk => context.Features.Get<Mark>() is not null;

        /// <summary>The paired device that asks; null at the desk and for one that is not paired.</summary>
        public PairedDevice? Device => context.Features.Get<PairedDevice>();
    }

    public static void MarkDesk(this ListenOptions listener) => listener.Use(next => connection =>
    {
        connection.Features.Set(TheMark);
        return next(connection);
    });
}
