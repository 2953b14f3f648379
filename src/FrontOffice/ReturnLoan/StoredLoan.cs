using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>A borrowed sample fetched from the records.</summary>
public static class StoredLoan
{
    /// <param name="tree">The vehicle that the sample belongs to.</param>
    public static async Task<LoanRequest> Open(VehicleTree tree, PartSample sample, IReadingLog readings, IBenchStore bench, IStoresDesk desk, CancellationToken stop = default)
    {
        var vehicle = tree.Vehicle.Row.Id;
        return new(
            sample, (await bench.Sketch(sample.Id, stop))?.Row, await readings.History(sample.Id, stop), [.. (await bench.Instruments(stop)).Select(i => i.Row)],
            [.. (await desk.NotNeeded.Of(vehicle, stop)).Select(r => r.Row).Where(r => r.SampleId == sample.Id)],
            [.. (await desk.Photographs.Of(vehicle, stop)).Select(p => p.Row).Where(p => p.SampleId == sample.Id && !p.Dropped).Select(p => p.Picture).Distinct()])
        {
            Part = tree.Parts.FirstOrDefault(p => p.Row.Id == sample.PartId).Row is { } part ? part.Hand == Hand.None ? part.Name : $"{part.Name} {part.Hand}" : "",
            Folded = (await bench.Folded(sample.Id, stop))?.Row.Text,
            Solid = StoredSolid.Of((await desk.Shapes.Of(vehicle, stop)).Select(s => s.Row), sample.Id),
        };
    }
}
