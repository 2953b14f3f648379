using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>One row of every kind that has an address of its own; each stands on those before it.</summary>
static class RowsOfEachKind
{
    public static readonly Vehicle Van = new(Guid.NewGuid(), "Hartle van", "", "", 1934, "");
    public static readonly VehicleSystem Brakes = new(Guid.NewGuid(), Van.Id, "Brakes", 1);
    public static readonly Assembly RearAxle = new(Guid.NewGuid(), Brakes.Id, "Rear axle", 1);
    public static readonly Part Plate = new(Guid.NewGuid(), Brakes.Id, "Anchor plate", "", Hand.LH, 1, "", null, RearAxle.Id);
    public static readonly PartSample Old = new(Guid.NewGuid(), Plate.Id, "the old plate", SampleOrigin.TakenOff, null, []);
    public static readonly Job Make = Job.Plain(Guid.NewGuid(), Van.Id, Brakes.Id, Plate.Id, "Make the plate", WorkKind.Make, new(1, 2, 4), Cost.None("GBP"));

    static readonly Milestone s_rolls = new(Guid.NewGuid(), Van.Id, "It rolls", [Make.Id], 1, null);
    static readonly OwnedInstrument s_calliper = new(Guid.NewGuid(), "calliper", 0.02, 0.03, 0.01, false);

    /// <param name="Save">The row with a number in one of its fields.</param>
    public sealed record Way(string Address, Func<Tray, int, int, Task<string?>> Save);

    public static readonly ImmutableDictionary<string, Way> All = new Dictionary<string, Way>
    {
        [nameof(Vehicle)] = new(Addresses.Vehicle(Van.Id), (t, n, basedOn) => t.Save(Van with { Notes = $"{n}" }, basedOn)),
        [nameof(VehicleSystem)] = new(Addresses.System(Brakes.Id), (t, n, basedOn) => t.Save(Brakes with { Order = n }, basedOn)),
        [nameof(Assembly)] = new(Addresses.Assembly(RearAxle.Id), (t, n, basedOn) => t.Save(RearAxle with { Order = n }, basedOn)),
        [nameof(Part)] = new(Addresses.Part(Plate.Id), (t, n, basedOn) => t.Save(Plate with { Name = $"Anchor plate {n}" }, basedOn)),
        [nameof(PartSample)] = new(Addresses.Sample(Old.Id), (t, n, basedOn) => t.Save(Old with { Title = $"plate {n}" }, basedOn)),
        [nameof(Job)] = new(Addresses.Job(Make.Id), (t, n, basedOn) => t.Save(Make with { Hours = new(n, n + 1, n + 2) }, basedOn)),
        [nameof(Milestone)] = new(Addresses.Milestone(s_rolls.Id), (t, n, basedOn) => t.Save(s_rolls with { Weight = n }, basedOn)),
        [nameof(Means)] = new(Addresses.Means(Van.Id), (t, n, basedOn) => t.Save(Means.Usual(Van.Id) with { Benches = n % 20 }, basedOn)),
        [nameof(StandingOrder)] = new(Addresses.Order(Van.Id), (t, n, basedOn) => t.Save(new StandingOrder(Van.Id, [Make.Id], new DateOnly(2026, 1, 1).AddDays(n)), basedOn)),
        [nameof(WorkCalendar)] = new(Addresses.Calendar, (t, n, basedOn) => t.Save(WorkCalendar.Usual with { Source = $"own {n}" }, basedOn)),
        [nameof(Shop)] = new(Addresses.Shop, (t, n, basedOn) => t.Save(Shop.Usual with { Name = $"shed {n}" }, basedOn)),
        [nameof(OwnedInstrument)] = new(Addresses.Instrument(s_calliper.Id), (t, n, basedOn) => t.Save(s_calliper with { Resolution = n }, basedOn)),
    }.ToImmutableDictionary();

    /// <summary>What must stand before a row is taken: the rules of the records' foreign keys.</summary>
    public static string? Orphan(FlakyHost host, string text) =>
        new (string Field, string Address)[]
        {
            ($"\"vehicleId\":\"{Van.Id}\"", Addresses.Vehicle(Van.Id)), ($"\"systemId\":\"{Brakes.Id}\"", Addresses.System(Brakes.Id)), ($"\"assemblyId\":\"{RearAxle.Id}\"", Addresses.Assembly(RearAxle.Id)),
            ($"\"partId\":\"{Plate.Id}\"", Addresses.Part(Plate.Id)), ($"\"sampleId\":\"{Old.Id}\"", Addresses.Sample(Old.Id)), ($"\"jobId\":\"{Make.Id}\"", Addresses.Job(Make.Id)),
        }.Where(o => text.Contains(o.Field) && host.Versions(o.Address).Count == 0).Select(o => $"{o.Field} does not stand").FirstOrDefault();
}
