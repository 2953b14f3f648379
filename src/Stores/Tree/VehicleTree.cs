using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>A vehicle with its systems, assemblies, parts and samples, each with the version it stands at.</summary>
public sealed record VehicleTree(
    Versioned<Vehicle> Vehicle,
    ImmutableArray<Versioned<VehicleSystem>> Systems,
    ImmutableArray<Versioned<Assembly>> Assemblies,
    ImmutableArray<Versioned<Part>> Parts,
    ImmutableArray<Versioned<PartSample>> Samples)
{
    public IEnumerable<Versioned<Assembly>> AssembliesOf(Guid system) => Assemblies.Where(a => a.Row.SystemId == system);

    public IEnumerable<Versioned<Part>> PartsOf(Guid system) => Parts.Where(p => p.Row.SystemId == system);

    public IEnumerable<Versioned<PartSample>> SamplesOf(Guid part) => Samples.Where(s => s.Row.PartId == part);
}
