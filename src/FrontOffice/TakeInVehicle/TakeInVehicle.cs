using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.TakeInVehicle;

/// <summary>A vehicle as files that a person typed: three tables and the reading sheets that the samples table names.</summary>
/// <param name="Sheet">Text of a sheet by its name; null when there is none.</param>
/// <param name="At">When the readings count as taken.</param>
public sealed record TakeInRequest(string Vehicle, string Parts, string Samples, Func<string, string?> Sheet, DateTimeOffset At);

/// <summary>What the stores are to keep. Ids follow from names and places, so taking the same files in twice adds nothing.</summary>
public sealed record TakeInResult(
    VehicleFile File, ImmutableArray<SampleSketch> Sketches, ImmutableArray<ReadingEntry> Readings,
    ImmutableArray<OwnedInstrument> Instruments);

/// <summary>Takes in a vehicle: its parts, its samples and what was read of them, as typed.</summary>
public static class TakeInVehicle
{
    /// <exception cref="RefusedException">A row of any file is wrong; nothing is taken in.</exception>
    public static TakeInResult Run(TakeInRequest request)
    {
        var file = VehicleFile.Read(request.Vehicle, request.Parts, request.Samples).Value;
        var sketches = ImmutableArray.CreateBuilder<SampleSketch>();
        var readings = ImmutableArray.CreateBuilder<ReadingEntry>();
        var instruments = ImmutableArray.CreateBuilder<OwnedInstrument>();
        foreach (var sample in file.Samples)
        {
            if (file.Sheets.GetValueOrDefault(sample.Id) is not { Length: > 0 } name) continue;
            var text = request.Sheet(name) ?? throw new RefusedException(Refusal.Of("sheet", name, "name a file that lies beside the tables"));
            var kept = Kept(name, sample, text, request.At);
            if (kept.Sketch is { } sketch) sketches.Add(sketch);
            readings.AddRange(kept.Readings);
            instruments.AddRange(kept.Instruments);
        }
        return new(file, sketches.ToImmutable(), readings.ToImmutable(), [.. instruments.DistinctBy(i => i.Id)]);
    }

    static SheetToKeep Kept(string name, PartSample sample, string text, DateTimeOffset at)
    {
        try
        {
            return SheetToKeep.Of(sample, text, at);
        }
        catch (RefusedException e)
        {
            throw new RefusedException(new Refusal($"{name}, {e.Message}"));
        }
    }
}
