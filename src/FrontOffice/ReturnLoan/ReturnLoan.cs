using System.Collections.Immutable;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.Loans;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>A borrowed sample as the records hold it.</summary>
/// <param name="Sketch">Null when nobody has sketched it.</param>
/// <param name="History">All that was ever read of it.</param>
/// <param name="NotNeeded">What it may go back without; those dropped do not count.</param>
/// <param name="Photographs">The ids that its photographs are kept under.</param>
public sealed record LoanRequest(
    PartSample Sample, SampleSketch? Sketch, ReadingHistory History, ImmutableArray<OwnedInstrument> Instruments, ImmutableArray<NotNeeded> NotNeeded, ImmutableArray<string> Photographs)
{
    /// <summary>The part it is a sample of.</summary>
    public string Part { get; init; } = "";

    /// <summary>Its folded part as typed; null for a flat one.</summary>
    public string? Folded { get; init; }

    /// <summary>Its sheet in space as typed (docs/guide/survey-solid.md); null where it was not surveyed so.</summary>
    public string? Solid { get; init; }

    /// <summary>± that every dimension is to have (19 of 20), mm.</summary>
    public double WantedPlusMinus { get; init; } = 0.1;

    /// <summary>Where the vehicle comes from, by name (<see cref="Origins"/>).</summary>
    public string Origin { get; init; } = "unknown";
}

/// <summary>The verdict, and what it was drawn from.</summary>
/// <param name="Stored">The sample as understood.</param>
/// <param name="Measured">Null while there is no plan.</param>
/// <param name="Sizes">Null where no size is to be identified, or none can be.</param>
/// <param name="Solid">Null where it was not surveyed in space, or the sheet makes no shape.</param>
public sealed record LoanResult(LoanStanding Standing, StoredSample Stored, MeasureResult? Measured, MakeToSizeResult? Sizes, SolidResult? Solid);

/// <summary>
/// Before a borrowed sample goes back: what its own list still asks for, and what the survey of it says is loose, undecided,
/// unchecked, doubtful or not sure enough. Ready when none of it is left but what the person says is not needed.
/// </summary>
/// <remarks>
/// It judges the features that were sketched and the readings that were taken. A feature that nobody sketched is not missed by it:
/// the verdict carries that caution.
/// </remarks>
public static class ReturnLoan
{
    /// <exception cref="RefusedException">The wanted ± is not one.</exception>
    public static LoanResult Run(LoanRequest request, CancellationToken stop = default)
    {
        if (!(request.WantedPlusMinus is > 0 and <= 1000)) throw new RefusedException(Refusal.Of("wanted ±", $"{request.WantedPlusMinus:R}", "give a ± of more than 0 and at most 1000 mm"));
        var standing = request.History.Standing;
        var stored = StoredSample.Of(request.Sample, request.Sketch, standing, request.Instruments);
        var (measured, why) = Measured(request, stored, stop);
        var (sizes, whySizes) = Sizes(request, standing);
        var (solid, whySolid) = InSpace(request, stop);
        ImmutableArray<OpenPoint> points =
        [
            .. ListPoints.Of(request, stored, solid, why, whySizes),
            .. whySolid is null ? [] : new[] { SolidPoints.Point(PointKind.NotCounted, $"the rows make no shape: {whySolid}", "Mend what it names.", "no shape") },
            .. measured is null ? [] : SurveyPoints.Of(measured, stored.Entries, request.WantedPlusMinus / 2),
            .. solid is null ? [] : SolidPoints.Of(solid, request.WantedPlusMinus / 2, stop),
            .. sizes is null ? [] : ListPoints.Undecided(sizes),
            .. !request.Photographs.IsEmpty ? [] : new[] { new OpenPoint("photograph", PointKind.Photograph, "No photograph of it is kept.", "Take one of each side, one of them beside the target sheet.") },
        ];
        // The same thing told twice, as of a misread value written twice over, is one point.
        points = [.. points.DistinctBy(p => p.Key)];
        var cautions = solid is { Plan.Hand: { Told: false } hand } ? Cautions.Add($"In space: {hand.Words}") : Cautions;
        return new(Verdict(request, Answered(points, request.NotNeeded), cautions), stored, measured, sizes, solid);
    }

    static ImmutableArray<OpenPoint> Answered(ImmutableArray<OpenPoint> points, ImmutableArray<NotNeeded> rows)
    {
        var because = rows.Where(r => !r.Dropped).GroupBy(r => r.Point).ToDictionary(g => g.Key, g => g.Last().Reason);
        return [.. points.Select(p => p with { NotNeeded = because.GetValueOrDefault(p.Key) })];
    }

    static LoanStanding Verdict(LoanRequest request, ImmutableArray<OpenPoint> points, ImmutableArray<string> cautions)
    {
        var standing = new LoanStanding("", points, cautions);
        var to = request.Sample.Loan is { } loan ? $" to {loan.Lender}" : "";
        var left = points.Length - standing.Open.Length;
        var without = left == 0 ? "" : $"; {Counted(left, "point")} marked as not needed";
        return standing with
        {
            Words = standing.Ready ? $"Ready to go back{to}: nothing is open{without}." : $"Not ready to go back{to}: {Counted(standing.Open.Length, "thing")} still open{without}.",
        };
    }

    static ImmutableArray<string> Cautions { get; } =
    [
        "Only what is sketched and read is judged: look the sample over once more for holes, bends and marks that are not on the sketch.",
        "The ± hold if the sample did not move or bend between readings and the instruments are as good as stated.",
    ];

    /// <summary>The plan, or why the readings make none; neither where nothing is read yet.</summary>
    static (MeasureResult?, string?) Measured(LoanRequest request, StoredSample stored, CancellationToken stop)
    {
        if (stored.Sample is not { Readings.Length: > 0 } sample) return default;
        try
        {
            return (MeasureSample.MeasureSample.Run(new MeasureRequest(sample) { WantedPlusMinus = request.WantedPlusMinus }, stop), null);
        }
        catch (RefusedException e)
        {
            return (null, e.Message);
        }
    }

    /// <summary>The shape in space, or why the sheet makes none; neither where it was not surveyed so.</summary>
    static (SolidResult?, string?) InSpace(LoanRequest request, CancellationToken stop)
    {
        if (request.Solid is not { } sheet) return default;
        try
        {
            return (new SolidAsked(sheet, request.WantedPlusMinus).Run(searchMirrors: true, stop), null);
        }
        catch (RefusedException e)
        {
            return (null, e.Message);
        }
    }

    static (MakeToSizeResult?, string?) Sizes(LoanRequest request, IReadOnlyList<ReadingEntry> standing)
    {
        if (!standing.Any(StoredSizes.IsOne)) return default;
        try
        {
            return (MakeToSize.MakeToSize.Run(new(StoredSizes.Of(standing).Value) { Prior = Origins.Named(request.Origin) ?? DrawingOffice.Intent.OriginPrior.Unknown }), null);
        }
        catch (RefusedException e)
        {
            return (null, e.Message);
        }
    }

    internal static string Counted(int count, string what) => count == 1 ? $"one {what}" : $"{count} {what}s";
}
