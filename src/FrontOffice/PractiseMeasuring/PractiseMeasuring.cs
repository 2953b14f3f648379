using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.TakeSample;
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
    /// <summary>A calliper alone: whoever has only a rule reads the same list with it.</summary>
    static readonly ImmutableArray<BenchTool> Tools = BenchTool.Calliper(150);

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
        var plate = PracticePlate.Of(request.Number);
        var list = TakeSample.TakeSample.Run(new(new Sample("practice", "", plate.Sketched, [])) { Tools = Tools }).List.Steps;
        var steps = ImmutableArray.CreateBuilder<PracticeStep>();
        foreach (var (way, _) in PracticeSheet.Ways)
            foreach (var (length, mm) in PracticeSheet.Lengths)
                Add(PracticeReading.CheckLine, way, length, string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm"), $"The check line {way} that should be {length}");
        foreach (var s in list)
            Add(KindRule.Of(s.Kind).Words, s.From, s.To ?? "", TakeSample.TakeSample.About(s), PracticeWords.Of(plate, s.Kind, s.From, s.To));
        return steps.ToImmutable();

        void Add(string kind, string from, string to, string about, string words) =>
            steps.Add(new(steps.Count + 1, kind, from, to, about, words, request.Readings.Count(r => r.Same(kind, from, to))));
    }
}
