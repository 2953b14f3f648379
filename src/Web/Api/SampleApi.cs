using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>The measuring bench: readings are appended, the sketch, the folded part and the instruments are decisions under a version.</summary>
static class SampleApi
{
    public static void MapSamples(this IEndpointRouteBuilder api)
    {
        api.MapGet("samples/{id:guid}", Read);
        api.MapPost("samples/{id:guid}/readings", async (Guid id, ImmutableArray<ReadingEntry> rows, IReadingLog log, CancellationToken stop) =>
            new Recorded(await log.Append([.. Whole(rows).Select(r => VehicleApi.Own(r, r.SampleId, id))], stop)));
        api.MapPost("withdrawals", async (ImmutableArray<Withdrawal> rows, IReadingLog log, CancellationToken stop) => new Recorded(await log.Withdraw(Whole(rows), stop)));
        api.MapPut("samples/{id:guid}/sketch", async (Guid id, Saving<SampleSketch> sketch, IBenchStore bench, CancellationToken stop) =>
            Answer.Saved(await bench.Save(VehicleApi.Own(sketch.Row, sketch.Row.Id, id), sketch.BasedOn, stop)));
        api.MapPut("samples/{id:guid}/folded", async (Guid id, Saving<FoldedPart> folded, IBenchStore bench, CancellationToken stop) =>
            Answer.Saved(await bench.Save(VehicleApi.Own(folded.Row, folded.Row.Id, id), folded.BasedOn, stop)));
        api.MapGet("instruments", (IBenchStore bench, CancellationToken stop) => bench.Instruments(stop));
        api.MapPut("instruments/{id:guid}", async (Guid id, Saving<OwnedInstrument> row, IBenchStore bench, CancellationToken stop) =>
            Answer.Saved(await bench.Save(VehicleApi.Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
    }

    /// <summary>The rows, when there is none missing among them.</summary>
    internal static ImmutableArray<T> Whole<T>(ImmutableArray<T> rows) where T : class
    {
        if (rows.IsDefault) throw new RefusedException(Refusal.Of("rows", null, "send a list"));
        var hole = rows.IndexOf(null!);
        return hole < 0 ? rows : throw new RefusedException(Refusal.Of($"row {hole}", "null", "send a whole row"));
    }

    static async Task<IResult> Read(Guid id, IVehicleStore store, IBenchStore bench, IReadingLog log, CancellationToken stop)
    {
        if (await store.Sample(id, stop) is not { } sample) return Answer.Found<BenchFile>(null, "sample");
        var sketch = await bench.Sketch(id, stop) ?? new(new SampleSketch(id, []), 0);
        var folded = await bench.Folded(id, stop) ?? new(new FoldedPart(id, null), 0);
        var instruments = await bench.Instruments(stop);
        return Results.Ok(new BenchFile(sample, sketch, folded, await log.History(id, stop), [.. instruments.Select(i => i.Row)]));
    }
}
