using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Wire;

/// <summary>How records travel between page and host: camel-case JSON, words for enumerations, no reflection at run time.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ImmutableArray<Versioned<Vehicle>>))]
[JsonSerializable(typeof(VehicleTree))]
[JsonSerializable(typeof(BenchFile))]
[JsonSerializable(typeof(Saving<SampleSketch>))]
[JsonSerializable(typeof(Saved<SampleSketch>))]
[JsonSerializable(typeof(Saving<FoldedPart>))]
[JsonSerializable(typeof(Saved<FoldedPart>))]
[JsonSerializable(typeof(Saving<Part>))]
[JsonSerializable(typeof(Saved<Part>))]
[JsonSerializable(typeof(Saving<PartSample>))]
[JsonSerializable(typeof(Saved<PartSample>))]
[JsonSerializable(typeof(Saving<OwnedInstrument>))]
[JsonSerializable(typeof(Saved<OwnedInstrument>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<OwnedInstrument>>))]
[JsonSerializable(typeof(ImmutableArray<ReadingEntry>))]
[JsonSerializable(typeof(ImmutableArray<Withdrawal>))]
[JsonSerializable(typeof(Saving<Vehicle>))]
[JsonSerializable(typeof(Saved<Vehicle>))]
[JsonSerializable(typeof(Saving<VehicleSystem>))]
[JsonSerializable(typeof(Saved<VehicleSystem>))]
[JsonSerializable(typeof(Saving<Assembly>))]
[JsonSerializable(typeof(Saved<Assembly>))]
[JsonSerializable(typeof(TreeChanges))]
[JsonSerializable(typeof(Applied))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Job>>))]
[JsonSerializable(typeof(Saving<Job>))]
[JsonSerializable(typeof(Saved<Job>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Milestone>>))]
[JsonSerializable(typeof(Saving<Milestone>))]
[JsonSerializable(typeof(Saved<Milestone>))]
[JsonSerializable(typeof(Versioned<Means>))]
[JsonSerializable(typeof(Saving<Means>))]
[JsonSerializable(typeof(Saved<Means>))]
[JsonSerializable(typeof(Versioned<Shop>))]
[JsonSerializable(typeof(Saving<Shop>))]
[JsonSerializable(typeof(Saved<Shop>))]
[JsonSerializable(typeof(DemoLoaded))]
[JsonSerializable(typeof(Recorded))]
[JsonSerializable(typeof(Refused))]
public sealed partial class WireJson : JsonSerializerContext
{
    /// <summary>Makes the host read and write just as the page does: nothing missing, nothing null that may not be.</summary>
    public static void Set(JsonSerializerOptions host)
    {
        host.TypeInfoResolverChain.Insert(0, Default);
        host.TypeInfoResolverChain.Insert(1, DeskJson.Default);
        host.TypeInfoResolverChain.Insert(2, PairJson.Default);
        host.RespectNullableAnnotations = Default.Options.RespectNullableAnnotations;
        host.RespectRequiredConstructorParameters = Default.Options.RespectRequiredConstructorParameters;
        host.IgnoreReadOnlyProperties = Default.Options.IgnoreReadOnlyProperties;
    }
}
