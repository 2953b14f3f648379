using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>How far a person has come with a sheet. It knows nothing of the true sizes.</summary>
/// <param name="Plan">Null until the first reading of the plate.</param>
/// <param name="Refused">Readings that do not count, by their place among those written, with the reason.</param>
public sealed record PracticeState(Sample Sample, Plan? Plan, ImmutableArray<PracticeStep> Steps, ImmutableSortedDictionary<int, string> Refused)
{
    /// <summary>The first of the wanted readings that is still to be taken.</summary>
    public PracticeStep? Next => Steps.FirstOrDefault(s => s.Read == 0);

    public int Done => Steps.Count(s => s.Read > 0);

    /// <summary>Every place and size is held, so that the sheet can be compared.</summary>
    public bool Held => Plan is { Convergence.Converged: true, Believed.LooseFreedoms: 0 };

    /// <summary>± (19 in 20) of the least sure size so far, mm; null until all are held.</summary>
    public double? LargestPlusMinus => Held ? Plan!.Believed.Distances().Max(d => 2 * d.Std) : null;
}

/// <summary>A printed plate is measured as a borrowed part would be; afterwards its true sizes are laid beside what was found.</summary>
public static class PractiseMeasuring
{
    /// <summary>
    /// What holds the plate and checks every reading, in the order in which a hand goes over it: sizes, outline, diagonals, each hole off three
    /// corners, what stands between the holes.
    /// </summary>
    static readonly ImmutableArray<(ReadingKind Kind, string From, string? To)> List =
    [
        (ReadingKind.Diameter, "H1", null), (ReadingKind.Diameter, "H2", null), (ReadingKind.Diameter, "H3", null),
        (ReadingKind.LengthAlongEdge, "E1", null), (ReadingKind.LengthAlongEdge, "E2", null), (ReadingKind.LengthAlongEdge, "E3", null),
        (ReadingKind.LengthAlongEdge, "E4", null), (ReadingKind.LengthAlongEdge, "E5", null),
        (ReadingKind.CentreDistance, "C1", "C3"), (ReadingKind.CentreDistance, "C1", "C4"), (ReadingKind.CentreDistance, "C2", "C5"),
        (ReadingKind.CentreDistance, "C1", "H1"), (ReadingKind.CentreDistance, "C2", "H1"), (ReadingKind.CentreDistance, "C5", "H1"),
        (ReadingKind.CentreDistance, "C1", "H2"), (ReadingKind.CentreDistance, "C2", "H2"), (ReadingKind.CentreDistance, "C4", "H2"),
        (ReadingKind.CentreDistance, "C1", "H3"), (ReadingKind.CentreDistance, "C3", "H3"), (ReadingKind.CentreDistance, "C5", "H3"),
        (ReadingKind.InsideBetweenHoles, "H1", "H2"), (ReadingKind.InsideBetweenHoles, "H2", "H3"), (ReadingKind.OutsideOverHoles, "H1", "H3"),
    ];

    /// <summary>The wanted readings: the check lines, then those that hold and check the plate, as for any part that goes back.</summary>
    public static ImmutableArray<PracticeStep> Wanted(int number) => Steps(new(number, []));

    public static PracticeState Measure(PracticeRequest request, CancellationToken stop = default)
    {
        var taken = PracticeTaken.Of(request);
        var plan = taken.Sample.Readings.IsEmpty ? null : Adjust.Solve(taken.Sample, searchMirrors: false, stop);
        return new(taken.Sample, plan, Steps(request), taken.Refused);
    }

    /// <summary>Why a reading cannot be taken as written; null when it can.</summary>
    public static string? Check(int number, PracticeReading reading) =>
        PracticeTaken.Of(new(number, [reading])).Refused.Values.FirstOrDefault();

    /// <exception cref="RefusedException">The sheet is not measured yet: its true sizes stay hidden.</exception>
    public static Compared.PracticeComparison Compare(PracticeRequest request, CancellationToken stop = default) => Compared.Comparing.Run(request, stop);

    static ImmutableArray<PracticeStep> Steps(PracticeRequest request)
    {
        _ = PracticePlate.Of(request.Number);
        var plate = PracticePlate.Rough;
        var steps = ImmutableArray.CreateBuilder<PracticeStep>();
        foreach (var (way, _) in PracticeSheet.Ways)
            foreach (var (length, mm) in PracticeSheet.Lengths)
                Add(PracticeReading.CheckLine, way, length, string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm"), $"The check line {way} that should be {length}");
        foreach (var (kind, from, to) in List)
            Add(KindRule.Of(kind).Words, from, to ?? "", About(plate.True(kind, from, to, default)), PracticeWords.Of(plate, kind, from, to));
        return steps.ToImmutable();

        static string About(double mm) => string.Create(CultureInfo.InvariantCulture, $"{5 * Math.Round(mm / 5):0} mm");

        void Add(string kind, string from, string to, string about, string words) =>
            steps.Add(new(steps.Count + 1, kind, from, to, about, words, request.Readings.Count(r => r.Same(kind, from, to))));
    }
}
