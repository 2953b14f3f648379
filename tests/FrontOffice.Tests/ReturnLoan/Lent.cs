using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Stores;
using TakeIn = WitnessMark.FrontOffice.TakeInVehicle.TakeInVehicle;

namespace WitnessMark.Tests.FrontOffice.ReturnLoan;

/// <summary>Samples that are lent, from the demonstration's files or laid by hand.</summary>
static class Lent
{
    public static readonly string Photograph = new('a', 64);

    static readonly DateTimeOffset At = new(2031, 5, 2, 19, 30, 0, TimeSpan.Zero);

    /// <summary>A sample of the demonstration, as if it were lent; photographed.</summary>
    public static LoanRequest Demo(string sheet)
    {
        var taken = TakeIn.Run(new(Tests.FrontOffice.Demo.Text("vehicle.csv"), Tests.FrontOffice.Demo.Text("parts.csv"), Tests.FrontOffice.Demo.Text("samples.csv"), Tests.FrontOffice.Demo.Sheet, At));
        var sample = taken.File.Samples.Single(s => taken.File.Sheets[s.Id].EndsWith($"/{sheet}", StringComparison.Ordinal));
        return Of(sample with { Loan = sample.Loan ?? new Loan("Wendeline Orrick", new(2031, 4, 1), new(2031, 6, 1)) }, taken.Sketches.SingleOrDefault(s => s.Id == sample.Id),
            [.. taken.Readings.Where(r => r.SampleId == sample.Id)]) with
        {
            Instruments = taken.Instruments,
            Folded = taken.Folded.SingleOrDefault(f => f.Id == sample.Id)?.Text,
        };
    }

    /// <summary>Holes about there, and what was read between them.</summary>
    public static LoanRequest Holes((string Id, double X, double Y)[] holes, params ReadingEntry[] readings)
    {
        var id = Guid.NewGuid();
        return Of(new(id, Guid.NewGuid(), "Plate", SampleOrigin.Borrowed, new("Wendeline Orrick", new(2031, 4, 1), new(2031, 6, 1)), []),
            new(id, [.. holes.Select(h => new SketchedFeature(h.Id, "corner", "", "", h.X, h.Y, null, null, null))]), readings);
    }

    static LoanRequest Of(PartSample sample, SampleSketch? sketch, ReadingEntry[] readings) => new(sample, sketch, new(readings, []), [], [], [Photograph]);

    public static ReadingEntry Reading(string from, string to, string value, string kind = "centre distance", string instrument = "calliper") =>
        new(Guid.NewGuid(), Guid.Empty, kind, from, to, value, "", instrument, "", At, "bench");

    public static LoanRequest And(this LoanRequest request, params ReadingEntry[] more) => request with { History = new([.. request.History.Readings, .. more], request.History.Withdrawals) };

    public static ImmutableArray<OpenPoint> Points(this LoanRequest request) => WitnessMark.FrontOffice.ReturnLoan.ReturnLoan.Run(request).Standing.Points;

    /// <summary>What a calliper would say between the places of the plan as it stands, to 0.02 mm.</summary>
    public static ReadingEntry ByPlan(this LoanRequest request, string kind, string from, string to)
    {
        var sample = StoredSample.Of(request.Sample, request.Sketch, request.History.Standing, request.Instruments).Sample!;
        var plan = Adjust.Solve(sample).Believed;
        var (a, b) = (plan.Of(from), plan.Of(to));
        var centres = (a.At - b.At).Length;
        var radii = ((a.Size?.Value ?? 0) + (b.Size?.Value ?? 0)) / 2;
        var value = kind switch { "inside between holes" => centres - radii, "outside over holes" => centres + radii, _ => centres };
        return Reading(from, to, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(value / 0.02) * 0.02:0.00}"), kind);
    }
}
