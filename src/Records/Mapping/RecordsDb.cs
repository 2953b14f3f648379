using Microsoft.EntityFrameworkCore;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Devices;

namespace WitnessMark.Records;

/// <summary>
/// The tables. Decisions (vehicles to shops) are the offices' own records with a shadow Version that guards every change;
/// facts (readings, withdrawals) are appended under a running number and triggers forbid altering them. What has parts of
/// its own (a loan, a sketch, a card) is kept as JSON text: it is read and written whole.
/// </summary>
public sealed class RecordsDb(DbContextOptions<RecordsDb> options) : DbContext(options)
{
    /// <summary>Shadow column, 1 at the first saving.</summary>
    public const string Version = "Version";

    /// <summary>Shadow key of the facts: the order in which they arrived.</summary>
    public const string Arrival = "Arrival";

    protected override void OnModelCreating(ModelBuilder model)
    {
        Decision<Vehicle>(model, "vehicles");
        var system = Decision<VehicleSystem>(model, "systems");
        system.HasOne<Vehicle>().WithMany().HasForeignKey(s => s.VehicleId).OnDelete(DeleteBehavior.Restrict);
        Decision<Assembly>(model, "assemblies")
            .HasOne<VehicleSystem>().WithMany().HasForeignKey(a => a.SystemId).OnDelete(DeleteBehavior.Restrict);
        var part = Decision<Part>(model, "parts");
        part.Property(p => p.Hand).HasConversion<string>();
        part.Property(p => p.Route).HasJson();
        part.HasOne<VehicleSystem>().WithMany().HasForeignKey(p => p.SystemId).OnDelete(DeleteBehavior.Restrict);
        part.HasOne<Assembly>().WithMany().HasForeignKey(p => p.AssemblyId).OnDelete(DeleteBehavior.Restrict);
        var sample = Decision<PartSample>(model, "samples");
        sample.Property(s => s.Origin).HasConversion<string>();
        sample.Property(s => s.Loan).HasJson();
        sample.Property(s => s.Wanted).HasJson();
        sample.HasOne<Part>().WithMany().HasForeignKey(s => s.PartId).OnDelete(DeleteBehavior.Restrict);
        var sketch = Decision<SampleSketch>(model, "sketches");
        sketch.Property(s => s.Features).HasJson();
        sketch.HasOne<PartSample>().WithOne().HasForeignKey<SampleSketch>(s => s.Id).OnDelete(DeleteBehavior.Restrict);
        Decision<FoldedPart>(model, "folded_parts")
            .HasOne<PartSample>().WithOne().HasForeignKey<FoldedPart>(f => f.Id).OnDelete(DeleteBehavior.Restrict);
        Decision<OwnedInstrument>(model, "instruments").HasIndex(i => i.Name).IsUnique();
        var job = Decision<Job>(model, "jobs");
        job.Property(j => j.State).HasConversion<string>();
        job.Property(j => j.Kind).HasConversion<string>();
        job.Property(j => j.Hours).HasJson();
        job.Property(j => j.Cost).HasJson();
        job.Property(j => j.Needs).HasJson();
        job.Property(j => j.Leads).HasJson();
        job.Property(j => j.After).HasJson();
        job.Property(j => j.MayFind).HasJson();
        job.Property(j => j.Card).HasJson();
        job.HasOne<Vehicle>().WithMany().HasForeignKey(j => j.VehicleId).OnDelete(DeleteBehavior.Restrict);
        job.HasOne<VehicleSystem>().WithMany().HasForeignKey(j => j.SystemId).OnDelete(DeleteBehavior.Restrict);
        job.HasOne<Part>().WithMany().HasForeignKey(j => j.PartId).OnDelete(DeleteBehavior.Restrict);
        var milestone = Decision<Milestone>(model, "milestones");
        milestone.Property(m => m.Jobs).HasJson();
        milestone.HasOne<Vehicle>().WithMany().HasForeignKey(m => m.VehicleId).OnDelete(DeleteBehavior.Restrict);
        var means = Decision<Means>(model, "means");
        means.Property(m => m.Purse).HasJson();
        means.HasOne<Vehicle>().WithOne().HasForeignKey<Means>(m => m.Id).OnDelete(DeleteBehavior.Restrict);
        Decision<KeptShop>(model, "shop").Property(s => s.Shop).HasJson();

        var order = Decision<StandingOrder>(model, "standing_orders");
        order.Property(o => o.InTurn).HasJson();
        order.HasOne<Vehicle>().WithOne().HasForeignKey<StandingOrder>(o => o.Id).OnDelete(DeleteBehavior.Restrict);
        Decision<KeptCalendar>(model, "calendar").Property(c => c.Calendar).HasJson();
        var kept = Decision<KeptDecision>(model, "kept_decisions");
        kept.HasIndex(d => new { d.VehicleId, d.Kind });
        kept.HasOne<Vehicle>().WithMany().HasForeignKey(d => d.VehicleId).OnDelete(DeleteBehavior.Restrict);

        var fact = Fact<KeptFact>(model, "kept_facts");
        fact.HasIndex(f => new { f.VehicleId, f.Kind });
        fact.HasIndex(f => new { f.PartId, f.Kind });
        fact.HasOne<Vehicle>().WithMany().HasForeignKey(f => f.VehicleId).OnDelete(DeleteBehavior.Restrict);
        var reading = Fact<ReadingEntry>(model, "readings");
        reading.HasIndex(r => r.SampleId);
        reading.HasOne<PartSample>().WithMany().HasForeignKey(r => r.SampleId).OnDelete(DeleteBehavior.Restrict);
        var withdrawal = Fact<Withdrawal>(model, "withdrawals");
        withdrawal.HasOne<ReadingEntry>().WithMany().HasForeignKey(w => w.ReadingId).HasPrincipalKey(r => r.Id).OnDelete(DeleteBehavior.Restrict);

        var device = model.Entity<PairedDevice>().ToTable("paired_devices");
        device.Property(d => d.Id).ValueGeneratedNever();
        device.HasIndex(d => d.KeyHash).IsUnique();
        device.Ignore(d => d.Wrong);
    }

    static Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<T> Decision<T>(ModelBuilder model, string table) where T : class
    {
        var entity = model.Entity<T>().ToTable(table);
        entity.HasKey("Id");
        entity.Property<Guid>("Id").ValueGeneratedNever();
        entity.Property<int>(Version).IsConcurrencyToken();
        return entity;
    }

    static Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<T> Fact<T>(ModelBuilder model, string table) where T : class
    {
        var entity = model.Entity<T>().ToTable(table);
        entity.Property<long>(Arrival).ValueGeneratedOnAdd();
        entity.HasKey(Arrival);
        entity.HasAlternateKey("Id");
        return entity;
    }
}

/// <summary>The one calendar row: there is one person.</summary>
sealed record KeptCalendar(Guid Id, WorkCalendar Calendar)
{
    public static readonly Guid TheOne = new("5d0f9a52-0c3b-4d0b-9f5e-6a5a7e1d2b44");
}

/// <summary>The one shop row.</summary>
sealed record KeptShop(Guid Id, Shop Shop)
{
    public static readonly Guid TheOne = new("0b6d7f7c-2f0e-4a55-8a07-6f3f4f2a9d10");
}
