using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>The stores' desk, the hours and the calendar over HTTP. Each kind of row has the address of its name.</summary>
public sealed class DeskServer(Server server, Tray tray)
{
    /// <summary>As they stand, with those that wait here over them.</summary>
    public Task<Reply<ImmutableArray<Versioned<T>>>> Decisions<T>(Guid vehicle) where T : class, IDecision =>
        server.Laid(Kinds.Desk(typeof(T).Name, vehicle), DeskJson.Of<ImmutableArray<Versioned<T>>>(), (read, now, copy) => Overlay.Decisions(read, vehicle, now, copy), vehicle, _ => []);

    /// <summary>Those that stand, and those that wait here.</summary>
    public Task<Reply<ImmutableArray<T>>> Facts<T>(Guid vehicle) where T : class, IFact
    {
        var before = tray.Lying;
        return server.Laid(Kinds.Desk(typeof(T).Name, vehicle), DeskJson.Of<ImmutableArray<T>>(), (read, now, copy) => Overlay.Facts(read, vehicle, before, now, copy), vehicle, _ => []);
    }

    /// <summary>A stretch of those that stand, newest arrival first; the first begins with those that wait here.</summary>
    public async Task<Reply<Stretch<T>>> Newest<T>(Guid vehicle, Newest asked) where T : class, IFact
    {
        var before = tray.Lying;
        var reply = await server.Get($"{Kinds.Desk(typeof(T).Name, vehicle)}/newest?take={asked.Take}{(asked.Before is { } b ? $"&before={b}" : "")}{(asked.PartId is { } p ? $"&part={p}" : "")}", DeskJson.Of<Stretch<T>>());
        // A stretch that was never read here is cut out of the whole, when that was.
        if (reply.Away && asked.Before is null && await Facts<T>(vehicle) is { Away: false, Refusal: null } all) return all.As(facts => Cut(facts, asked));
        return reply.As(stretch => Overlay.Newest(stretch, vehicle, asked, before, tray.Lying, reply.AsOf is not null));
    }

    public async Task<Reply<HoursHistory>> Hours(Guid vehicle)
    {
        var before = tray.Lying;
        var reply = await server.Laid($"{Addresses.Vehicle(vehicle)}/hours", DeskJson.Of<HoursHistory>(), (read, _, _) => read, vehicle, _ => new([], [], []));
        var copy = reply.AsOf is not null;
        // Only when some of this device are about is it asked which jobs are the vehicle's.
        var own = before.Entries.Values.Concat(tray.Lying.Entries.Values).Any(e => Kinds.OfHours(e.Address)) || (copy && tray.Lying.Sent.Values.Any(s => Kinds.OfHours(s.Address)));
        if (!own || reply.Value is null) return reply;
        var jobs = await server.Jobs(vehicle);
        if (jobs.Value.IsDefault) return reply;
        var ids = jobs.Value.Select(j => j.Row.Id).ToHashSet();
        return reply.As(history => Overlay.Hours(history, ids, before, tray.Lying, copy));
    }

    public Task<Reply<Versioned<WorkCalendar>>> Calendar() =>
        server.Laid(Addresses.Calendar, DeskJson.Of<Versioned<WorkCalendar>>(), (read, now, copy) => Overlay.One(read, Addresses.Calendar, now, copy));

    public Task<Reply<Versioned<StandingOrder>>> Order(Guid vehicle) =>
        server.Laid(Addresses.Order(vehicle), DeskJson.Of<Versioned<StandingOrder>>(), (read, now, copy) => Overlay.One(read, Addresses.Order(vehicle), now, copy), vehicle, _ => new(new(vehicle, [], default), 0));

    /// <summary>Keeps a picture on this device and sends it; its id is good at once.</summary>
    /// <param name="stream">Of a JPEG, PNG or WebP picture.</param>
    public async Task<Reply<KeptPicture>> Keep(Stream stream)
    {
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes);
        var kept = await tray.Keep(bytes.ToArray());
        return kept.Ok ? new(new KeptPicture(kept.Value), false, null) : new(null, false, kept.Refusal!.Sentence);
    }

    /// <summary>A picture as it was kept.</summary>
    public Task<Reply<Picture>> Picture(string id) => server.Picture(id);

    static Stretch<T> Cut<T>(ImmutableArray<T> facts, Newest asked) where T : IFact
    {
        var own = asked.PartId is { } part ? [.. facts.Where(f => (f as IPartFact)?.PartId == part)] : facts;
        return new([.. own.Reverse().Take(asked.Take)], null, own.Length);
    }
}
