using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Lays what waits in the tray over what was read, so that it is seen at once. Ids tell what is there already.</summary>
static class Overlay
{
    /// <summary>Rows of one kind that may be missing in what was read: those that wait, and over a copy those sent lately.</summary>
    /// <param name="before">What lay in the tray when the reading began: it may have been sent meanwhile and missed the answer.</param>
    public static ImmutableArray<T> Own<T>(Lying before, Lying now, bool copy) where T : class
    {
        var kind = typeof(T).Name;
        var texts = before.Entries.Values.Concat(now.Entries.Values).Where(e => e.Kind == kind && e.Refusal is null).Select(e => (e.Key, e.Text));
        if (copy) texts = texts.Concat(now.Sent.Values.Where(s => s.Kind == kind && s.Version == 0).Select(s => (s.Key, s.Text)));
        return [.. texts.GroupBy(t => t.Key, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Spelling.Read<T>(g.First().Text)).OfType<T>()];
    }

    public static ImmutableArray<T> Facts<T>(ImmutableArray<T> read, Guid vehicle, Lying before, Lying now, bool copy) where T : class, IFact
    {
        var there = read.Select(f => f.Id).ToHashSet();
        var own = Own<T>(before, now, copy).Where(f => f.VehicleId == vehicle && !there.Contains(f.Id));
        return Rows.Standing([.. read, .. own], typeof(T) == typeof(TakenBack) ? [] : Own<TakenBack>(before, now, copy));
    }

    /// <summary>The newest stretch begins with what waits.</summary>
    public static Stretch<T> Newest<T>(Stretch<T> read, Guid vehicle, Newest asked, Lying before, Lying now, bool copy) where T : class, IFact
    {
        var gone = Own<TakenBack>(before, now, copy).Select(t => t.FactId).ToHashSet();
        var stand = read.Rows.Where(f => !gone.Contains(f.Id)).ToImmutableArray();
        var there = read.Rows.Select(f => f.Id).ToHashSet();
        var own = asked.Before is not null ? []
            : Own<T>(before, now, copy).Where(f => f.VehicleId == vehicle && !there.Contains(f.Id) && !gone.Contains(f.Id) && (asked.PartId is null || (f as IPartFact)?.PartId == asked.PartId)).Reverse().ToList();
        return new([.. own, .. stand], read.Before, read.Count - (read.Rows.Length - stand.Length) + own.Count);
    }

    public static ImmutableArray<Versioned<T>> Decisions<T>(ImmutableArray<Versioned<T>> read, Guid vehicle, Lying now, bool copy) where T : class, IDecision =>
        Over(read, d => d.Id, d => d.VehicleId == vehicle, now, copy);

    /// <summary>A waiting decision stands at the version it was built on.</summary>
    /// <param name="own">Whether a row that was not read belongs among these.</param>
    public static ImmutableArray<Versioned<T>> Over<T>(ImmutableArray<Versioned<T>> read, Func<T, Guid> id, Func<T, bool> own, Lying now, bool copy) where T : class
    {
        var rows = read;
        if (copy)
            foreach (var s in now.Sent.Values.Where(s => s.Kind == typeof(T).Name && s.Version > 0)) Put(s.Text, s.Version, v => v < s.Version);
        foreach (var d in now.Decisions.Values.Where(d => d.Kind == typeof(T).Name)) Put(d.Text, d.BasedOn, _ => true);
        return rows;

        void Put(string text, int version, Func<int, bool> over)
        {
            if (Spelling.Read<T>(text) is not { } row) return;
            var at = rows.Select(r => id(r.Row)).ToList().IndexOf(id(row));
            if (at >= 0 && over(rows[at].Version)) rows = rows.SetItem(at, new(row, version));
            else if (at < 0 && own(row)) rows = rows.Add(new(row, version));
        }
    }

    /// <summary>The same for a row that is the only one at its address.</summary>
    public static Versioned<T> One<T>(Versioned<T> read, string address, Lying now, bool copy) where T : class =>
        now.Decisions.GetValueOrDefault(address) is { } d && Spelling.Read<T>(d.Text) is { } waiting ? new(waiting, d.BasedOn)
        : copy && now.Sent.GetValueOrDefault(address) is { } s && s.Version > read.Version && Spelling.Read<T>(s.Text) is { } sent ? new(sent, s.Version)
        : read;

    public static VehicleTree Tree(VehicleTree read, Lying now, bool copy)
    {
        var vehicle = One(read.Vehicle, Addresses.Vehicle(read.Vehicle.Row.Id), now, copy);
        var systems = Over(read.Systems, s => s.Id, s => s.VehicleId == vehicle.Row.Id, now, copy);
        bool Has(Guid system) => systems.Any(s => s.Row.Id == system);
        var parts = Over(read.Parts, p => p.Id, p => Has(p.SystemId), now, copy);
        return new(vehicle, systems, Over(read.Assemblies, a => a.Id, a => Has(a.SystemId), now, copy), parts,
            Over(read.Samples, s => s.Id, s => parts.Any(p => p.Row.Id == s.PartId), now, copy));
    }

    public static BenchFile Bench(BenchFile read, Lying before, Lying now, bool copy)
    {
        var sample = read.Sample.Row.Id;
        var instruments = Over([.. read.Instruments.Select(i => new Versioned<OwnedInstrument>(i, 0))], i => i.Id, _ => true, now, copy);
        return read with
        {
            Sample = One(read.Sample, Addresses.Sample(sample), now, copy),
            History = Readings(read.History, sample, before, now, copy),
            Instruments = [.. instruments.Select(i => i.Row)],
        };
    }

    public static HoursHistory Hours(HoursHistory read, ISet<Guid> jobs, Lying before, Lying now, bool copy)
    {
        ImmutableArray<Started> starts = [.. read.Starts.UnionBy(Own<Started>(before, now, copy).Where(s => jobs.Contains(s.JobId)), s => s.Id)];
        ImmutableArray<HoursEntry> entries = [.. read.Entries.UnionBy(Own<HoursEntry>(before, now, copy).Where(e => jobs.Contains(e.JobId)), e => e.Id)];
        var known = starts.Select(s => s.Id).Concat(entries.Select(e => e.Id)).ToHashSet();
        return new(starts, entries, [.. read.Withdrawals.UnionBy(Own<HoursWithdrawal>(before, now, copy).Where(w => known.Contains(w.EntryId)), w => w.Id)]);
    }

    static ReadingHistory Readings(ReadingHistory read, Guid sample, Lying before, Lying now, bool copy)
    {
        ImmutableArray<ReadingEntry> readings = [.. read.Readings.UnionBy(Own<ReadingEntry>(before, now, copy).Where(r => r.SampleId == sample), r => r.Id)];
        var known = readings.Select(r => r.Id).ToHashSet();
        return new(readings, [.. read.Withdrawals.UnionBy(Own<Withdrawal>(before, now, copy).Where(w => known.Contains(w.ReadingId)), w => w.Id)]);
    }
}
