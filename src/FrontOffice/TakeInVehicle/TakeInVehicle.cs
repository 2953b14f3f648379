using System.Collections.Immutable;
using System.Text;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.TakeInVehicle;

/// <summary>
/// A vehicle as files that a person typed: three tables, the reading sheets that the samples table names, and beside a sheet, under
/// its name with .json for its ending, the sample's folded part.
/// </summary>
/// <param name="Sheet">Text of a file by its name; null when there is none.</param>
/// <param name="At">When the readings count as taken.</param>
public sealed record TakeInRequest(string Vehicle, string Parts, string Samples, Func<string, string?> Sheet, DateTimeOffset At);

/// <summary>What the stores are to keep. Ids follow from names and places, so taking the same files in twice adds nothing.</summary>
public sealed record TakeInResult(
    VehicleFile File, ImmutableArray<SampleSketch> Sketches, ImmutableArray<FoldedPart> Folded, ImmutableArray<ReadingEntry> Readings,
    ImmutableArray<OwnedInstrument> Instruments);

/// <summary>Takes in a vehicle: its parts, its samples and what was read of them, as typed.</summary>
public static class TakeInVehicle
{
    /// <exception cref="RefusedException">A row of any file is wrong; nothing is taken in.</exception>
    public static TakeInResult Run(TakeInRequest request)
    {
        var file = VehicleFile.Read(request.Vehicle, request.Parts, request.Samples).Value;
        var sketches = ImmutableArray.CreateBuilder<SampleSketch>();
        var folded = ImmutableArray.CreateBuilder<FoldedPart>();
        var readings = ImmutableArray.CreateBuilder<ReadingEntry>();
        var instruments = ImmutableArray.CreateBuilder<OwnedInstrument>();
        foreach (var sample in file.Samples)
        {
            if (file.Sheets.GetValueOrDefault(sample.Id) is not { Length: > 0 } name) continue;
            var text = request.Sheet(name) ?? throw new RefusedException(Refusal.Of("sheet", name, "name a file that lies beside the tables"));
            var kept = Named(name, () => SheetToKeep.Of(sample, text, request.At));
            if (kept.Sketch is { } sketch) sketches.Add(sketch);
            readings.AddRange(kept.Readings);
            instruments.AddRange(kept.Instruments);
            var beside = Path.ChangeExtension(name, ".json");
            if (beside != name && request.Sheet(beside) is { } typed) folded.Add(Named(beside, () => Whole(new(sample.Id, typed))));
        }
        return new(file, sketches.ToImmutable(), folded.ToImmutable(), readings.ToImmutable(), [.. instruments.DistinctBy(i => i.Id)]);
    }

    /// <summary>The folded part, when it can be read: a file taken in is whole, unlike what is still being typed.</summary>
    static FoldedPart Whole(FoldedPart typed)
    {
        if (Check.Of(typed) is { } wrong) throw new RefusedException(wrong);
        _ = BracketFile.Read(Encoding.UTF8.GetBytes(typed.Text!)).Value;
        return typed;
    }

    static T Named<T>(string file, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (RefusedException e)
        {
            throw new RefusedException(new Refusal($"{file}, {e.Message}"));
        }
    }
}
